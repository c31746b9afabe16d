import { execFile } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { promisify } from "node:util";

const root = fileURLToPath(new URL("../../", import.meta.url));
const compiler = join(root, "node_modules/assemblyscript/bin/asc.js");
const options = ["-O3", "--noAssert", "--runtime", "stub", "--enable", "simd"];

/** `assembly/NAME.ts` of a folder compiled to WebAssembly, as a TypeScript module: a bundle then needs no file beside it. */
export async function wasmModule(folder: string, name: string): Promise<string> {
  const place = mkdtempSync(join(tmpdir(), "wasm-"));
  try {
    const out = join(place, `${name}.wasm`);
    // A process of its own: the compiler's own bundle is slow to load through the runner of TypeScript.
    await promisify(execFile)(process.execPath, [compiler, `${name}.ts`, "--outFile", out, ...options], { cwd: join(root, folder, "assembly") });
    const text = readFileSync(out).toString("base64");
    return `/** Compiled from ../assembly/${name}.ts by \`npm run generate\`, in base64. */\nexport const ${name}Module =\n  "${text}";\n`;
  } finally {
    rmSync(place, { recursive: true });
  }
}
