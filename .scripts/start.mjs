// First look at Sparwright: installs what is missing, builds, and runs the command line on a sample design.
//   npm start [-- FILE]
import { existsSync } from "node:fs";
import { join } from "node:path";
import { ensureInstalled, root, runNode } from "./install.mjs";

ensureInstalled();
console.log("Building …");
await import("./build.mjs");

const sample = process.argv[2] ?? "samples/plover.airframe";
if (!existsSync(join(root, sample))) {
  console.error(`There is no file ${sample}.`);
  process.exit(1);
}
heading(`Figures of ${sample}`);
const figures = runNode("dist/cli.js", ["figures", sample]);
heading(`Findings in ${sample}`);
const findings = runNode("dist/cli.js", ["check", sample]);

heading("Next");
console.log(`  node dist/cli.js --help        all the command line does
  npm run package                dist/sparwright.vsix, the VS Code extension
  code --install-extension dist/sparwright.vsix
                                 then open any .airframe file, such as ${sample}`);
process.exitCode = figures || findings;

function heading(text) {
  console.log(`\n${text}\n${"─".repeat(text.length)}`);
}
