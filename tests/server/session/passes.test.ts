import { beforeEach, expect, test } from "vitest";
import type { Finding } from "../../../shared/finding";
import type { Analysis } from "../../../server/analysis";
import type { PolarWant, WorkStep } from "../../../server/compute/section-air/polar-shelf";
import { Passes } from "../../../server/session/passes";

const uri = "file:///a";
const found = (message: string, start = 0): Finding => ({ code: "x", severity: "hint", message, place: { file: uri, start, end: start + 1 } });
/** A finding that rests on polars. */
const flown = (message: string, start = 0): Finding => ({ ...found(message, start), code: "polars" });
const want = (key: string): PolarWant => ({ key, shape: { type: "naca", digits: key }, reynolds: 150e3 });

interface Later {
  readonly polars: readonly string[];
  readonly findings: readonly Finding[];
}

/**
 * A text worked out: quick findings at once, slow ones after so many steps of so many milliseconds, the rest once polars are
 * there.
 */
class Work {
  reached: Analysis["reached"] = "quick";
  stopped = false;
  wanted: readonly PolarWant[] = [];
  findings: readonly Finding[];
  steps = 0;

  constructor(
    readonly quick: readonly Finding[], readonly slow: readonly Finding[], private readonly count: number, private readonly cost: number,
    private readonly later?: Later,
  ) {
    this.findings = quick;
  }

  get complete(): boolean {
    return this.reached === "polars";
  }

  *finish(): Generator<void, void> {
    for (let i = 0; i < this.count; i++) {
      this.steps++;
      clock += this.cost;
      yield;
    }
    this.wanted = (this.later?.polars ?? []).filter((key) => !shelf.known.has(key)).map(want);
    this.reached = this.wanted.length > 0 ? "slow" : "polars";
    this.findings = [...this.quick, ...this.slow, ...(this.complete ? this.later?.findings ?? [] : [])];
  }

  stop(): void {
    this.stopped = true;
  }

  awaits({ code }: Finding): boolean {
    return !this.complete && !this.stopped && (this.reached === "quick" || code === "polars");
  }
}

/** Polars that take so many steps of so many milliseconds each. */
class Shelf {
  readonly known = new Set<string>();
  readonly worked: string[] = [];
  private wants: readonly PolarWant[] = [];

  want(wants: readonly PolarWant[]): void {
    this.wants = wants.filter(({ key }) => !this.known.has(key));
  }

  wanted(): readonly PolarWant[] {
    return this.wants;
  }

  *workSteps(): Generator<WorkStep, void> {
    for (let [next] = this.wants; next; [next] = this.wants) {
      const { key } = next;
      this.worked.push(key);
      const wanted = (): boolean => this.wants.some((each) => each.key === key);
      for (let i = 0; i < polarSteps && wanted(); i++) {
        clock += 5;
        yield {};
      }
      if (!wanted()) continue;
      this.known.add(key);
      this.want(this.wants);
      yield { finished: key };
    }
  }
}

let polarSteps = 20;
let shelf: Shelf;
let clock = 0;
let turns: (() => void)[] = [];
let current: Work | undefined;
let shown: { readonly whole: boolean; readonly messages: readonly string[]; readonly starts: readonly number[] }[] = [];
let lines: (string | undefined)[] = [];
let failures: unknown[] = [];
let passes: Passes;

beforeEach(() => {
  polarSteps = 20;
  shelf = new Shelf();
  clock = 0;
  turns = [];
  shown = [];
  lines = [];
  failures = [];
  passes = new Passes({
    now: () => clock,
    later: (work) => turns.push(work),
    polars: shelf,
    analysis: () => current as unknown as Analysis | undefined,
    show: (_, findings, whole) => shown.push({ whole, messages: findings.map((f) => f.message), starts: findings.map((f) => f.place.start) }),
    progress: (line) => lines.push(line),
    failed: (_, error) => failures.push(error),
  });
});

/** Lets the event loop turn so often, or until nothing is left to do. */
function turn(times = 1000): number {
  let done = 0;
  while (done < times && turns.length > 0) {
    turns.shift()!();
    done++;
  }
  return done;
}

function look(work: Work): Work {
  current = work;
  passes.look(uri);
  return work;
}

