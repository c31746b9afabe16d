import { beforeEach, expect, test } from "vitest";
import type { Finding } from "../../../shared/finding";
import type { Analysis } from "../../../server/analysis";
import { Passes } from "../../../server/session/passes";

const uri = "file:///a";
const found = (message: string, start = 0): Finding => ({ code: "x", severity: "hint", message, place: { file: uri, start, end: start + 1 } });

/** A text worked out: quick findings at once, slow ones after so many steps of so many milliseconds. */
class Work {
  complete = false;
  findings: readonly Finding[];
  steps = 0;

  constructor(readonly quick: readonly Finding[], readonly slow: readonly Finding[], private readonly count: number, private readonly cost: number) {
    this.findings = quick;
  }

  *finish(): Generator<void, void> {
    for (let i = 0; i < this.count; i++) {
      this.steps++;
      clock += this.cost;
      yield;
    }
    this.complete = true;
    this.findings = [...this.quick, ...this.slow];
  }
}

let clock = 0;
let turns: (() => void)[] = [];
let current: Work | undefined;
let shown: { readonly whole: boolean; readonly messages: readonly string[]; readonly starts: readonly number[] }[] = [];
let failures: unknown[] = [];
let passes: Passes;

beforeEach(() => {
  clock = 0;
  turns = [];
  shown = [];
  failures = [];
  passes = new Passes({
    now: () => clock,
    later: (work) => turns.push(work),
    analysis: () => current as unknown as Analysis | undefined,
    show: (_, findings, whole) => shown.push({ whole, messages: findings.map((f) => f.message), starts: findings.map((f) => f.place.start) }),
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
