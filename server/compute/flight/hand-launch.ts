import { standardGravity } from "../constants";
import { liftLimit, weightOf, type Aeroplane } from "./aeroplane";
import { climbAt } from "./path";

export interface HandLaunch {
  /** Of the throw over the stall; under 1 it leaves the hand stalled. */
  readonly overStall: number;
  /** Steady climb at the speed of the throw, m/s; absent below the stall or where thrust isn't known. */
  readonly climb?: number;
  /** How soon it gains speed flying level, m/s²; negative loses. Below the stall, at the lift the wing can give. */
  readonly gain?: number;
  /** Height lost before the path is level again, m; 0 from the stall on. Absent where it is not within `longest` seconds. */
  readonly sinks?: number;
  /** s until then. */
  readonly recovers?: number;
}

/** A throw that is still sinking after this long has failed, s. */
const longest = 5;
const step = 1e-3;

/**
 * A level throw at a speed, at full throttle. Below the stall it is followed as a point at full lift, thrust along its path, until that is
 * level again (midpoint rule). Not modelled: the pilot's pull, the time propeller and wing take to work, the throw's own angle.
 */
export function handLaunch(aeroplane: Aeroplane, speed: number): HandLaunch | undefined {
  const { stallSpeed, mass } = aeroplane;
  if (!(speed > 0 && stallSpeed > 0)) return undefined;
  const flies = speed >= stallSpeed;
  const drag = flies ? aeroplane.drag(speed) : stalledDrag(aeroplane, speed);
  const thrust = aeroplane.thrust?.(speed);
  const climb = flies ? climbAt(aeroplane, speed)?.rate : undefined;
  const dip = flies ? { sinks: 0, recovers: 0 } : dipOf(aeroplane, speed);
  return {
    overStall: speed / stallSpeed, ...(climb !== undefined && { climb }), ...dip,
    ...(thrust !== undefined && drag !== undefined && { gain: (thrust - drag) / mass }),
  };
}

/** At full lift the coefficients stand: drag falls with the square of the speed. */
function stalledDrag({ drag, stallSpeed }: Aeroplane, speed: number): number | undefined {
  const full = drag(stallSpeed);
  return full === undefined ? undefined : full * (speed / stallSpeed) ** 2;
}

function dipOf(aeroplane: Aeroplane, speed: number): Pick<HandLaunch, "sinks" | "recovers"> {
  const weight = weightOf(aeroplane);
  const change = (v: number, angle: number): readonly [number, number] => {
    const force = (aeroplane.thrust?.(v) ?? NaN) - (stalledDrag(aeroplane, v) ?? NaN);
    const lift = weight * liftLimit(aeroplane, v);
    return [force / aeroplane.mass - standardGravity * Math.sin(angle), (lift - weight * Math.cos(angle)) / (aeroplane.mass * v)];
  };
  let [v, angle, height] = [speed, 0, 0];
  for (let time = step; time < longest; time += step) {
    const [dv, da] = change(v, angle);
    const [midSpeed, midAngle] = [v + (dv * step) / 2, angle + (da * step) / 2];
    const [mv, ma] = change(midSpeed, midAngle);
    [v, angle, height] = [v + mv * step, angle + ma * step, height + midSpeed * Math.sin(midAngle) * step];
    if (!Number.isFinite(v) || v <= 0 || angle < -Math.PI / 2) return {};
    if (angle >= 0 && time > step) return { sinks: -height, recovers: time };
  }
  return {};
}
