import { describe, expect, it } from "vitest";
import { polarsOf } from "../../../../server/compute/polar/polar";
import { polarKey } from "../../../../server/compute/section-air/polar-key";
import { PolarShelf, type PolarStore } from "../../../../server/compute/section-air/polar-shelf";
import type { SectionShape } from "../../../../server/model/design/geometry";
import { madeUp } from "./made-up";

const section: SectionShape = { type: "naca", digits: "2412" };

function stored() {
  const texts = new Map<string, string>();
  const store: PolarStore = { read: (key) => texts.get(key), write: (key, text) => void texts.set(key, text) };
  return { texts, store };
}

describe("a shelf of polars", () => {
  it("works out what is wanted, in short steps, as one would at once", async () => {
    const shelf = new PolarShelf();
    const bad: SectionShape = { type: "naca", digits: "9" };
    expect([shelf.get(section, 400e3), shelf.get(bad, 400e3), shelf.get(section, 400e3)]).toEqual(["pending", "pending", "pending"]);
    const keys = shelf.wanted().map(({ key }) => key);
    const finished: string[] = [];
    const times: number[] = [];
    let last = performance.now();
    for (const step of shelf.workSteps()) {
      times.push(performance.now() - last);
      if (step.finished) finished.push(step.finished);
      if (times.length % 20 === 0) await new Promise((done) => setImmediate(done));
      last = performance.now();
    }
    expect(finished).toEqual(keys);
    expect(shelf.get(bad, 400e3)).toBe("none");
    expect(shelf.get(section, 400e3)).toEqual(polarsOf(section)(400e3));
    // Some hundreds of steps of Newton's method, 2 to 5 ms each. On a busy machine single ones may be held up, and all be some times slower.
    expect(times.length).toBeGreaterThan(100);
    expect(times.sort((a, b) => a - b)[times.length >> 1]).toBeLessThan(50);
  }, 60_000);

  it("goes on where work was dropped, and forgets", () => {
    const shelf = new PolarShelf();
    shelf.get(section, 400e3);
    const work = shelf.workSteps();
    for (let k = 0; k < 5; k++) work.next();
    work.return();
    expect(shelf.wanted()).toHaveLength(1);
    shelf.want([]);
    expect([...shelf.workSteps()]).toEqual([]);
  });

  it("drops what it is at when that is wanted no longer, and goes on with it as long as it is", () => {
    const [shelf, other] = [new PolarShelf(), { type: "naca", digits: "9" } as const];
    shelf.get(section, 400e3);
    shelf.get(other, 400e3);
    const [first, second] = shelf.wanted();
    const work = shelf.workSteps();
    for (let k = 0; k < 5; k++) expect(work.next().value).toEqual({});
    shelf.want([second, first]);
    expect(work.next().value).toEqual({});
    shelf.want([second]);
    // The outline first.
    expect(work.next().value).toEqual({});
    expect(work.next().value).toEqual({ finished: second.key });
    expect(work.next().done).toBe(true);
    shelf.want([second, first]);
    expect(shelf.wanted()).toEqual([first]);
  });

  it("keeps what it knows in a store, and takes no broken text for a polar", () => {
    const { texts, store } = stored();
    const first = new PolarShelf(store);
    first.put(polarKey(section, 1e5), madeUp(1e5));
    first.put(polarKey(section, 2e5), "none");
    const second = new PolarShelf(store);
    expect(second.get(section, 1e5)).toEqual(madeUp(1e5));
    expect(second.get(section, 2e5)).toBe("none");
    for (const broken of ["", "{", "null", "7", "{}", '{"reynolds":1}', texts.get(polarKey(section, 1e5))!.replace(/"drag":[0-9.]+/, '"drag":null')]) {
      texts.set(polarKey(section, 4e5), broken);
      expect(new PolarShelf(store).get(section, 4e5)).toBe("pending");
    }
  });

  it("drops the longest unused", () => {
    const shelf = new PolarShelf();
    for (let k = 0; k < 501; k++) {
      shelf.put(polarKey(section, 1000 + k), madeUp(1000 + k));
      if (k === 400) shelf.get(section, 1000);
    }
    expect(shelf.get(section, 1001)).toBe("pending");
    expect(shelf.get(section, 1000)).not.toBe("pending");
  });

  it("knows that a plate has no polar", () => {
    const shelf = new PolarShelf();
    expect(shelf.get({ type: "flat", thickness: 0.03 }, 1e5)).toBe("none");
    expect(shelf.wanted()).toEqual([]);
  });
});

describe("keys of polars", () => {
  const points = (y: number): SectionShape => ({ type: "coordinates", points: [[1, 0], [0.5, y], [0, 0], [0.5, -0.05], [1, 0]] });
  it("are short, fit for a file's name, and the same in every run", () => {
    expect(polarKey(section, 1e5)).toBe("naca2412-100000-2");
    expect(polarKey(points(0.1), 1e5)).toMatch(/^points[0-9a-f]{16}-100000-2$/);
    expect(polarKey(points(0.1), 1e5)).toBe(polarKey(points(0.1), 1e5));
  });
  it("differ where anything does", () => {
    const keys = [points(0.1), points(0.100001), section, { type: "naca", digits: "2413" } as const].flatMap((shape) => [polarKey(shape, 1e5), polarKey(shape, 2e5)]);
    expect(new Set(keys).size).toBe(8);
  });
});
