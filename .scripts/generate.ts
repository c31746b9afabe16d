import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
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

/** Every file that follows from the vocabulary, by its path in the project, as it should read. */
export function generated(): Readonly<Record<string, string>> {
  return {
    "grammar/generated/airframe.tmLanguage.json": json(textmate()),
    "grammar/generated/snippets.json": json(snippets()),
    [readme]: withWords(now(readme) || "# The airframe language\n"),
  };
}

/** Those of them that read otherwise on disk. */
export function stale(): readonly string[] {
  return Object.entries(generated()).filter(([path, text]) => now(path) !== text).map(([path]) => path);
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  for (const path of stale()) {
    writeFileSync(new URL(path, root), generated()[path]);
    console.log(`wrote ${path}`);
  }
}
