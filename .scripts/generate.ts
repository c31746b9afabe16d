import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { luModule } from "./generate/lu-module";
import { withWords } from "./generate/reference";
import { snippets } from "./generate/snippets";
import { textmate } from "./generate/textmate";

const root = new URL("../", import.meta.url);
const readme = "grammar/README.md";

const json = (value: unknown) => `${JSON.stringify(value, undefined, 2)}\n`;

const now = (path: string): string => {
  const url = new URL(path, root);
  return existsSync(url) ? readFileSync(url, "utf8") : "";
};

/** Every file that follows from the vocabulary or is compiled from another, by its path in the project, as it should read. */
export function generated(): Readonly<Record<string, string>> {
  return {
    "grammar/generated/airframe.tmLanguage.json": json(textmate()),
    "grammar/generated/snippets.json": json(snippets()),
    "server/compute/lattice/dense/generated/lu-module.ts": luModule(),
    [readme]: withWords(now(readme) || "# The airframe language\n"),
  };
}

/** Those of them that read otherwise on disk. */
export function stale(texts = generated()): readonly string[] {
  return Object.entries(texts).filter(([path, text]) => now(path) !== text).map(([path]) => path);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const texts = generated();
  for (const path of stale(texts)) {
    writeFileSync(new URL(path, root), texts[path]);
    console.log(`wrote ${path}`);
  }
}
