import { buildSync } from "esbuild";
import { mkdtempSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";

declare const polarMethod: string;

export const root = resolve(import.meta.dirname, "../..");

/** Bundles an entry point of this very source for Node, so that a test never runs a bundle from before an edit. */
export function bundle(entry: string): string {
  const outfile = join(mkdtempSync(join(tmpdir(), "sparwright-bundle-")), "out.cjs");
  buildSync({
    absWorkingDir: root, entryPoints: [entry], outfile, bundle: true, platform: "node", target: "node20", format: "cjs",
    mainFields: ["module", "main"], logLevel: "error", define: { polarMethod: JSON.stringify(polarMethod) },
  });
  return outfile;
}
