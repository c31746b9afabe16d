import fc from "fast-check";
import { afterEach, describe, expect, it, vi } from "vitest";
import type { Elements } from "../../../../server/compute/lattice/elements";
import { normalwash } from "../../../../server/compute/lattice/horseshoe";
import { influenceSteps } from "../../../../server/compute/lattice/influence";
import { layLattice } from "../../../../server/compute/lattice/lattice";
import { loadNormalwash } from "../../../../server/compute/lattice/normalwash/fast";
import { normalwashPlainly } from "../../../../server/compute/lattice/normalwash/plain";
import { designs } from "../designs";
import { finished } from "../finished";
import { random } from "./matrices";

/** Horseshoes anywhere, some of whose legs are taken away. */
function horseshoes(count: number, seed: number): Elements {
  const column = (of: number) => random(count, seed + 1000 * of);
  const leg = (of: number) => column(of).map((value) => (value > 0.8 ? 0 : 1));
  return {
    count, rows: 1, ax: column(1), ay: column(2), az: column(3), bx: column(4), by: column(5), bz: column(6), legA: leg(7), legB: leg(8),
    px: column(9), py: column(10), pz: column(11), ny: column(12), nz: column(13), slope: column(14),
  };
}

const felt = (work: typeof normalwash, e: Elements, core: number, i: number): number[] => {
  const out = new Float64Array(e.count).fill(0.5);
  work(e, core, e.px[i], e.py[i], e.pz[i], e.ny[i], e.nz[i], out);
  return [...out];
};

describe("velocities by horseshoes", () => {
  it("is worked out in WebAssembly here", () => expect(loadNormalwash()).toBeDefined());

  it("are the same numbers in WebAssembly, for any count, whichever lattice was asked before", () => {
    const other = horseshoes(5000, 1);
    fc.assert(fc.property(fc.integer({ min: 1, max: 41 }), fc.integer(), (count, seed) => {
      const e = horseshoes(count, seed);
      for (const i of [0, count - 1]) {
        expect(felt(normalwash, e, 1e-12, i)).toEqual(felt(normalwashPlainly, e, 1e-12, i));
        if (seed % 5 === 0) felt(normalwash, other, 1e-12, i);
      }
    }));
  });

  it("are the same on the lines themselves, level with them, and far ahead and behind", () => {
    const e = horseshoes(7, 3);
    const places = [[e.ax[2], e.ay[2], e.az[2]], [e.ax[2] + 1, e.ay[2], e.az[2]], [e.ax[2] - 1, e.ay[2], e.az[2]], [e.bx[6], 0.3, 0.1],
      [(e.ax[4] + e.bx[4]) / 2, (e.ay[4] + e.by[4]) / 2, (e.az[4] + e.bz[4]) / 2], [1e6, 0, 0], [-1e6, 0, 0]];
    for (const [x, y, z] of places) {
      const [a, b] = [new Float64Array(7), new Float64Array(7)];
      normalwash(e, 1e-12, x, y, z, 0.6, 0.8, a);
      normalwashPlainly(e, 1e-12, x, y, z, 0.6, 0.8, b);
      expect([...a]).toEqual([...b]);
      expect(a.every(Number.isFinite)).toBe(true);
    }
  });

  it("adds up to the influence for flow that is the same on both sides, and opposite", () => {
    const { surfaces, bodies } = designs.conventional;
    const lattice = layLattice(surfaces, { bodies, density: 0.5, antisymmetric: true })!;
    const { elements: e } = lattice;
    const [even, odd] = finished(influenceSteps(lattice, [1, -1]));
    expect(finished(influenceSteps(lattice, [-1]))[0]).toEqual(odd);
    for (const i of [0, 17, e.count - 1]) {
      const [own, image] = [new Float64Array(e.count), new Float64Array(e.count)];
      normalwashPlainly(e, lattice.core, e.px[i], e.py[i], e.pz[i], e.ny[i], e.nz[i], own);
      normalwashPlainly(e, lattice.core, e.px[i], -e.py[i], e.pz[i], -e.ny[i], e.nz[i], image);
      for (let j = 0; j < e.count; j++) {
        const mirrored = e.ay[j] === 0 && e.by[j] === 0 ? 0 : image[j];
        expect(even[i * e.count + j]).toBe(own[j] + mirrored);
        expect(odd[i * e.count + j]).toBe(own[j] - mirrored);
      }
    }
  });
});

describe("without WebAssembly", () => {
  afterEach(() => {
    vi.unstubAllGlobals();
    vi.resetModules();
  });

  it("are worked out plainly", async () => {
    vi.stubGlobal("WebAssembly", undefined);
    vi.resetModules();
    const { normalwash: here } = await import("../../../../server/compute/lattice/horseshoe");
    expect(loadNormalwash()).toBeUndefined();
    const e = horseshoes(9, 4);
    expect(felt(here, e, 1e-12, 3)).toEqual(felt(normalwashPlainly, e, 1e-12, 3));
  });
});
