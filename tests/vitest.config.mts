import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";
import { polarMethod } from "../.scripts/polar-method.mjs";

export default defineConfig({
  root: new URL("..", import.meta.url).pathname,
  define: await polarMethod(),
  test: {
    // Section polars are worked out once for all tests, and for the servers they start.
    env: { SPARWRIGHT_CACHE: fileURLToPath(new URL("../.cache/tests", import.meta.url)) },
    include: ["tests/**/*.test.ts"],
    // Files of one run share two cores with the servers they start.
    maxWorkers: 2,
    minWorkers: 1,
    // A test that hangs is still found; one that waits for the other core, or is the first to need a polar, is not called broken.
    testTimeout: 60_000,
  },
});
