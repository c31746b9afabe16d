import { existsSync, readdirSync } from "node:fs";
import { join, resolve } from "node:path";
import type { Diagnostic } from "./lsp-client";

export const root = resolve(import.meta.dirname, "../..");

/** How any client starts the server. */
export const command = [process.execPath, join(root, "dist/server.js"), "--stdio"] as const;

/** The designs that come with the project. */
export function samples(): readonly string[] {
  const folder = join(root, "samples");
  if (!existsSync(folder)) return [];
  return readdirSync(folder).filter((name) => name.endsWith(".airframe")).sort().map((name) => join(folder, name));
}

/** A finding as every client can tell it: place, severity, words. */
export interface Told {
  readonly line: number;
  readonly character: number;
  readonly severity: number;
  readonly message: string;
}

const order = (a: Told, b: Told): number =>
  a.line - b.line || a.character - b.character || a.severity - b.severity || (a.message < b.message ? -1 : 1);

export const sorted = (told: readonly Told[]): readonly Told[] => [...told].sort(order);

export function told(diagnostics: readonly Diagnostic[]): readonly Told[] {
  return sorted(diagnostics.map(({ range, severity, message }) => ({
    line: range.start.line, character: range.start.character, severity: severity ?? 1, message,
  })));
}
