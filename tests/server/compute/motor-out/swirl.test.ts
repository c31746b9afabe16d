import { describe, expect, it } from "vitest";
import { atmosphere } from "../../../../server/compute/atmosphere/atmosphere";
import { lateralFlowSteps } from "../../../../server/compute/lattice/lateral-flow";
import type { LateralStrip } from "../../../../server/compute/lattice/lateral-strips";
import { swirlAngles, turnedLoads } from "../../../../server/compute/motor-out/swirl";
import { swirlSpeed, torqueSpread } from "../../../../server/compute/propeller/swirl";
import type { Powerplant, Propeller } from "../../../../server/model/design/power";
import { settle } from "../../../../server/model/design/settle";
import { analyseStill } from "../../../service";
import { singleText } from "../../figures/singles";
import { twinText } from "../../figures/twins";

const air = atmosphere({ altitude: 0 })!;
const propeller: Propeller = { diameter: 0.3, pitch: 0.15, blades: 2, family: "thin", folding: false, clockwise: true };
const run = { rotation: 900, speed: 12, air };
const spread = torqueSpread(propeller, run)!;

describe("swirl of a slipstream", () => {
  it("carries the shaft's torque, however narrow it has become", () => {
    for (const radius of [0.15, 0.12]) {
      const [torque, flux, n] = [0.3, 1.6, 4000];
      let sum = 0;
      for (let i = 0; i < n; i++) {
        const share = (i + 0.5) / n;
        sum += (flux * 2 * share * (share * radius) * swirlSpeed({ spread, torque, flux, radius }, share * radius)) / n;
      }
      expect(sum / torque).toBeCloseTo(1, 4); // straight pieces, 4,000 places
    }
  });
  it("none on the axis, past its edge, or of a propeller that the air turns", () => {
    const there = { spread, torque: 0.3, flux: 1.6, radius: 0.14 };
    for (const distance of [0, 0.001, 0.14, 0.2]) expect(swirlSpeed(there, distance)).toBe(0);
    expect(torqueSpread(propeller, { ...run, speed: 60 })).toBeUndefined();
  });
  it("hardly changes its shape with speed: a fifth from standing to near the end of thrust, three quarters out", () => {
    const slow = torqueSpread(propeller, { ...run, speed: 1 })!;
    expect(Math.abs(slow(0.75) / spread(0.75) - 1)).toBeLessThan(0.2);
  });
});

describe("strips in the swirl of a propeller that turns clockwise seen from behind", () => {
  const plant: Powerplant = { path: "nose", hub: [0, 0, 0], thrustAxis: [-1, 0, 0], pusher: false, propeller };
  const strip = (form: Partial<LateralStrip>): LateralStrip =>
    ({ path: "upright", kind: "fin", x: 0.7, y: 0, z: 0, chord: 0.1, length: 0.02, ny: -1, along: [0, 1], solved: 0, image: false, ...form });
  const slope = (form: Partial<LateralStrip>, of = plant) =>
    swirlAngles([strip(form)], of, { thrust: 12, torque: 0.3, spread }, { speed: 12, angle: 0, density: air.density })[0]?.slope;
  it("a fin over the shaft meets air from the left, one under it from the right", () => {
    // Its normal points left: air to the right comes against it, as a slope above 0 has it.
    expect(slope({ z: 0.07 })).toBeGreaterThan(0);
    expect(slope({ z: -0.07 })).toBeCloseTo(-slope({ z: 0.07 })!, 12);
    expect(slope({ z: 0.07 }, { ...plant, propeller: { ...propeller, clockwise: false } })).toBeCloseTo(-slope({ z: 0.07 })!, 12);
  });
  it("a tailplane's left half meets it from below, its right half from above", () => {
    const half = (y: number) => slope({ kind: "tailplane", ny: 0, y });
    expect(half(-0.07)).toBeLessThan(0);
    expect(half(0.07)).toBeCloseTo(-half(-0.07)!, 12);
  });
  it("none ahead of the disc, beside the slipstream, or on a wing", () => {
    for (const form of [{ x: -0.1, z: 0.07 }, { z: 0.3 }, { kind: "wing" as const, ny: 0, y: 0.07 }]) expect(slope(form)).toBeUndefined();
  });
});

describe("strips turned one by one", () => {
  it.each([["of one fin in the plane of symmetry", singleText()], ["of a design that isn't symmetric", twinText().replace("fin upright {\n  at = (600 mm, 0 mm", "fin upright {\n  at = (600 mm, 30 mm")]])(
    "add up to the whole bent at once: %s", (_, text) => {
      const { surfaces } = settle({ surfaces: analyseStill(text).sets[0].loading.design.surfaces });
      const steps = lateralFlowSteps(surfaces, { bodies: [], density: 1 });
      let step = steps.next();
      while (!step.done) step = steps.next();
      const flow = step.value!;
      const about = { x: 0.05, z: 0.01 };
      const turned = flow.strips.map((strip, i) => ({ strip: i, slope: 0.01 * Math.sin(3 * i) + (strip.y > 0 ? 0.02 : 0) }));
      const slopes = new Float64Array(flow.strips.length * flow.rows);
      for (const one of turned) slopes.fill(one.slope, one.strip * flow.rows, (one.strip + 1) * flow.rows);
      const whole = flow.bend(slopes);
      const washed = [{ strip: 3, speed: 0.4, pressure: 0.96 }];
      const found = turnedLoads(flow, about)(turned, washed, 0.2);
      const own = flow.stripLoads(whole.circulation, about)[flow.strips[3].solved];
      const base = whole.loads(0.2, about);
      for (const of of ["side", "roll", "yaw"] as const) expect(found[of]).toBeCloseTo(base[of] + 0.4 * own[of], 10); // rounding of some hundred unknowns
    });
});
