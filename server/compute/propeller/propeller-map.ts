import type { Propeller } from "../../model/design/power";
import type { Air } from "../atmosphere/atmosphere";
import { bladeOf, type Blade } from "./blade";
import { propellerLoad, ringLoads, type PropellerLoad } from "./propeller-at";

export interface PropellerFlow {
  /** rad/s, above 0. */
  readonly rotation: number;
  /** Along the shaft, m/s; 0 standing still. */
  readonly speed: number;
  readonly air: Air;
}

/** What a propeller does at any rotation, airspeed and air. */
export interface PropellerMap {
  readonly at: (flow: PropellerFlow) => PropellerLoad;
}

/** Places from standing still to blades that stand in the wind. */
const places = 40;
/** Logarithms of the Reynolds number between points, and those of the ends: beyond them coefficients stay. */
const step = 0.8;
const [slowest, fastest] = [Math.log(3e3), Math.log(3e7)];
const rows = Math.ceil((fastest - slowest) / step) + 1;

/**
 * Blade elements remembered. Without compressibility a propeller's coefficients depend on the advance ratio and one Reynolds
 * number alone, so thrust and torque over the square of the helical tip speed are kept over J/(J + J₀), 0 standing still and
 * 1 where the wind alone moves, J₀ about where thrust ends; and over the logarithm of the Reynolds number of radius and tip.
 * Points are solved when they are first needed and joined by cubic splines of four (E. Catmull and R. Rom, 1974), so that
 * slopes are steady: within 0.5 % of the static value of a direct solution.
 */
export function propellerMap(propeller: Propeller): PropellerMap {
  const blade = bladeOf(propeller);
  const radius = blade.diameter / 2;
  const scale = pitchAdvance(blade);
  const known = new Float64Array(2 * (places + 1) * rows).fill(Number.NaN);

  const solve = (place: number, row: number): number => {
    const at = 2 * (place * rows + row);
    if (Number.isNaN(known[at])) {
      // A unit of helical tip speed and density in air thick enough for the Reynolds number.
      const advance = place === places ? Infinity : (scale * place) / (places - place);
      const turning = 1 / Math.hypot(1, advance / Math.PI);
      const speed = place === places ? 1 : (advance / Math.PI) * turning;
      const viscosity = radius / Math.exp(slowest + row * step);
      const rotation = Math.max(turning, 1e-9) / radius;
      const { thrust, torque } = ringLoads(blade, { rotation, speed, air: { density: 1, viscosity } });
      known[at] = thrust;
      known[at + 1] = torque;
    }
    return at;
  };

  return {
    at: ({ rotation, speed, air }) => {
      const tip = rotation * radius;
      const helical = Math.hypot(tip, speed);
      const advance = (Math.PI * speed) / tip;
      const [place, along] = cell((places * advance) / (advance + scale), places);
      const reynolds = Math.log((air.density * helical * radius) / air.viscosity);
      const [row, up] = cell((Math.min(fastest, Math.max(slowest, reynolds)) - slowest) / step, rows - 1);
      let [thrust, torque] = [0, 0];
      for (let i = -1; i <= 2; i++) {
        const acrossWeight = weight(i, along, place, places);
        if (acrossWeight === 0) continue;
        for (let j = -1; j <= 2; j++) {
          const share = acrossWeight * weight(j, up, row, rows - 1);
          if (share === 0) continue;
          const at = solve(place + i, row + j);
          thrust += share * known[at];
          torque += share * known[at + 1];
        }
      }
      const pressure = air.density * helical ** 2;
      return propellerLoad({ thrust: thrust * pressure, torque: torque * pressure }, { diameter: blade.diameter, rotation, speed, air });
    },
  };
}

/** The interval a place lies in, and how far along it. */
function cell(place: number, last: number): [number, number] {
  const low = Math.min(last - 1, Math.max(0, Math.floor(place)));
  return [low, place - low];
}

/** Of the point `i` from the interval's first, −1 to 2; at the ends of the table the slope is that of the three points there. */
function weight(i: number, t: number, low: number, last: number): number {
  const [h10, h11] = [t * (1 - t) ** 2, -(t ** 2) * (1 - t)];
  const [first, end] = [low === 0, low === last - 1];
  const value = i === 0 ? (1 + 2 * t) * (1 - t) ** 2 : i === 1 ? t ** 2 * (3 - 2 * t) : 0;
  const start = first ? [0, -1.5, 2, -0.5] : [-0.5, 0, 0.5, 0];
  const finish = end ? [0.5, -2, 1.5, 0] : [0, -0.5, 0, 0.5];
  return value + h10 * start[i + 1] + h11 * finish[i + 1];
}

/** The advance ratio at which three quarters out no lift is left, about where thrust ends; some number for odd blades. */
function pitchAdvance({ elements, diameter, section }: Blade): number {
  const outer = elements.reduce((a, b) => (Math.abs(b.radius / diameter - 0.375) < Math.abs(a.radius / diameter - 0.375) ? b : a));
  return Math.min(2, Math.max(0.2, 0.75 * Math.PI * Math.tan(Math.min(1.3, outer.angle - section.zeroLift))));
}
