import type { Powerplant } from "../../model/design/power";
import { swirlSpeed, type TorqueSpread } from "../propeller/swirl";
import type { LateralFlow, LateralLoads } from "../lattice/lateral-flow";
import type { LateralStrip } from "../lattice/lateral-strips";
import type { LateralAir, Washed } from "./lateral-air";
import type { Lateral } from "./plant";
import { slipstreamOf, stands, type Wind } from "./washed-strips";

/** A strip that meets the air at an angle of its own: towards its normal, rad of the flight's speed. */
export interface Turned {
  readonly strip: number;
  readonly slope: number;
}

/** Places along a strip at which the swirl is asked for. */
const places = 7;

/**
 * The angles at which fins and tailplanes meet the swirl of a propeller's slipstream: from the side on a fin, opposite on the two
 * halves of a tailplane. Where a strip lies partly in the slipstream, or across its middle, the mean along it.
 */
export function swirlAngles(
  strips: readonly LateralStrip[], plant: Powerplant, load: { readonly thrust: number; readonly torque: number; readonly spread?: TorqueSpread }, wind: Wind,
): Turned[] {
  const passing = slipstreamOf(plant, load, wind);
  const { spread, torque } = load;
  if (!passing || !spread) return [];
  const sense = plant.propeller?.clockwise === false ? -1 : 1;
  const [ax, ay, az] = plant.thrustAxis;
  return strips.flatMap((one, strip): Turned[] => {
    const { ny, length } = one;
    // Across the stream as it lies, all of it meets the slipstream that passes its middle.
    const middle = stands(one) ? passing(one.x, one.y, one.z) : undefined;
    if (!middle || middle.distance - length / 2 > middle.radius) return [];
    const { radius, velocity } = middle;
    const turning = { spread, torque, flux: wind.density * Math.PI * radius ** 2 * velocity, radius };
    const nz = Math.sqrt(Math.max(0, 1 - ny * ny));
    const along = nz * ay - ny * az;
    let mean = 0;
    for (let i = 0; i < places; i++) {
      const by = ((i + 0.5) / places - 0.5) * length;
      const [x, y, z] = [middle.x - by * along * ax, middle.y + by * (nz - along * ay), middle.z - by * (ny + along * az)];
      const distance = Math.sqrt(x * x + y * y + z * z);
      if (distance > 0 && distance < radius) mean += (swirlSpeed(turning, distance) * ((az * x - ax * z) * ny + (ax * y - ay * x) * nz)) / (distance * places);
    }
    return mean === 0 ? [] : [{ strip, slope: (-sense * mean) / wind.speed }];
  });
}

/**
 * What some strips that are turned by themselves do across the plane of symmetry over the flight's dynamic pressure, those in `washed` at
 * the speed of their air, while the whole lifts `lift` m².
 */
export type TurnedLoads = (turned: readonly Turned[], washed: readonly Washed[], lift: number) => LateralLoads;

/** About the origin. */
interface Response {
  /** Over dynamic pressure without lift, and with 1 m² of it. */
  readonly still: LateralLoads;
  readonly lifting: LateralLoads;
  readonly own: readonly LateralLoads[];
}

/** About (x, 0, z). Each strip's own response is solved when it is first asked for. */
export function turnedLoads(flow: LateralFlow, { x, z }: { readonly x: number; readonly z: number }): TurnedLoads {
  const { strips, rows } = flow;
  const known = new Map<number, Response>();
  /** To a strip and its image turned by one radian opposite ways. */
  const respond = (solved: number): Response => {
    const slopes = new Float64Array(strips.length * rows);
    strips.forEach((one, s) => { if (one.solved === solved) slopes.fill(one.image ? -1 : 1, s * rows, (s + 1) * rows); });
    const { circulation, loads } = flow.bend(slopes);
    const origin = { x: 0, z: 0 };
    return { still: loads(0, origin), lifting: loads(1, origin), own: flow.stripLoads(circulation, origin) };
  };
  const twice = new Set(strips.filter(({ image }) => image).map(({ solved }) => solved));
  return (turned, washed, lift) => {
    const odd = new Map<number, number>();
    for (const { strip, slope } of turned) {
      const { solved, image } = strips[strip];
      odd.set(solved, (odd.get(solved) ?? 0) + ((image ? -1 : 1) * slope) / (twice.has(solved) ? 2 : 1));
    }
    const sum = { side: 0, roll: 0, yaw: 0 };
    for (const [solved, slope] of odd) {
      const response = known.get(solved) ?? respond(solved);
      known.set(solved, response);
      const { still, lifting, own } = response;
      for (const of of ["side", "roll", "yaw"] as const) {
        const flown = still[of] + lift * (lifting[of] - still[of]);
        sum[of] += slope * washed.reduce((total, one) => total + one.speed * own[strips[one.strip].solved][of], flown);
      }
    }
    return { side: sum.side, roll: sum.roll - z * sum.side, yaw: sum.yaw + x * sum.side };
  };
}

/** What the swirl of a running propeller does, N and N m, with the strips in its slipstream, while the whole lifts `lift` m². */
export function swirlLoad(
  { strips, turned }: Pick<LateralAir, "strips" | "turned">, plant: Powerplant,
  load: { readonly thrust: number; readonly torque: number; readonly spread?: TorqueSpread }, wind: Wind, washed: readonly Washed[], lift: number,
): Lateral {
  const { side, roll, yaw } = turned(swirlAngles(strips, plant, load, wind), washed, lift);
  const pressure = (wind.density * wind.speed ** 2) / 2;
  return { side: pressure * side, roll: pressure * roll, yaw: pressure * yaw };
}
