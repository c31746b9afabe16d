// Runs the tests: npm test [-- vitest's own arguments]; npm run test:editor; npm run test:clients.
// The editor tests need Chromium and a download, so they run only when asked for.
import { existsSync, mkdirSync, readdirSync, writeFileSync } from "node:fs";
import { delimiter, join } from "node:path";
import { ensureInstalled, root, runNode } from "./install.mjs";
import { polarMethod } from "./polar-method.mjs";

ensureInstalled();
const args = process.argv.slice(2);
const editor = args.some((arg) => arg.startsWith("tests/editor"));
// Tests of the bundles, of the server's process and of the extension use what is in dist/.
await import(editor ? "./package.mjs" : "./build.mjs");

await workOutPolars();

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

/** Section polars take a second each and more: those of the samples are there before any test waits for them. */
async function workOutPolars() {
  const cache = join(root, ".cache/tests");
  const done = join(cache, `samples-${JSON.parse((await polarMethod()).polarMethod)}`);
  if (existsSync(done)) return;
  console.log("Working out the samples' section polars (once) …");
  const designs = readdirSync(join(root, "samples"), { recursive: true }).filter((name) => name.endsWith(".airframe"));
  const code = runNode("dist/cli.js", ["check", ...designs.map((name) => join("samples", name))], {
    stdio: ["ignore", "ignore", "inherit"], env: { ...process.env, SPARWRIGHT_CACHE: cache },
  });
  mkdirSync(cache, { recursive: true });
  // 1: what the samples show, they show by errors.
  if (code <= 1) writeFileSync(done, "");
}

function installed(program) {
  return (process.env.PATH ?? "").split(delimiter).some((folder) => existsSync(join(folder, program)));
}
