// Names the code that section polars come from, so that none kept by other code is taken for one of its own.
import { createHash } from "node:crypto";
import { root } from "./install.mjs";

/** For a bundler's `define`: changes with any code that a polar's numbers go through, and with nothing else. */
export async function polarMethod() {
  const { build } = await import("esbuild");
  const { outputFiles } = await build({
    absWorkingDir: root, entryPoints: ["server/compute/polar/polar.ts"], bundle: true, write: false, format: "esm", minifyWhitespace: true,
    legalComments: "none", logLevel: "silent",
  });
  const hash = createHash("sha256").update(outputFiles[0].contents).digest("hex").slice(0, 12);
  return { polarMethod: JSON.stringify(hash) };
}
