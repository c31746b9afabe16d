// Bundles the command line, the language server and the extension into dist/.
import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { ensureInstalled, root } from "./install.mjs";
import { polarMethod } from "./polar-method.mjs";

ensureInstalled();
const { build } = await import("esbuild");

const common = {
  absWorkingDir: root,
  bundle: true,
  minify: true,
  // Stack traces name functions, and the licence texts stand in one file of their own.
  keepNames: true,
  legalComments: "none",
  loader: { ".airframe": "text" },
  define: await polarMethod(),
  metafile: true,
  logLevel: "warning",
};
const node = { ...common, platform: "node", target: "node20", format: "cjs", mainFields: ["module", "main"] };
const web = { ...common, platform: "browser", target: "es2022", mainFields: ["browser", "module", "main"] };

const targets = [
  { ...node, entryPoints: ["server/cli/main.ts"], outfile: "dist/cli.js", banner: { js: "#!/usr/bin/env node" } },
  { ...node, entryPoints: ["server/main.ts"], outfile: "dist/server.js" },
  { ...node, entryPoints: ["client/extension.ts"], outfile: "dist/extension.js", external: ["vscode"] },
];
if (existsSync(join(root, "server/browser.ts"))) {
  targets.push(
    { ...web, entryPoints: ["server/browser.ts"], outfile: "dist/web-server.js", format: "iife" },
    { ...web, entryPoints: ["client/web-extension.ts"], outfile: "dist/web-extension.js", format: "cjs", external: ["vscode"] },
  );
}

rmSync(join(root, "dist"), { recursive: true, force: true });
mkdirSync(join(root, "dist"));
// The bundler has said what is wrong; a stack of its own adds nothing.
const results = await Promise.all(targets.map((target) => build(target))).catch(() => process.exit(1));
writeFileSync(join(root, "dist/third-party.txt"), licences(results));

for (const { metafile } of results) {
  for (const [file, { bytes }] of Object.entries(metafile.outputs)) console.log(`${file}  ${Math.round(bytes / 1024)} KB`);
}

/** The licence text of every package that ended in a bundle. */
function licences(built) {
  const inputs = built.flatMap(({ metafile }) => Object.keys(metafile.inputs));
  const folders = new Set(inputs.flatMap((input) => /^(.*node_modules\/(?:@[^/]+\/)?[^/]+)\//.exec(input)?.[1] ?? []));
  return [...folders].sort().map((folder) => {
    const { name, version, license } = JSON.parse(readFileSync(join(root, folder, "package.json"), "utf8"));
    const file = ["LICENSE", "LICENSE.md", "LICENSE.txt", "License.txt", "license", "LICENCE"]
      .map((each) => join(root, folder, each)).find(existsSync);
    return `${name} ${version} (${license})\n\n${file ? readFileSync(file, "utf8").trim() : "No licence text in the package."}\n`;
  }).join(`\n${"-".repeat(80)}\n\n`);
}
