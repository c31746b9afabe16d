import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Aeroplane } from "../../../../server/compute/flight/aeroplane";
import { weightOf } from "../../../../server/compute/flight/aeroplane";
import { ceiling } from "../../../../server/compute/flight/ceiling";
import { landingRun, rollingForce, takeoffRun, type Roll, type Run } from "../../../../server/compute/flight/ground-run";
import { handLaunch } from "../../../../server/compute/flight/hand-launch";
import { bestEndurance, bestRange, leastDrag, leastPower, surplus, topSpeed } from "../../../../server/compute/flight/level";
import { farthestFlight, longestFlight } from "../../../../server/compute/flight/on-charge";
import { climbAt, fastestClimb, flattestGlide, glideRatio, leastSink, steadyPath, steepestClimb } from "../../../../server/compute/flight/path";
import { drain, type Store } from "../../../../server/compute/battery/store";
import { levelTurn, sustainedTurn, tightestTurn } from "../../../../server/compute/flight/turn";
import { parabolic } from "../../../published/parabolic";

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Models from 0.3 to 8 kg, thrust falling with speed, some of them able to climb straight up. */
const aeroplane = fc.record({
  mass: number(0.3, 8), loading: number(20, 120), aspectRatio: number(4, 14), parasite: number(0.02, 0.08), liftMax: number(0.9, 1.6), pull: number(0, 1.6), fade: number(0.01, 0.04),
}).map(({ mass, loading, aspectRatio, parasite, liftMax, pull, fade }): Aeroplane => {
  const weight = mass * 9.80665;
  const stallSpeed = Math.sqrt((2 * loading) / (1.225 * liftMax));
  const airframe = parabolic({ weight, area: weight / loading, aspectRatio, spanEfficiency: 0.8, parasite, stallSpeed });
  return { ...airframe, thrust: (speed) => pull * weight * (1 - fade * speed), electricPower: (thrust, speed) => (thrust * (speed + 5)) / 0.7 + 3 };
});

const each = (check: (a: Aeroplane) => void) => fc.assert(fc.property(aeroplane, check));

describe("steady flight", () => {
  it("balances: T − D = W sin γ and the lift is W cos γ", () => {
    fc.assert(fc.property(aeroplane, number(1, 4), (a, over) => {
      const speed = over * a.stallSpeed;
      const path = climbAt(a, speed);
      if (!path) return;
      const spare = a.thrust!(speed)! - a.drag(speed, path.loadFactor)! - weightOf(a) * Math.sin(path.angle);
      if (path.vertical) expect(spare).toBeGreaterThanOrEqual(0);
      // A sine found to 1e-13, near the vertical a load factor of its root.
      else expect(Math.abs(spare)).toBeLessThan(1e-5 * weightOf(a));
      expect(Math.hypot(path.rate, path.forward)).toBeCloseTo(speed, 9);
    }));
  });

  it("more thrust never lowers the climb, the top speed or the turn", () => each((a) => {
    const stronger = { ...a, thrust: (speed: number) => a.thrust!(speed)! + 0.05 * weightOf(a) };
    const more = (of: (a: Aeroplane) => number | undefined) => expect(of(stronger) ?? Infinity).toBeGreaterThanOrEqual((of(a) ?? -Infinity) - 1e-6);
    more((one) => fastestClimb(one)?.rate);
    more((one) => sustainedTurn(one, 1.5 * one.stallSpeed)?.loadFactor);
    if (topSpeed(a) !== undefined) more(topSpeed);
  }));

  it("nothing found is bettered at other speeds", () => {
    fc.assert(fc.property(aeroplane, number(1, 10), (a, over) => {
      const speed = over * a.stallSpeed;
      const rate = climbAt(a, speed)?.rate;
      if (rate !== undefined) expect(fastestClimb(a)!.rate).toBeGreaterThanOrEqual(rate - 1e-9 * speed);
      expect(leastDrag(a)!.value).toBeLessThanOrEqual(a.drag(speed)! * (1 + 1e-9));
      expect(leastPower(a)!.value).toBeLessThanOrEqual(a.drag(speed)! * speed * (1 + 1e-9));
      const glide = steadyPath(a, speed, 0);
      if (glide) expect(glideRatio(flattestGlide(a)!)!).toBeGreaterThanOrEqual(glideRatio(glide)! * (1 - 1e-9));
      if (glide) expect(leastSink(a)!.rate).toBeGreaterThanOrEqual(glide.rate - 1e-9 * speed);
      if (surplus(a, speed)! > 0) expect(topSpeed(a)!).toBeGreaterThan(speed);
    }));
  });

  it("keeps its order: steepest climb no faster than the fastest (of what climbs), least power below least drag", () => each((a) => {
    const [fast, steep] = [fastestClimb(a)!, steepestClimb(a)!];
    if (fast.rate > 0 && !fast.vertical && !steep.vertical) expect(steep.speed).toBeLessThanOrEqual(fast.speed * (1 + 1e-6)); // ends of golden sections
    expect(leastPower(a)!.at).toBeLessThanOrEqual(leastDrag(a)!.at * (1 + 1e-6));
  }));

  it("at the top speed thrust is drag", () => each((a) => {
    const speed = topSpeed(a);
    if (speed !== undefined) expect(Math.abs(surplus(a, speed)!)).toBeLessThan(1e-6 * weightOf(a)); // speed to 1e-10
  }));

  it("a turn at the limit of thrust balances; one tighter can't be found by asking", () => {
    fc.assert(fc.property(aeroplane, number(1, 5), (a, over) => {
      const speed = over * a.stallSpeed;
      const turn = sustainedTurn(a, speed, 4);
      if (!turn) return;
      if (turn.limit === "thrust") expect(Math.abs(a.thrust!(speed)! - a.drag(speed, turn.loadFactor)!)).toBeLessThan(1e-6 * weightOf(a));
      else expect(a.thrust!(speed)!).toBeGreaterThanOrEqual(a.drag(speed, turn.loadFactor)!);
      expect(tightestTurn(a, 4)!.radius).toBeLessThanOrEqual(turn.radius * (1 + 1e-6)); // golden section's end
      expect(levelTurn(speed, turn.bank)!.radius).toBeCloseTo(turn.radius, 9);
    }));
  });
});

