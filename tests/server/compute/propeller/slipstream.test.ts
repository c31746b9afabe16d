import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { slipstream } from "../../../../server/compute/propeller/slipstream";
import { expectNear } from "../../../published/near";

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const base = { load: { thrust: 10, torque: 0.2 }, diameter: 0.3, speed: 12, density: 1.225, distance: 0 };

describe("air behind a propeller", () => {
  it("standing still moves at √(T/2ρA) in the disc and twice that far behind, √½ as wide", () => {
    const still = { ...base, speed: 0 };
    const induced = Math.sqrt(10 / (2 * 1.225 * Math.PI * 0.15 ** 2));
    const [disc, far] = [0, 1e6].map((distance) => slipstream({ ...still, distance }));
    expectNear(disc.velocity, induced, 1e-12);
    expectNear(far.velocity, 2 * induced, 1e-9);
    expectNear(disc.radius, 0.15, 1e-12);
    expectNear(far.radius, 0.15 * Math.SQRT1_2, 1e-9);
    expect(disc.velocityRatio).toBeUndefined();
  });

  it("one radius behind has 85 % of its speed: 1 + 1/√2 of the disc's", () => {
    const induced = slipstream(base).velocity - 12;
    expectNear(slipstream({ ...base, distance: 0.15 }).velocity - 12, induced * (1 + Math.SQRT1_2), 1e-12);
  });

  it("carries thrust, torque and flow", () => {
    fc.assert(fc.property(number(-3, 40), number(0, 1), number(0.1, 0.6), number(6, 40), number(0.9, 1.3), (thrust, torque, diameter, speed, density) => {
      const at = (distance: number) => slipstream({ load: { thrust, torque }, diameter, speed, density, distance });
      const area = (Math.PI * diameter ** 2) / 4;
      if (speed ** 2 + (2 * thrust) / (density * area) < 1) return;
      const [disc, near, far] = [0, diameter, 1e9].map(at);
      const flux = density * area * disc.velocity;
      expect(Math.abs(flux * (far.velocity - speed) - thrust)).toBeLessThan(1e-6 * (Math.abs(thrust) + flux * speed));
      for (const place of [disc, near, far]) {
        expectNear(density * Math.PI * place.radius ** 2 * place.velocity, flux, 1e-9);
        // As a solid body: the speed at three quarters of the radius is ¾ ω r, and the torque ½ flux ω r².
        const turning = (place.velocity * Math.tan(place.swirl)) / (0.75 * place.radius);
        expect(Math.abs(0.5 * flux * turning * place.radius ** 2 - torque)).toBeLessThan(1e-9 * (torque + 1));
      }
    }), { numRuns: 200, seed: 1_912 });
  });

  it("stands, with nothing to say, behind a disc that brakes beyond momentum", () => {
    const { velocity, radius, swirl } = slipstream({ ...base, load: { thrust: -50, torque: -0.1 }, distance: 1e9 });
    expect(velocity).toBeCloseTo(0, 6);
    expect([radius, swirl].every(Number.isFinite)).toBe(true);
  });

  it("does not turn without torque, nor move without thrust", () => {
    const free = slipstream({ ...base, load: { thrust: 0, torque: 0 }, distance: 0.4 });
    expect(free).toEqual({ radius: expect.closeTo(0.15, 12) as number, velocity: 12, velocityRatio: 1, swirl: 0 });
  });
});
