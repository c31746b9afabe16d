// Packs the extension as dist/sparwright.vsix: the bundles, the grammar, the icons and the texts, nothing else.
import { statSync } from "node:fs";
import { join } from "node:path";
import { root, runNode } from "./install.mjs";
import "./build.mjs";

const out = "dist/sparwright.vsix";
const code = runNode("node_modules/@vscode/vsce/vsce", [
  "package", "--no-dependencies", "--allow-missing-repository", "--no-rewrite-relative-links", "--out", out,
], { stdio: ["ignore", "pipe", "inherit"] });
if (code !== 0) process.exit(code);
console.log(`${out}  ${Math.round(statSync(join(root, out)).size / 1024)} KB`);