describe("the ground", () => {
  const roll = (a: Aeroplane, friction: number): Roll => ({ mass: a.mass, friction, thrust: a.thrust, drag: (speed) => 0.5 * a.drag(a.stallSpeed)! * (speed / a.stallSpeed) ** 2, lift: () => 0 });
  /** The same run stepped through time. */
  const march = (rolling: Roll, liftOff: number): Run => {
    const step = (takeoffRun(rolling, liftOff) as Run).time / 2000;
    let [speed, distance, time] = [0, 0, 0];
    while (speed < liftOff) {
      const middle = speed + (rollingForce(rolling, speed)! * step) / (2 * rolling.mass);
      const gain = (rollingForce(rolling, middle)! * step) / rolling.mass;
      const share = Math.min(1, (liftOff - speed) / gain);
      [speed, distance, time] = [speed + gain, distance + (speed + (share * gain) / 2) * share * step, time + share * step];
    }
    return { distance, time };
  };
  it("a run is what its force gives step by step, more thrust shortens it, more friction lengthens it", () => {
    fc.assert(fc.property(aeroplane, number(0.02, 0.15), (a, friction) => {
      const liftOff = 1.2 * a.stallSpeed;
      const found = takeoffRun(roll(a, friction), liftOff);
      if (!found || "stuckAt" in found) return;
      const stronger = takeoffRun({ ...roll(a, friction), thrust: (speed) => a.thrust!(speed)! * 1.1 }, liftOff) as Run;
      expect(stronger.distance).toBeLessThanOrEqual(found.distance);
      const rougher = takeoffRun(roll(a, friction * 1.2), liftOff);
      if (rougher && "distance" in rougher) expect(rougher.distance).toBeGreaterThanOrEqual(found.distance);
      const marched = march(roll(a, friction), liftOff);
      expect(found.distance / marched.distance).toBeCloseTo(1, 3); // 2000 steps of the midpoint rule in time
      expect(found.time / marched.time).toBeCloseTo(1, 3);
    }));
  });
  it("stops shorter on more friction", () => {
    fc.assert(fc.property(aeroplane, number(0.02, 0.4), (a, friction) => {
      const still = { ...roll(a, friction), thrust: undefined };
      const found = landingRun(still, 1.15 * a.stallSpeed) as Run;
      expect((landingRun({ ...still, friction: friction * 1.5 }, 1.15 * a.stallSpeed) as Run).distance).toBeLessThan(found.distance);
    }));
  });
});

