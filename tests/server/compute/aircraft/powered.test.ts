import { expect, it } from "vitest";
import { poweredMargin, type Pulling } from "../../../../server/compute/aircraft/powered";
import { neutralPoint } from "../../../../server/compute/stability/neutral-point";
import { mirrored } from "../airframes";

const wing = mirrored([[0, 0, 0, 0.25], [0, 0.8, 0, 0.2]]);
const tail = mirrored([[0.8, 0, 0, 0.14], [0.8, 0.25, 0, 0.14]], { kind: "tailplane", path: "tail" });
const pitch = neutralPoint({ surfaces: [wing, tail], bodies: [] })!;
const flight = { speed: 14, density: 1.225, x: 0.08 };
const chord = pitch.reference.meanChord;
const still = (pitch.x - flight.x) / chord;
const propeller = (change: Partial<Pulling>): Pulling => ({ path: "nose", hub: [-0.25, 0, 0], diameter: 0.28, thrust: 0, torque: 0, crossForce: 0, ...change });
const margin = (change: Partial<Pulling>) => poweredMargin(pitch, [propeller(change)], flight)!;

it("a propeller that does nothing leaves the margin as it is", () => {
  expect(margin({}).margin).toBeCloseTo(still, 12);
  expect(poweredMargin(pitch, [], flight)!.margin).toBeCloseTo(still, 12);
});

it("its force across the shaft ahead of the balance point takes margin away, behind it gives some: by the lever, to first order", () => {
  const crossForce = 1e-4;
  const pressure = (1.225 * 14 ** 2) / 2;
  for (const hub of [[-0.25, 0, 0], [1.2, 0, 0]] as const) {
    const { byForce } = margin({ crossForce, hub });
    const lift = (crossForce * 14 * (1 + pitch.lattice.upwash(hub))) / pressure / (pitch.liftSlope * pitch.reference.area);
    // Lift at a place takes the neutral point towards it: by its share of all lift times the way there.
    expect(byForce).toBeCloseTo((lift * (hub[0] - pitch.x)) / chord, 8);
    expect(Math.sign(byForce)).toBe(hub[0] < 0.1 ? -1 : 1);
  }
});

it("thrust ahead of the wing costs some margin in all, as tractors do; behind all surfaces it costs none", () => {
  expect(margin({ thrust: 2.5 }).margin).toBeLessThan(still);
  // Some per cent of the mean chord: common practice, no source.
  expect(margin({ thrust: 2.5 }).margin).toBeGreaterThan(still - 0.08);
  expect(margin({ thrust: 2.5, hub: [1.2, 0, 0] }).margin).toBeCloseTo(still, 12);
});
