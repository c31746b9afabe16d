import { describe, expect, it } from "vitest";
import { ballastNeeded, shiftNeeded } from "../../server/compute/mass/balance";
import { bodySides, bodyShell, bodyVolume } from "../../server/compute/mass/body";
import { massElements } from "../../server/compute/mass/elements";
import { panelArea } from "../../server/compute/mass/panel";
import { massProperties } from "../../server/compute/mass/properties";
import { sectionMoments } from "../../server/compute/mass/section";
import { body, half, load, naca, panel, parts, tube } from "../server/compute/mass/parts";
import { expectNear } from "./near";

/** Mass and CG of loads along x; the units are the source's own, as only their ratios count. */
function balance(...loads: readonly (readonly [weight: number, x: number])[]) {
  const found = massProperties(massElements(parts({ loads: loads.map(([weight, x], i) => load(`w${i}`, weight, [x, 0, 0])) })));
  if (!found) throw new Error("nothing weighs anything");
  return { mass: found.mass, x: found.cg[0] };
}

describe("weighing and loading, FAA-H-8083-1 and FAA-H-8083-25", () => {
  // Scale readings are loads at the wheels. Rounded in the source to 0.1 in, hence ± 0.05 in.
  it("nose wheel: 340 lb of 2006 lb, wheelbase 78 in, mains at 128 in (128 from memory)", () => {
    expect(Math.abs(balance([340, 128 - 78], [2006 - 340, 128]).x - 114.8)).toBeLessThan(0.05);
  });
  it("tail wheel: 67 lb of 1218 lb, 222 in behind mains at 7.5 in (inputs from memory)", () => {
    expect(Math.abs(balance([67, 7.5 + 222], [1218 - 67, 7.5]).x - 19.7)).toBeLessThan(0.05);
  });
  it("law of the lever: 100 lb at 50, 100 lb at 90, 200 lb at 150 in (inputs from memory)", () => {
    // Exact in the source; 1e-9 leaves room for the last bits.
    const { mass, x } = balance([100, 50], [100, 90], [200, 150]);
    expect(mass).toBe(400);
    expect(x).toBeCloseTo(110, 9);
  });
  it("shift of 100 lb from 30 to 150 in moves 8000 lb from 77.0 to 78.5 in", () => {
    const rest = (8000 * 77 - 100 * 30) / 7900;
    expect(balance([7900, rest], [100, 150]).x).toBeCloseTo(78.5, 9);
    expect(shiftNeeded(8000, 77, 78.5, 100)).toBeCloseTo(120, 9);
  });
  it("7800 lb at 81.5 in must come to 80.5 in: 65 lb go from 150 to 30 in", () => {
    expect(shiftNeeded(7800, 81.5, 80.5, 65)).toBeCloseTo(-120, 9);
  });
  it("140 lb added at 150 in to 6860 lb at 80.0 in: 81.4 in (inputs from memory)", () => {
    expect(Math.abs(balance([6860, 80], [140, 150]).x - 81.4)).toBeLessThan(0.05);
  });
  it("100 lb taken from 150 in of 6100 lb at 80.0 in: 78.8 in (inputs from memory)", () => {
    expect(Math.abs(balance([6100, 80], [-100, 150]).x - 78.8)).toBeLessThan(0.05);
  });
  it("ballast at +228 in for 1876 lb at +32.2 in, limit +33.0 in: 7.7 lb", () => {
    expect(Math.abs(ballastNeeded(1876, 32.2, 33, 228) - 7.7)).toBeLessThan(0.05);
  });
  it("nose ballast at 20 mm for 1.900 kg from 352 to 340 mm: 71.25 g, by the same formula", () => {
    // To 0.01 g, a tenth of what a workshop scale shows.
    const ballast = ballastNeeded(1.9, 0.352, 0.34, 0.02);
    expect(Math.abs(ballast - 0.07125)).toBeLessThan(1e-5);
    const after = balance([1.9, 0.352], [ballast, 0.02]);
    expect(after.mass).toBeCloseTo(1.97125, 9);
    expect(after.x).toBeCloseTo(0.34, 9);
  });
  it("0.300 kg pack of 2.000 kg moves 66.667 mm for 10 mm of CG; 40 mm give 6.000 mm", () => {
    expect(Math.abs(shiftNeeded(2, 0.34, 0.35, 0.3) - 66.667e-3)).toBeLessThan(1e-5);
    expect(balance([1.7, 0.34], [0.3, 0.38]).x - 0.34).toBeCloseTo(6e-3, 9);
  });
});

