import { describe, expect, it } from "vitest";
import { kindAfter, kindBefore, linear, linearise, type Mode } from "../../../../server/compute/polar/layer/jacobian";
import { fill, station } from "../../../../server/compute/polar/layer/station";

const stream = { reynolds: 2e5, critical: 9 };

/** θ, mass, state and speed, at both ends of an interval. */
const cases: readonly [Mode, string, readonly number[], readonly number[]][] = [
  ["laminar", "attached", [1.2e-3, 3.2e-3, 1.5, 1.2], [1.25e-3, 3.3e-3, 1.6, 1.18]],
  ["laminar", "separated", [1.2e-3, 6e-3, 6, 1.1], [1.25e-3, 7e-3, 6.8, 1.08]],
  ["transition", "in a bubble", [1.2e-3, 6.5e-3, 8.6, 1.1], [1.35e-3, 5.2e-3, 0.06, 1.06]],
  ["turbulent", "attached", [2e-3, 3.4e-3, 0.06, 1.1], [2.1e-3, 3.5e-3, 0.058, 1.08]],
  ["turbulent", "separated", [4e-3, 16e-3, 0.09, 0.95], [4.2e-3, 18e-3, 0.1, 0.94]],
  ["wake", "thin", [3e-3, 4e-3, 0.05, 0.96], [2.95e-3, 3.6e-3, 0.048, 0.98]],
];

describe("slopes of the equations of a layer", () => {
  it.each(cases)("%s, %s", (mode, _, before, after) => {
    const [a, b, places] = [station(), station(), [0.4, 0.412]];
    const values = [...before, ...after];
    const at = (changed: readonly number[], shift: number) => {
      fill(a, kindBefore(mode), places[0] + shift, changed[0], changed[1], changed[2], changed[3], stream.reynolds);
      fill(b, kindAfter(mode), places[1] + shift, changed[4], changed[5], changed[6], changed[7], stream.reynolds);
      const out = linear();
      linearise(out, a, b, mode, stream);
      return out;
    };
    const found = at(values, 0);
    // Differences of both sides: off by the square of the step, and by rounding over it.
    const share = 1e-5;
    for (let k = 0; k <= 8; k++) {
      const step = k === 8 ? share : share * values[k];
      const moved = (sign: number) => at(values.map((value, i) => (i === k ? value + sign * step : value)), k === 8 ? sign * step : 0).value;
      const [up, down] = [moved(1), moved(-1)];
      for (let e = 0; e < 3; e++) {
        const wanted = (up[e] - down[e]) / 2;
        const given = step * (k === 8 ? found.shift[e] : found.slope[e * 8 + k]);
        expect(Math.abs(given - wanted), `equation ${e} by ${k}`).toBeLessThan(1e-4 * Math.abs(wanted) + 1e-10);
      }
    }
  });
});