test("work that takes no time is shown once, whole", () => {
  look(new Work([found("text")], [found("slow")], 5, 1));
  turn();
  expect(shown.map(({ whole, messages }) => [whole, messages])).toEqual([[true, ["text", "slow"]]]);
});

test("work that takes long is shown in two waves, and the loop turns between its steps", () => {
  look(new Work([found("text")], [found("slow")], 20, 5));
  const needed = turn();
  expect(shown.map(({ whole, messages }) => [whole, messages])).toEqual([[false, ["text"]], [true, ["text", "slow"]]]);
  // 12 ms along with the first wave, then 8 ms a turn: 100 ms in all.
  expect(needed).toBeGreaterThanOrEqual(10);
});

test("the slow findings of the text before stand, moved, until the new ones come", () => {
  look(new Work([], [found("slow", 10)], 1, 1));
  turn();
  passes.moved(uri, { start: 0, end: 0, length: 4 });
  look(new Work([], [found("new", 14)], 20, 5));
  turn();
  expect(shown.slice(1).map(({ messages, starts }) => [messages, starts])).toEqual([[["slow"], [14]], [["new"], [14]]]);
});

test("a newer text drops the older work", () => {
  const old = look(new Work([], [found("old")], 100, 5));
  turn(5);
  const before = old.steps;
  look(new Work([], [found("new")], 1, 1));
  turn();
  expect(old.steps).toBe(before);
  expect(shown.at(-1)).toMatchObject({ whole: true, messages: ["new"] });
  expect(shown.flatMap(({ messages }) => messages)).not.toContain("old");
});

test("texts that come in one after the other make one pass", () => {
  for (let i = 0; i < 20; i++) {
    look(new Work([found(`text ${i}`)], [], 1, 1));
    turn(1);
  }
  turn();
  expect(shown.map(({ messages }) => messages)).toEqual([["text 19"]]);
});

test("who waits for the figures is told when they are there, or when the text is closed", async () => {
  let told = "";
  look(new Work([], [], 20, 5));
  void passes.settled(uri).then(() => (told += "done "));
  turn(5);
  await Promise.resolve();
  expect(told).toBe("");
  turn();
  await Promise.resolve();
  expect(told).toBe("done ");
  look(new Work([], [], 20, 5));
  void passes.settled(uri).then(() => (told += "dropped"));
  passes.drop(uri);
  await Promise.resolve();
  expect(told).toBe("done dropped");
});

test("work that fails is told once and stops nothing else", () => {
  const bad = new Work([], [], 1, 1);
  bad.finish = function* () {
    throw new Error("broken");
  };
  look(bad);
  turn();
  expect(failures).toHaveLength(1);
  look(new Work([found("text")], [], 1, 1));
  turn();
  expect(shown.at(-1)).toMatchObject({ whole: true, messages: ["text"] });
});

const flight = (message: string, start: number, ...polars: string[]): Work =>
  new Work([found("text")], [found("slow", 5)], 4, 5, { polars, findings: [flown(message, start)] });

const seen = () => shown.map(({ whole, messages }) => [whole, messages]);

test("what rests on polars comes third, and the loop turns while they are worked out", () => {
  look(flight("stall", 10, "2412", "4412"));
  const needed = turn();
  expect(seen()).toEqual([[false, ["text"]], [false, ["text", "slow"]], [true, ["text", "slow", "stall"]]]);
  expect(shelf.worked).toEqual(["2412", "4412"]);
  // 200 ms of polars at 8 ms a turn, each over by less than a step of 5 ms.
  expect(needed).toBeGreaterThanOrEqual(200 / 13);
});

test("polars that are known make no third wave", () => {
  shelf.known.add("2412");
  look(flight("stall", 10, "2412"));
  turn();
  expect(seen()).toEqual([[false, ["text"]], [true, ["text", "slow", "stall"]]]);
  expect([shelf.worked, lines]).toEqual([[], []]);
});

