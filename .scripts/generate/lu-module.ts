import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

const root = fileURLToPath(new URL("../../", import.meta.url));
const compiler = join(root, "node_modules/assemblyscript/bin/asc.js");
const options = ["-O3", "--converge", "--noAssert", "--runtime", "stub", "--enable", "simd"];

/** The factoring of matrices compiled to WebAssembly, as a TypeScript module: a bundle then needs no file beside it. */
export function luModule(): string {
  const folder = mkdtempSync(join(tmpdir(), "lu-"));
  try {
    const out = join(folder, "lu.wasm");
    // A process of its own: the compiler's own bundle is slow to load through the runner of TypeScript.
    const { status, stderr } = spawnSync(process.execPath, [compiler, "lu.ts", "--outFile", out, ...options], {
      cwd: join(root, "server/compute/lattice/dense/assembly"), encoding: "utf8",
    });
    if (status !== 0) throw new Error(`lu.ts does not compile\n${stderr}`);
    return `/** Compiled from ../assembly/lu.ts by \`npm run generate\`, in base64. */\nexport const luModule =\n  "${readFileSync(out).toString("base64")}";\n`;
  } finally {
    rmSync(folder, { recursive: true });
  }
}
