import { defineConfig } from "vitest/config";

export default defineConfig({
  root: new URL("..", import.meta.url).pathname,
  test: {
    include: ["tests/**/*.test.ts"],
    // Files of one run share two cores with the servers they start.
    maxWorkers: 2,
    minWorkers: 1,
    // A test that hangs is still found; one that waits for the other core is not called broken.
    testTimeout: 20_000,
  },
});
