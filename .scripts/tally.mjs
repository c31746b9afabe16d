// Adds up vitest's JSON results of a folder and ends with 1 if anything failed: node tally.mjs FOLDER FAILED_STEPS
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";

const [folder, steps] = process.argv.slice(2);
let passed = 0;
let failed = 0;
let skipped = 0;
for (const name of readdirSync(folder).filter((each) => each.endsWith(".json"))) {
  const result = JSON.parse(readFileSync(join(folder, name), "utf8"));
  passed += result.numPassedTests;
  failed += result.numFailedTests;
  skipped += result.numPendingTests + result.numTodoTests;
  // A file that failed before or after its tests has none to count.
  failed += result.testResults.filter((file) =>
    file.status === "failed" && file.assertionResults.every((test) => test.status !== "failed")).length;
}
// A step that failed without a test of its own, such as the type check, counts as one.
failed = Math.max(failed, Number(steps));
console.log(`${passed} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ""}`);
process.exitCode = failed > 0 || passed === 0 ? 1 : 0;