test("what rested on polars in the text before stands, moved, until the new ones are there", () => {
  look(flight("stall", 10, "2412"));
  turn();
  shown = [];
  passes.moved(uri, { start: 0, end: 0, length: 4 });
  look(flight("new stall", 14, "4412"));
  turn();
  expect(shown.map(({ messages, starts }) => [messages, starts])).toEqual([
    [["text", "slow", "stall"], [0, 9, 14]],
    [["text", "slow", "stall"], [0, 5, 14]],
    [["text", "slow", "new stall"], [0, 5, 14]],
  ]);
});

test("a polar that the newer text wants too is gone on with; one that it doesn't is dropped", () => {
  polarSteps = 60;
  look(flight("stall", 10, "2412"));
  turn(12);
  expect(shelf.worked).toEqual(["2412"]);
  look(flight("stall", 10, "2412"));
  turn(12);
  look(flight("stall", 10, "4412"));
  turn();
  expect(shelf.worked).toEqual(["2412", "4412"]);
  expect([...shelf.known]).toEqual(["4412"]);
  expect(shown.at(-1)).toMatchObject({ whole: true });
});

test("a text adopted from one that waits for polars waits too, and works out nothing twice", () => {
  const first = look(flight("stall", 10, "2412"));
  turn(12);
  const second = flight("stall", 10, "2412");
  Object.assign(second, { reached: "slow", wanted: first.wanted, findings: first.findings });
  look(second);
  turn();
  expect([first.steps, second.steps]).toEqual([4, 4]);
  expect(shelf.worked).toEqual(["2412"]);
  expect(shown.at(-1)).toMatchObject({ whole: true, messages: ["text", "slow", "stall"] });
});

test("other texts' figures come before polars, and each text is shown as soon as its own are there", () => {
  const other = "file:///b";
  const works = new Map([[uri, flight("stall", 10, "2412")], [other, flight("stall", 10, "2412", "4412")]]);
  const order: string[] = [];
  passes = new Passes({
    now: () => clock, later: (work) => turns.push(work), polars: shelf, failed: (_, error) => failures.push(error), progress: () => undefined,
    analysis: (of) => works.get(of) as unknown as Analysis,
    show: (of, findings) => order.push(`${of.slice(-1)} ${findings.length} ${[...shelf.known].join(" ")}`.trim()),
  });
  passes.look(uri);
  passes.look(other);
  turn();
  expect(order).toEqual(["a 1", "b 1", "a 2", "b 2", "a 3 2412", "b 3 2412 4412"]);
});

test("polars that take over a second are told of, until they are there", () => {
  polarSteps = 150;
  look(flight("stall", 10, "2412", "4412", "0009"));
  turn();
  expect(lines).toEqual(["naca 4412 at 150,000 (2 of 3)", "naca 0009 at 150,000 (3 of 3)", undefined]);
});

test("typing on does not begin the telling anew", () => {
  polarSteps = 300;
  look(flight("stall", 10, "2412"));
  turn(120);
  look(flight("stall", 10, "2412"));
  turn();
  expect(lines).toEqual(["naca 2412 at 150,000 (1 of 1)", undefined]);
});

test("polars called off leave the text at what is known, and a newer text begins them again", async () => {
  polarSteps = 300;
  const work = look(flight("stall", 10, "2412"));
  let told = false;
  void passes.settled(uri).then(() => (told = true));
  turn(150);
  expect(lines).toEqual(["naca 2412 at 150,000 (1 of 1)"]);
  passes.callOff();
  await Promise.resolve();
  expect(turn()).toBeLessThanOrEqual(1);
  expect([told, work.stopped, lines.at(-1)]).toEqual([true, true, undefined]);
  expect(shown.at(-1)).toMatchObject({ whole: true, messages: ["text", "slow"] });
  look(flight("stall", 10, "2412"));
  turn();
  expect(shown.at(-1)).toMatchObject({ whole: true, messages: ["text", "slow", "stall"] });
});

test("a closed text wants nothing more", () => {
  look(flight("stall", 10, "2412"));
  turn(12);
  passes.drop(uri);
  turn();
  expect([...shelf.known]).toEqual([]);
});

test("polars that fail are told once of each text that waits for them", () => {
  shelf.workSteps = function* () {
    throw new Error("broken");
  };
  look(flight("stall", 10, "2412"));
  turn();
  expect(failures).toHaveLength(1);
  expect(turns).toEqual([]);
});
