import { describe, expect, it } from "vitest";
import { standardGravity } from "../../server/compute/constants";
import { biplaneInterference, inducedNearGround, inducedNearGroundByPair } from "../../server/compute/flight/ground-effect";
import { groundAir, landingRun, overStall, rollingForce, takeoffRun, type Run, type Roll } from "../../server/compute/flight/ground-run";
import { handLaunch } from "../../server/compute/flight/hand-launch";
import { expectNear } from "./near";

const run = (found: ReturnType<typeof takeoffRun>) => found as Run;

describe("induced drag near the ground, elliptic load", () => {
  // L. Prandtl, NACA TN 182, 1924: from the potential of the flat wake, four digits; an exact form, so only the last digit.
  it.each([[0.1, 0.6565], [0.2, 0.4842], [0.3, 0.3705], [0.5, 0.2322]])("biplane with a gap of %d spans: %d", (gap, factor) =>
    expect(biplaneInterference(gap)).toBeCloseTo(factor, 4));
  it("is one drag twice where the wings meet, and fades far off", () => {
    // Without a gap the integrand is a logarithm, of which 128 midpoints miss 2 ln 2/128 (times a cosine next to 1).
    expect(biplaneInterference(0)).toBeCloseTo(1 - Math.LN2 / 64, 5);
    expect(biplaneInterference(20)).toBeLessThan(1e-3);
  });
  // Prandtl's fit through his own results, within 1 % where he gave it.
  it.each([0.1, 0.2, 0.3, 0.4, 0.5])("Prandtl's fit at %d", (g) => expectNear(biplaneInterference(g), (1 - 0.66 * g) / (1.05 + 3.7 * g), 0.01));

  // C. Wieselsberger, NACA TM 77, 1922, and the pair of vortices of Introduction to Flight, ch. 6.
  it.each([[0.1, 0.5158, 0.719], [0.2, 0.7095, 0.911], [0.3, 0.8114, 0.958]])("%d spans up: %d by the image, %d by one pair of vortices", (height, image, pair) => {
    expect(inducedNearGround(height)).toBeCloseTo(image, 4);
    expect(inducedNearGroundByPair(height)).toBeCloseTo(pair, 3);
  });
});

// J. D. Anderson, Introduction to Flight: a small jet. The book takes g 9.8 (0.07 %) and rounds between steps.
const handbook = 5e-3;
const area = 29.54;
const density = 1.225;
const speedAt = (weight: number, lift: number) => Math.sqrt((2 * weight) / (density * area * lift));

describe("a small jet (Introduction to Flight, examples 6.17 and 6.18)", () => {
  it("takes off in 1103 m, with the force at 0.7 of the speed standing for all", () => {
    const weight = 88_176.75;
    const aspectRatio = 16.25 ** 2 / area;
    const height = 1.83 / 16.25;
    expectNear(inducedNearGroundByPair(height), 0.7645, 1e-3); // closed form
    const air = groundAir({
      density, area, height, lift: 1, parasite: 0.02, induced: 1 / (Math.PI * aspectRatio * 0.81), groundFactor: inducedNearGroundByPair,
    });
    const liftOff = overStall.liftOff * speedAt(weight, 1);
    expectNear(liftOff, 83.77, handbook);
    const mean = 0.7 * liftOff;
    expectNear(air.drag(mean)!, 3335, handbook);
    expectNear(air.lift(mean)!, 62_218, handbook);
    const rolling: Roll = { mass: weight / standardGravity, friction: 0.02, thrust: () => 32_485, drag: () => air.drag(mean), lift: () => air.lift(mean) };
    expectNear(run(takeoffRun(rolling, liftOff)).distance, 1102.7, handbook);
    // Forces at every speed: the mean one is a good guess, so within 5 %.
    expectNear(run(takeoffRun({ ...rolling, ...air }, liftOff)).distance, 1102.7, 0.05);
    expectNear(run(takeoffRun({ ...rolling, friction: 0, drag: () => 0 }, liftOff)).distance, 972, handbook);
  });

  it("stops in 257 m, printed 842 ft", () => {
    const weight = 54_966.4;
    const touchdown = 1.3 * speedAt(weight, 2.5);
    expectNear(touchdown, 45.317, handbook);
    const air = groundAir({ density, area, height: 0.1, lift: 0, parasite: 0.022, induced: 0 });
    const drag = air.drag(0.7 * touchdown)!;
    expectNear(drag, 400.6, handbook);
    const rolling: Roll = { mass: weight / standardGravity, friction: 0.4, drag: () => drag, lift: () => 0 };
    expectNear(run(landingRun(rolling, touchdown)).distance, 257.3, handbook);
    expectNear(run(landingRun(rolling, touchdown)).distance, 842 * 0.3048, handbook);
  });
});

