import { spawnSync } from "node:child_process";
import { sharedWorkspace } from "../../server/compute/lattice/dense/fast";
import { factorPlainly } from "../../server/compute/lattice/dense/plain";
import { factorSteps, solveFactored, type Factored } from "../../server/compute/lattice/lu";

/**
 * Least processor times in ms of solving a dense system for one right-hand side, its matrix copied, on one thread: what else
 * the machine does only ever adds to a time.
 */
export interface DenseTimes {
  readonly size: number;
  /** Undefined where WebAssembly is missing. */
  readonly compiled: number | undefined;
  readonly plain: number;
  /** By the LAPACK under each numpy that was found. */
  readonly numpy: readonly number[];
}

export const sizes = [200, 400, 800];

/** A numpy, and what its LAPACK is: Debian's python3-numpy brings the reference one, others an optimised one. */
export interface Numpy {
  readonly python: string;
  readonly name: string;
}

/** The numpies of the machine: of the Python found first, and of the system's own. */
export function numpies(): readonly Numpy[] {
  const script = [
    "import numpy, numpy.linalg, os",
    "maps = open('/proc/self/maps').read() if os.path.exists('/proc/self/maps') else ''",
    "kind = 'OpenBLAS' if 'openblas' in maps else 'MKL' if 'libmkl' in maps else 'reference LAPACK' if 'liblapack.so' in maps else 'its LAPACK'",
    "print(numpy.__file__, f'numpy {numpy.__version__}, {kind}', sep='\\t')",
  ].join("\n");
  const found = new Map<string, Numpy>();
  for (const python of ["python3", "/usr/bin/python3"]) {
    const { status, stdout } = spawnSync(python, ["-c", script], { encoding: "utf8" });
    const [file, name] = status === 0 ? stdout.trim().split("\t") : [];
    if (file && name && !found.has(file)) found.set(file, { python, name });
  }
  return [...found.values()];
}

/** Rounds by turns and their length in ms, so that what else the machine does falls on all alike. */
const rounds = 5;
const length = 300;

export function measureDense(size: number, others: readonly Numpy[]): DenseTimes {
  const matrix = Float64Array.from({ length: size * size }, () => 2 * Math.random() - 1);
  const right = Float64Array.from({ length: size }, () => 2 * Math.random() - 1);
  const times = { compiled: [] as number[], plain: [] as number[], numpy: others.map((): number[] => []) };
  for (let round = 0; round < rounds; round++) {
    if (sharedWorkspace()) times.compiled.push(...timed(() => solveFactored(finished(factorSteps(matrix.slice(), size))!, right)));
    times.plain.push(...timed(() => plainly(matrix.slice(), size, right)));
    others.forEach(({ python }, i) => times.numpy[i].push(...numpyTimes(python, size)));
  }
  const least = (all: readonly number[]): number => Math.min(...all);
  return { size, compiled: sharedWorkspace() && least(times.compiled), plain: least(times.plain), numpy: times.numpy.map(least) };
}

function plainly(values: Float64Array, size: number, right: Float64Array): Float64Array {
  return solveFactored({ size, values, order: finished(factorPlainly(values, size))! } satisfies Factored, right);
}

/** The first call, before the code is compiled in full, doesn't count; nor does numpy's. */
function timed(work: () => unknown): number[] {
  work();
  const times: number[] = [];
  for (const begin = performance.now(); performance.now() < begin + length;) {
    const at = process.cpuUsage();
    work();
    const { user, system } = process.cpuUsage(at);
    times.push((user + system) / 1000);
  }
  return times;
}

function numpyTimes(python: string, size: number): number[] {
  const script = [
    "import time, numpy",
    "random = numpy.random.default_rng(1)",
    `a, b = random.uniform(-1, 1, (${size}, ${size})), random.uniform(-1, 1, ${size})`,
    "numpy.linalg.solve(a, b)",
    "begin = time.perf_counter()",
    `while time.perf_counter() < begin + ${length / 1000}:`,
    "    at = time.process_time()",
    "    numpy.linalg.solve(a, b)",
    "    print((time.process_time() - at) * 1000)",
  ].join("\n");
  const one = Object.fromEntries(["OMP", "OPENBLAS", "MKL", "BLIS", "VECLIB"].map((name) => [`${name}_NUM_THREADS`, "1"]));
  const { stdout } = spawnSync(python, ["-c", script], { encoding: "utf8", env: { ...process.env, ...one, VECLIB_MAXIMUM_THREADS: "1" } });
  return stdout.trim().split("\n").map(Number);
}

function finished<T>(steps: Generator<void, T>): T {
  let step = steps.next();
  while (!step.done) step = steps.next();
  return step.value;
}