describe("charge", () => {
  const store = fc.record({ capacity: number(1000, 40_000), usable: number(0.5, 1), volts: number(6, 50), fall: number(0, 0.3), resistance: number(0, 0.05) })
    .map(({ volts, fall, ...rest }): Store => ({ ...rest, emf: (charge) => volts * (1 - fall * (1 - charge)) }));
  it("what the cells give is what is taken and what is lost, whole and in pieces", () => {
    fc.assert(fc.property(store, number(5, 300), number(0.1, 0.9), (s, power, share) => {
      const whole = drain(s, power, Infinity);
      if (whole.ended === "power") return;
      // The cells' energy: a straight fall, so the mean of both ends. Midpoints of a smooth integrand: 1e-4.
      const given = (whole.taken * (s.emf(1) + s.emf(whole.charge))) / 2;
      expect(Math.abs(given - power * whole.time - whole.heat)).toBeLessThan(1e-4 * given);
      expect(whole.charge).toBeCloseTo(1 - s.usable, 9);
      const first = drain(s, power, share * whole.time);
      const second = drain(s, power, Infinity, first.charge);
      expect(Math.abs(first.time + second.time - whole.time)).toBeLessThan(1e-4 * whole.time);
    }));
  });
  it("the longest flight is no shorter than the farthest, and not as far", () => {
    fc.assert(fc.property(aeroplane, store, (a, s) => {
      const fed = [{ store: s, share: 1 }];
      const [long, far] = [longestFlight(a, fed), farthestFlight(a, fed)];
      if (!long || !far || long.weak || far.weak) return;
      expect(long.time).toBeGreaterThanOrEqual(far.time * (1 - 1e-6));
      // Farthest is judged by power alone: what a pack loses at a higher current may shift it a little.
      if (s.resistance < 1e-3) expect(far.distance).toBeGreaterThanOrEqual(long.distance * 0.99);
    }));
  });
});

describe("what isn't known", () => {
  const gap = (a: Aeroplane, low: number, high: number): Aeroplane => ({
    ...a,
    drag: (speed, n) => (speed > low * a.stallSpeed && speed < high * a.stallSpeed ? undefined : a.drag(speed, n)),
    thrust: (speed) => (speed > high * 1.5 * a.stallSpeed ? undefined : a.thrust!(speed)),
  });
  const finite = (value: unknown): void => {
    if (typeof value === "number") expect(Number.isNaN(value)).toBe(false);
    else if (value && typeof value === "object") Object.values(value).forEach(finite);
  };
  it("gives gaps, never a number that is none", () => {
    fc.assert(fc.property(aeroplane, number(0.5, 4), number(0, 3), (whole, low, width) => {
      const a = gap(whole, low, low + width);
      [topSpeed, leastDrag, leastPower, bestRange, bestEndurance, fastestClimb, steepestClimb, flattestGlide, leastSink, tightestTurn].forEach((of) => finite(of(a)));
      finite(handLaunch(a, 0.8 * a.stallSpeed));
    }), { numRuns: 50 });
  });
  it("all unknown, or no motor: nothing", () => each((a) => {
    const blank = { ...a, drag: () => undefined };
    for (const of of [topSpeed, leastDrag, leastPower, bestRange, fastestClimb, flattestGlide, tightestTurn]) expect(of(blank)).toBeUndefined();
    const glider = { ...a, thrust: undefined, electricPower: undefined };
    for (const of of [topSpeed, bestRange, bestEndurance, fastestClimb, tightestTurn]) expect(of(glider)).toBeUndefined();
    expect(leastSink(glider)!.rate).toBeLessThan(0);
  }));
  it("a ceiling is in thinner air than the field's, none where it doesn't climb", () => {
    fc.assert(fc.property(aeroplane, (a) => {
      const at = (density: number): Aeroplane => ({ ...a, density, thrust: (speed) => (a.thrust!(speed)! * density) / 1.225, drag: (speed, n = 1) => a.drag(speed * Math.sqrt(density / 1.225), n), stallSpeed: a.stallSpeed * Math.sqrt(1.225 / density) });
      const found = ceiling(at, 1.225);
      expect(found === undefined).toBe(!(fastestClimb(a)!.rate >= 0));
      if (found && !found.above) expect(Math.abs(fastestClimb(at(found.density))!.rate)).toBeLessThan(1e-3); // density to 1e-6
    }), { numRuns: 30 });
  });
});
