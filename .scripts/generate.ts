import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { withWords } from "./generate/reference";
import { snippets } from "./generate/snippets";
import { textmate } from "./generate/textmate";
import { wasmModule } from "./generate/wasm-module";

const root = new URL("../", import.meta.url);
const readme = "grammar/README.md";

const json = (value: unknown) => `${JSON.stringify(value, undefined, 2)}\n`;

const now = (path: string): string => {
  const url = new URL(path, root);
  return existsSync(url) ? readFileSync(url, "utf8") : "";
};

/** Texts of files by their paths in the project. */
type Files = Readonly<Record<string, string>>;

/** Every file that follows from the vocabulary, as it should read. */
export function generated(): Files {
  return {
    "grammar/generated/airframe.tmLanguage.json": json(textmate()),
    "grammar/generated/snippets.json": json(snippets()),
    [readme]: withWords(now(readme) || "# The airframe language\n"),
  };
}

/** Every module of WebAssembly, as it should read. */
export async function compiled(): Promise<Files> {
  const lattice = "server/compute/lattice";
  const [lu, normalwash] = await Promise.all([wasmModule(`${lattice}/dense`, "lu"), wasmModule(`${lattice}/normalwash`, "normalwash")]);
  return { [`${lattice}/dense/generated/lu-module.ts`]: lu, [`${lattice}/normalwash/generated/normalwash-module.ts`]: normalwash };
}

/** Those that read otherwise on disk. */
export function stale(files: Files): readonly string[] {
  return Object.entries(files).filter(([path, text]) => now(path) !== text).map(([path]) => path);
}

async function main(): Promise<void> {
  const files = { ...generated(), ...await compiled() };
  for (const path of stale(files)) {
    writeFileSync(new URL(path, root), files[path]);
    console.log(`wrote ${path}`);
  }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) void main();
