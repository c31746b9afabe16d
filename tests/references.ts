import { existsSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { resolve } from "node:path";

const root = resolve(fileURLToPath(new URL("..", import.meta.url)), process.env.SPARWRIGHT_REFERENCES ?? "../shared/references");

const told = new Set<string>();

/**
 * A file of the reference data, which is not part of the project. Undefined, with one line in the log, where it is absent:
 * the test that wants it is left out.
 */
export function references(...parts: string[]): string | undefined {
  const path = resolve(root, ...parts);
  if (existsSync(path)) return path;
  const name = parts.join("/");
  if (!told.has(name)) console.log(`left out: no reference data ${name} (see SPARWRIGHT_REFERENCES)`);
  told.add(name);
  return undefined;
}
