import { describe, expect, it } from "vitest";
import { references } from "../references";
import { errorsAt, spread, type Errors } from "./section-polar-errors";

// Nine sections of the UIUC low-speed tests (M. S. Selig and others, Summary of Low-Speed Airfoil Data, vols. 1 to 3, 1995 to
// 1998; NREL/SR-500-34515, 2004), read where the reference data is there: coordinates and tables are not part of the project.
const sections = ["e387", "clarky", "sd7037", "rg15", "e374", "naca2415", "sd8020", "mh45", "s1223"];
const there = references("sections", "summary.csv") !== undefined;

// Some dozens of polars.
const patience = 240_000;

const known = new Map<number, readonly Errors[]>();
async function errors(reynolds: number): Promise<readonly Errors[]> {
  const found: Errors[] = [...(known.get(reynolds) ?? [])];
  if (found.length === 0) {
    for (const section of sections) {
      found.push(...[errorsAt(section, reynolds) ?? []].flat());
      // The runner asks now and then whether this is alive.
      await new Promise((done) => setImmediate(done));
    }
  }
  known.set(reynolds, found);
  return found;
}

/** Without S1223, whose camber of 9 % is judged on its highest lift alone: below some angle its lower side is separated. */
const plain = (all: readonly Errors[]) => all.filter(({ section }) => section !== "s1223");

// Tolerances: what the best of published methods reach against the same tables, at or above the scatter between models and tunnels
// (two models of one section: 0.36 deg in the angle of no lift, 0.05 in the highest lift, 6 to 7 % in drag).
describe.skipIf(!there)("polars against wind tunnels", () => {
  it.each([200_000, 300_000])("at %d", async (reynolds) => {
    const all = await errors(reynolds);
    const low = plain(all);
    const zeroLift = spread(low.map((each) => each.zeroLiftDegrees));
    expect(zeroLift.rms).toBeLessThan(0.6);
    expect(zeroLift.worst).toBeLessThan(1.3);
    const slope = spread(low.map((each) => each.slopePercent));
    expect(slope.rms).toBeLessThan(8);
    expect(slope.worst).toBeLessThan(15);
    expect(spread(all.map((each) => each.liftMax)).rms).toBeLessThan(0.08);
    expect(spread(low.map((each) => each.liftMax)).worst).toBeLessThan(0.15);
    expect(spread(low.map((each) => each.onsetDegrees)).absolute).toBeLessThan(2.5);
    const least = spread(all.map((each) => each.dragMinPercent));
    expect(least.absolute).toBeLessThan(8);
    expect(least.worst).toBeLessThan(25);
    expect(spread(low.flatMap((each) => each.dragPercent)).absolute).toBeLessThan(10);
    expect(spread(all.map((each) => each.bestRatioPercent)).absolute).toBeLessThan(12);
    // Measured for two sections only; the attached moment.
    expect(spread(all.map((each) => each.moment)).worst).toBeLessThan(0.01);
  }, patience);

  it("at 150000", async () => {
    const low = plain(await errors(150_000));
    expect(spread(low.map((each) => each.zeroLiftDegrees)).rms).toBeLessThan(1);
    expect(spread(low.map((each) => each.slopePercent)).rms).toBeLessThan(12);
    expect(spread(low.map((each) => each.liftMax)).rms).toBeLessThan(0.06);
    expect(spread(low.map((each) => each.dragMinPercent)).absolute).toBeLessThan(8);
    expect(spread(low.flatMap((each) => each.dragPercent)).absolute).toBeLessThan(10);
    expect(spread(low.map((each) => each.bestRatioPercent)).absolute).toBeLessThan(20);
  }, patience);

  // The slope is not held here: bubbles kink the curve, and 15 % rms is what comes of it.
  it("at 100000", async () => {
    const all = await errors(100_000);
    const low = plain(all);
    expect(spread(low.map((each) => each.zeroLiftDegrees)).rms).toBeLessThan(1);
    expect(spread(all.map((each) => each.liftMax)).rms).toBeLessThan(0.12);
    expect(spread(all.map((each) => each.dragMinPercent)).absolute).toBeLessThan(18);
    expect(spread(low.flatMap((each) => each.dragPercent)).absolute).toBeLessThan(25);
    expect(spread(all.map((each) => each.bestRatioPercent)).absolute).toBeLessThan(20);
    expect(spread(all.map((each) => each.moment)).worst).toBeLessThan(0.015);
  }, patience);

  it("at 60000", async () => {
    const all = await errors(60_000);
    expect(spread(all.map((each) => each.liftMax)).rms).toBeLessThan(0.15);
    expect(spread(all.map((each) => each.dragMinPercent)).absolute).toBeLessThan(30);
    expect(spread(all.map((each) => each.bestRatioPercent)).absolute).toBeLessThan(35);
  }, patience);

  it("the highest lift of a section of 9 % camber to a tenth, 0.2 of 2.2", async () => {
    for (const reynolds of [200_000, 300_000]) {
      expect(Math.abs((await errors(reynolds)).find(({ section }) => section === "s1223")!.liftMax!)).toBeLessThan(0.22);
    }
  }, patience);
});
