import { expect, it } from "vitest";
import { PolarShelf } from "../../../../server/compute/section-air/polar-shelf";
import { sectionsAir } from "../../../../server/compute/section-air/sections-air";
import type { Section } from "../../../../server/model/design/geometry";

/** Works out what is wanted, letting the runner breathe. */
async function work(shelf: PolarShelf): Promise<void> {
  const steps = shelf.workSteps();
  for (let k = 0; !steps.next().done; k++) if (k % 20 === 0) await new Promise((done) => setImmediate(done));
}

// A real section end to end. The polar at 1.6 million once ended at a lift of 1.0, on another branch of solutions.
it("NACA 4412 at a million: asked, worked out, known; then upside down", async () => {
  const shelf = new PolarShelf();
  const airs = sectionsAir(shelf.get);
  const section: Section = { shape: { type: "naca", digits: "4412" } };
  expect(airs(section, 1e6)).toBeUndefined();
  await work(shelf);
  const air = airs(section, 1e6)!;
  expect(shelf.wanted()).toEqual([]);
  // NACA Report 563 and 586 (R. M. Pinkerton; E. N. Jacobs and A. Sherman, 1936, 1937), from memory (low): about 1.4 at a Reynolds
  // number of a million, angle of no lift -4 deg. Bands, as the numbers are rough: 0.12, half a degree.
  expect(Math.abs(air.liftMax - 1.4)).toBeLessThan(0.12);
  expect(Math.abs((air.zeroLiftAngle * 180) / Math.PI + 4)).toBeLessThan(0.5);

  const estimate = air.liftMin;
  expect([air.provisional, shelf.wanted().length]).toEqual([true, 2]);
  expect(air.drag(-0.6)).toBeGreaterThan(air.drag(0));
  await work(shelf);
  const known = airs(section, 1e6)!;
  const { liftMin, provisional } = known;
  expect([provisional, shelf.wanted()]).toEqual([false, []]);
  expect(liftMin).toBeLessThan(-0.5);
  expect(liftMin).toBeGreaterThan(-1.1);
  // The estimate is there to go on with: of the right size.
  expect(Math.abs(estimate - liftMin)).toBeLessThan(0.3);
}, 120_000);