describe("a model of 2 kg", () => {
  const mass = 2;
  const liftOff = 1.2 * Math.sqrt((2 * mass * standardGravity) / (density * 0.45 * 1.2));
  const air = groundAir({ density, area: 0.45, height: 0.1, lift: 0.5, parasite: 0.035, induced: 0.04476 * 0.25, groundFactor: () => 1 });
  const rolling: Roll = { mass, friction: 0.05, thrust: () => 8, ...air };

  it("takes off in 12.62 m: (m/2B) ln(A/(A − BV²))", () => {
    expectNear(liftOff, 9.2407, 1e-3);
    expectNear(run(takeoffRun(rolling, liftOff)).distance, 12.619, 1e-3);
    const a = 8 - 0.05 * mass * standardGravity;
    const b = (density * 0.45 * (0.035 + 0.04476 * 0.25 - 0.05 * 0.5)) / 2;
    expectNear(run(takeoffRun(rolling, liftOff)).distance, (mass / (2 * b)) * Math.log(a / (a - b * liftOff ** 2)), 1e-6); // the rule's error
    expectNear(run(takeoffRun(rolling, liftOff)).time, (mass / Math.sqrt(a * b)) * Math.atanh(liftOff * Math.sqrt(b / a)), 1e-6);
    expectNear(run(takeoffRun({ ...rolling, drag: () => air.drag(0.7 * liftOff), lift: () => air.lift(0.7 * liftOff) }, liftOff)).distance, 12.604, 1e-3);
  });

  it("never leaves grass that holds more than it pulls, and says at what speed it stays", () => {
    expect(takeoffRun({ ...rolling, friction: 0.5 }, liftOff)).toEqual({ stuckAt: 0 });
    const weak = takeoffRun({ ...rolling, thrust: (speed) => 8 - speed }, liftOff) as { stuckAt: number };
    expect(rollingForce({ ...rolling, thrust: (speed) => 8 - speed }, weak.stuckAt)!).toBeLessThanOrEqual(0);
    expect(weak.stuckAt).toBeGreaterThan(6);
  });

  it("a head wind of half the speed leaves about a quarter of the run, one of all of it none", () => {
    const calm = run(takeoffRun(rolling, liftOff)).distance;
    // Half the ground speed is a quarter of the energy; the air's part in the force is small.
    expectNear(run(takeoffRun({ ...rolling, headWind: liftOff / 2 }, liftOff)).distance, calm / 4, 0.05);
    expect(run(takeoffRun({ ...rolling, headWind: liftOff }, liftOff)).distance).toBe(0);
  });
});

describe("thrown by hand", () => {
  // With thrust equal to drag and a steady lift coefficient the path is F. W. Lanchester's phugoid (Aerodonetics, 1908; from memory):
  // with w = V/Vs, w³/3 − w cos θ is constant, so a level throw at w is level again at (√(12 − 3w²) − w)/2.
  const stallSpeed = 7;
  const drag = (speed: number) => 2 * (speed / stallSpeed) ** 2;
  const even = { mass: 1.5, density, stallSpeed, drag, thrust: drag };
  it.each([0.6, 0.8, 0.95])("at %d of the stall sinks as a phugoid does", (w) => {
    const level = (Math.sqrt(12 - 3 * w ** 2) - w) / 2;
    const { sinks, overStall: over } = handLaunch(even, w * stallSpeed)!;
    // Steps of a thousandth of a second, and the last is not cut: a tenth of a per cent.
    expectNear(sinks!, ((level ** 2 - w ** 2) * stallSpeed ** 2) / (2 * standardGravity), 1e-3);
    expect(over).toBeCloseTo(w, 12);
  });
  it("sinks less with thrust to spare, not at all from the stall on, and has no climb below it", () => {
    const strong = { ...even, thrust: () => 12 };
    expect(handLaunch(strong, 5)!.sinks!).toBeLessThan(handLaunch(even, 5)!.sinks!);
    expect(handLaunch(strong, 5)!.climb).toBeUndefined();
    expect(handLaunch(strong, 7.5)).toMatchObject({ sinks: 0, recovers: 0 });
    expect(handLaunch(strong, 7.5)!.climb!).toBeGreaterThan(0);
  });
  it("does not come level without lift to speak of", () => expect(handLaunch({ ...even, stallSpeed: 200 }, 5)!.sinks).toBeUndefined());
});
