import { describe, it } from "vitest";
import type { Elements } from "../../server/compute/lattice/elements";
import { upwashBy } from "../../server/compute/lattice/upwash";
import { normalwash } from "../../server/compute/lattice/horseshoe";
import { horseshoes, type Point } from "./horseshoes";
import { expectNear } from "./near";

const upward = (e: Elements, [x, y, z]: Point): number => {
  const out = new Float64Array(e.count);
  normalwash(e, 0, x, y, z, 0, 1, out);
  return out.reduce((sum, value) => sum + value, 0);
};

// Law of Biot and Savart, closed forms. Exact; 1e-5 is the last printed digit.
const printed = 1e-5;

describe("vortex kernels", () => {
  it("straight segment of length 1, half a length off its middle: 0.225079", () => {
    expectNear(Math.abs(upward(horseshoes([[[0, -0.5, 0], [0, 0.5, 0]]], 0), [0.5, 0, 0])), 0.225079, printed);
  });

  it("square ring of side 1, at its centre: 2√2/π", () => {
    const corner: Point[] = [[0, 0, 0], [0, 1, 0], [1, 1, 0], [1, 0, 0]];
    const ring = horseshoes(corner.map((p, i) => [p, corner[(i + 1) % 4]] as const), 0);
    expectNear(Math.abs(upward(ring, [0.5, 0.5, 0])), (2 * Math.SQRT2) / Math.PI, 1e-12);
  });

  it.each([[0.5, 0.768468], [1, 0.674191], [2, 0.646416], [1e6, 0.63662]])("horseshoe of span 1, on its middle line %d behind", (x, downwash) => {
    expectNear(-upward(horseshoes([[[0, -0.5, 0], [0, 0.5, 0]]], 1), [x, 0, 0]), downwash, printed);
  });

  it("legs alone far ahead fade to nothing without cancelling away", () => {
    const wash = upward(horseshoes([[[0, -0.5, 0], [0, 0.5, 0]]], 1), [-1000, 0.1, 0.2]);
    // A distant horseshoe ahead is a doublet: Γ b / (4π x²) from its bound line, less half of that from the legs.
    expectNear(wash, 1 / (8 * Math.PI * 1000 ** 2), 1e-3);
  });
});

// H. Glauert, The Elements of Aerofoil and Airscrew Theory: elliptic lifting line, flat wake, on the middle line x half spans
// behind: ε πA/CL = 1 + (2/π)(√(1+x²)/x) E(k), k² = 1/(1+x²).
describe("downwash behind an elliptic lifting line", () => {
  const count = 40;
  const y = (i: number) => -Math.cos((Math.PI * i) / count);
  const line = horseshoes(Array.from({ length: count }, (_, i) => [[0, y(i), 0], [0, y(i + 1), 0]] as const), 1);
  const columns = { edges: Array.from({ length: count + 1 }, (_, i) => y(i)), middles: Array.from({ length: count }, (_, i) => y(i + 0.5)) };
  const circulation = Float64Array.from({ length: count }, (_, i) => Math.sin((Math.PI * (i + 0.5)) / count));
  const upwash = upwashBy({ elements: line, symmetric: false, core: 0, columns }, circulation);

  it.each([[0.5, 2.6776], [0.75, 2.3542], [1, 2.216], [1.5, 2.1032], [2, 2.0598], [1e6, 2]])("%d half spans behind", (x, factor) => {
    // An elliptic load of unit height on unit half span: CL/πA is a quarter of it. 0.2 %: forty steps, and the straight line
    // between the middles on both sides of the edge at y = 0.
    expectNear(-upwash([x, 0, 0]) * 4, factor, 2e-3);
  });
});
