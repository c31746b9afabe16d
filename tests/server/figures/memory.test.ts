import { expect, it } from "vitest";
import { Memory } from "../../../server/figures/memory";

const counted = () => {
  let times = 0;
  return { work: () => ++times, get times() { return times; } };
};

it("an answer is worked out once, whatever order its asker comes in", () => {
  const [memory, of] = [new Memory(), counted()];
  for (let i = 0; i < 3; i++) memory.recall("lattice", { chord: 1 }, of.work);
  expect(of.times).toBe(1);
  memory.recall("lattice", { chord: 2 }, of.work);
  memory.recall("other", { chord: 1 }, of.work);
  expect(of.times).toBe(3);
});

it("what one analysis needs is kept, however much, up to the most; of what none has asked for lately a few", () => {
  const memory = new Memory(64);
  const ask = (n: number) => {
    const one = counted();
    memory.recall("lattice", n, one.work);
    return one.times === 1;
  };
  memory.begin();
  for (let n = 0; n < 40; n++) ask(n);
  for (let n = 0; n < 40; n++) expect(ask(n), `${n} is still known`).toBe(false);
  for (let i = 0; i < 5; i++) memory.begin();
  ask(100);
  // The latest of the old ones stay.
  expect(ask(39)).toBe(false);
  expect(ask(0)).toBe(true);
  const full = new Memory(4);
  full.begin();
  for (let n = 0; n < 5; n++) full.recall("lattice", n, () => n);
  const first = counted();
  full.recall("lattice", 0, first.work);
  expect(first.times).toBe(1);
});
