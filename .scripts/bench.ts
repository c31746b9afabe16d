// npm run bench [-- KEYSTROKES]: how long figures and findings take to follow the typing, measured from outside the
// server's process, beside VS Code's JSON server on documents of the same lines in the same run; then the dense solve beside
// LAPACK's, how the lattice's answers settle as it grows finer, and running points of motors and propellers.
import { build } from "esbuild";
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { cpus, loadavg } from "node:os";
import { basename, join } from "node:path";
import { root, samples } from "../tests/clients/server";
import type * as Convergence from "./bench/convergence";
import { measureDense, numpies, sizes } from "./bench/dense";
import { measureJson } from "./bench/json-server";
import { type DesignTimes, type Edit, measureDesign, type Spread } from "./bench/measure";
import { runningPoints } from "./bench/running-points";
import { generateDesign } from "./generate-design";

const keystrokes = Number(process.argv[2] ?? 40);

/**
 * What each part of the work costs: nothing new, masses anew, aerodynamics anew, the propeller anew. No value comes twice: what is remembered from earlier keystrokes helps only where it would help a person.
 */
const edits: readonly Edit[] = [
  { name: "in a comment", from: "# bay 1", to: (n) => `# bay ${n}` },
  { name: "battery moved", from: "(95 mm, 0 mm, -20 mm)", to: (n) => `(${(90 + n * 0.07).toFixed(2)} mm, 0 mm, -20 mm)` },
  { name: "tip chord", from: "150 mm to 120 mm", to: (n) => `150 mm to ${(110 + n * 0.13).toFixed(2)} mm` },
  { name: "propeller pitch", from: "pitch = 6 in", to: (n) => `pitch = ${(5 + n * 0.011).toFixed(3)} in` },
];

const ms = (value: number): string => `${value < 10 ? value.toFixed(1) : Math.round(value)}`;
const pair = ({ p50, p95 }: Spread): string => `${ms(p50)} / ${ms(p95)}`;
const mb = (value: number | undefined): string => (value === undefined ? "?" : `${Math.round(value)}`);

function print(title: string, rows: readonly (readonly string[])[]): void {
  const widths = rows[0].map((_, i) => Math.max(...rows.map((row) => row[i].length)));
  console.log(`\n${title}`);
  for (const row of rows) console.log(`  ${row.map((cell, i) => (i === 0 ? cell.padEnd(widths[i]) : cell.padStart(widths[i]))).join("  ")}`);
}

function report(name: string, times: DesignTimes): void {
  print(`${name}, ${times.lines} lines: cold start ${ms(times.coldFirst)} ms to findings, ${ms(times.coldLast)} ms to all figures (${ms(times.unknownLast)} ms where no section polar is known); ` +
    `last of 30 quick keystrokes ${ms(times.burst)} ms; ${mb(times.memory)} MB`, [
    ["keystroke to … (ms, p50 / p95)", "first findings", "all figures"],
    ...times.edits.map((edit) => [edit.name, pair(edit.first), pair(edit.last)]),
  ]);
  for (const message of times.errors) console.log(`  not a sound design: ${message}`);
}

/** The edits whose place this text has; a design without any of them gets one at its first line's end. */
function fitting(text: string): readonly Edit[] {
  const found = edits.filter((edit) => text.includes(edit.from));
  const head = text.slice(0, text.indexOf("\n"));
  return found.length > 0 ? found : [{ name: "in a comment", from: head, to: (n) => `${head} # ${n}` }];
}

function reportDense(): void {
  const others = numpies();
  const rows = sizes.map((size) => measureDense(size, others));
  const ratio = (time: number | undefined, to: number): string => (time === undefined ? "?" : (time / to).toFixed(2));
  print("Dense solve, one right-hand side, one thread (least ms of processor time, and compiled over each numpy)", [
    ["unknowns", "compiled", "plain", ...others.flatMap(({ name }) => [name, "ratio"])],
    ...rows.map(({ size, compiled, plain, numpy }) => [
      `${size}`, compiled === undefined ? "?" : compiled.toFixed(2), plain.toFixed(2),
      ...numpy.flatMap((time) => [time.toFixed(2), ratio(compiled, time)]),
    ]),
  ]);
  if (others.length === 0) console.log("  numpy left out: no python3 has it (Debian: apt-get install python3-numpy)");
}

/** Bundled as what is shipped is: the parser's package does not load otherwise. */
async function reportConvergence(): Promise<void> {
  const outfile = join(root, ".cache/bench/convergence.cjs");
  await build({ absWorkingDir: root, entryPoints: [".scripts/bench/convergence.ts"], outfile, bundle: true, platform: "node", format: "cjs", logLevel: "warning" });
  const { convergence } = createRequire(outfile)(outfile) as typeof Convergence;
  console.log("\nStrips and rows against the usual, unknowns; off the finest: neutral point of the surfaces (% of mean chord), lift slope (%)");
  for (const file of samples()) console.log([`  ${basename(file)}`, ...convergence(file).map((line) => `    ${line}`)].join("\n"));
}

async function main(): Promise<void> {
  console.log(`${cpus().length} × ${cpus()[0].model}, Node ${process.version}, ${keystrokes} keystrokes each; load before ${loadavg()[0].toFixed(1)}`);

  const largest = samples().map((file) => ({ file, text: readFileSync(file, "utf8") })).sort((a, b) => b.text.length - a.text.length)[0];
  if (largest) report(largest.file.split(/[\\/]/).at(-1) ?? "", await measureDesign(largest.text, fitting(largest.text), keystrokes));
  for (const lines of [500, 5000]) {
    const text = generateDesign(lines);
    report("generated design", await measureDesign(text, fitting(text), keystrokes));
    const json = await measureJson(lines, keystrokes);
    print(`VS Code's JSON server, ${json.lines} lines: cold start ${ms(json.cold)} ms; ${mb(json.memory)} MB`, [
      ["keystroke to … (ms, p50 / p95)", "findings"],
      ["a number changed", pair(json.edit)],
    ]);
  }
  reportDense();
  await reportConvergence();
  console.log(`\nRunning points over 16 airspeeds and 3 throttles\n${runningPoints().map((line) => `  ${line}`).join("\n")}`);
}

void main();
