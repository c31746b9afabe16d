// Runs the tests: npm test [-- vitest's own arguments]; npm run test:editor; npm run test:clients.
// The editor tests need Chromium and a download, so they run only when asked for.
import { existsSync } from "node:fs";
import { delimiter, join } from "node:path";
import { ensureInstalled, runNode } from "./install.mjs";

ensureInstalled();
const args = process.argv.slice(2);
const editor = args.some((arg) => arg.startsWith("tests/editor"));
// Tests of the bundles, of the server's process and of the extension use what is in dist/.
await import(editor ? "./package.mjs" : "./build.mjs");

const exclude = editor ? [] : ["tests/editor/**"];
for (const [program, pattern] of [["nvim", "tests/clients/neovim*"], ["emacs", "tests/clients/emacs*"]]) {
  if (installed(program)) continue;
  if (process.env.CI) throw new Error(`${program} is not installed`);
  console.log(`Left out: ${pattern} (no ${program} here).`);
  exclude.push(pattern);
}
process.exitCode = runNode("node_modules/vitest/vitest.mjs", [
  "run", "--config", "tests/vitest.config.mts", ...exclude.flatMap((pattern) => ["--exclude", pattern]), ...args,
]);

function installed(program) {
  return (process.env.PATH ?? "").split(delimiter).some((folder) => existsSync(join(folder, program)));
}