describe("areas and outlines", () => {
  it("trapezoid of chords 250 and 150 mm, span 1.6 m: 0.3200 m² (closed form)", () => {
    // Exact but for the last bits.
    expect(2 * panelArea(panel({ span: 0.8, chord: [0.25, 0.15], offset: 0.05 }))).toBeCloseTo(0.32, 12);
  });
  it("truncated cone shell 60 to 30 mm radius, 250 mm long: 0.071193 m², centroid 111.11 mm from the thick end", () => {
    // π(R1 + R2)s and h(R1 + 2R2)/(3(R1 + R2)), printed to five figures: 0.1 %.
    const sides = bodySides(body([{ x: 0, width: 0.12, height: 0.12, z: 0 }, { x: 0.25, width: 0.06, height: 0.06, z: 0 }]));
    expectNear(sides.mass, 0.071193, 0.001);
    expectNear(sides.x / sides.mass, 0.11111, 0.001);
  });
  it("ellipse of semi-axes 60 and 40 mm: perimeter 317.3088 mm (complete elliptic integral)", () => {
    // 0.01 %: the value has seven figures and the quadrature has no step error to speak of.
    const sides = bodySides(body([{ x: 0, width: 0.12, height: 0.08, z: 0 }, { x: 1, width: 0.12, height: 0.08, z: 0 }], { shape: "oval" }));
    expectNear(sides.mass, 0.3173088, 1e-4);
  });
  // Abbott & von Doenhoff's thickness form with its open trailing edge, by quadrature. 0.05 %: 200 straight pieces lie
  // up to 0.02 % inside the curve.
  it.each([["0009", 0.09, 2.02438], ["0012", 0.12, 2.03927], ["0015", 0.15, 2.05657]] as const)(
    "NACA %s: area 0.685083 t/c, its centroid at 0.42044 of the chord, outline %s",
    (digits, thickness, length) => {
      const { area, outline } = sectionMoments(naca(digits));
      expectNear(area.size, 0.685083 * thickness, 5e-4);
      expectNear(area.u / area.size, 0.42044, 5e-4);
      expectNear(outline.size, length, 5e-4);
    },
  );
  it("cylinder 80 mm across, 300 mm long: shell with ends 2πr(h + r), volume πr²h (closed forms)", () => {
    const cylinder = body([{ x: 0, width: 0.08, height: 0.08, z: 0 }, { x: 0.3, width: 0.08, height: 0.08, z: 0 }]);
    // Closed forms: only rounding between.
    expectNear(bodyShell(cylinder).mass, 2 * Math.PI * 0.04 * 0.34, 1e-9);
    expectNear(bodyVolume(cylinder).mass, Math.PI * 0.04 ** 2 * 0.3, 1e-9);
  });
});

describe("printed skins and tubes", () => {
  const halfWing = (density: number, wall: number) => massElements(parts({
    surfaces: [half([panel({ span: 0.75, chord: [0.2, 0.2] })], { skin: { density, wall } })],
  }));

  // Outline of NACA 0012 (above) × chord × length × wall × density; 0.1 % covers the outline's 0.02 %.
  it.each([[1240, 0.45e-3, 0.17069], [550, 0.55e-3, 0.092532]])(
    "half-wing skin NACA 0012, 200 × 750 mm, %s kg/m³, wall %s m: %s kg",
    (density, wall, mass) => expectNear(massProperties(halfWing(density, wall))?.mass ?? 0, mass, 0.001),
  );

  // t·ρ, kg/m²; densities of PLA, PETG, ABS and foamed PLA as in makers' data sheets. Exact but for rounding.
  it.each([[0.4e-3, 1240, 0.496], [0.45e-3, 1240, 0.558], [0.45e-3, 1270, 0.5715], [0.45e-3, 1040, 0.468], [0.55e-3, 550, 0.3025], [0.8e-3, 450, 0.36]])(
    "shell %s m of %s kg/m³ weighs %s kg/m²",
    (wall, density, perArea) => {
      const shell = body([{ x: 0, width: 0.1, height: 0.1, z: 0 }, { x: 0.5, width: 0.1, height: 0.1, z: 0 }]);
      const weighed = massProperties(massElements(parts({ bodies: [{ ...shell, skin: { wall, density } }] })));
      expectNear(weighed?.mass ?? 0, perArea * bodyShell(shell).mass, 1e-9);
    },
  );

  // Outer and inner diameter in mm, g/m at 1500 kg/m³: π(D² − d²)/4·ρ to five figures, 0.01 %.
  it.each([[4, 2, 14.137], [5, 3, 18.85], [6, 4, 23.562], [8, 6, 32.987], [10, 8, 42.412], [12, 10, 51.836], [14, 12, 61.261], [16, 14, 70.686], [20, 18, 89.535]])(
    "carbon tube %s × %s mm: %s g/m",
    (outer, inner, perMetre) => {
      const spar = tube("main.spar", [0, 0, 0], [0, 1, 0], outer / 1000, inner / 1000, 1500);
      const weighed = massProperties(massElements(parts({ surfaces: [half([], { spars: [spar] })] })));
      expectNear(weighed?.mass ?? 0, perMetre / 1000, 1e-4);
    },
  );
});
