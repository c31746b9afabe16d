import type { Propeller } from "../../model/design/power";
import type { Air } from "../atmosphere/atmosphere";
import { bladeOf, type Blade } from "./blade";
import { crossSlopes, type CrossSlopes } from "./cross-flow";
import { measuredMap } from "./measured-map";
import { propellerLoad, ringLoads, type PropellerLoad } from "./propeller-at";
import { splineTable } from "./spline-table";

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
  /** What air across the shaft adds. */
  readonly cross: (flow: PropellerFlow) => CrossSlopes;
}

/** Places from standing still to blades that stand in the wind. */
const places = 40;
/** Logarithms of the Reynolds number between points, and those of the ends: beyond them coefficients stay. */
const step = 0.8;
const [slowest, fastest] = [Math.log(3e3), Math.log(3e7)];

/** By its measured points where it has some, through and beyond them by its blades. */
export function propellerMap(propeller: Propeller): PropellerMap {
  const computed = bladeMap(propeller);
  return propeller.measured?.length ? measuredMap(computed, propeller.measured, propeller.diameter) : computed;
}

/**
 * Blade elements remembered. Without compressibility a propeller's coefficients depend on the advance ratio and one Reynolds
 * number alone, so thrust and torque over the square of the helical tip speed are kept over J/(J + J₀), 0 standing still and
 * 1 where the wind alone moves, J₀ about where thrust ends; and over the logarithm of the Reynolds number of radius and
 * helical tip speed. Points are solved when they are first needed: within 0.5 % of the static value of a direct solution.
 */
function bladeMap(propeller: Propeller): PropellerMap {
  const blade = bladeOf(propeller);
  const radius = blade.diameter / 2;
  const scale = pitchAdvance(blade);
  /** At a helical tip speed and a density of 1, in air thick enough for the Reynolds number. */
  const flowAt = (place: number, row: number) => {
    const angle = place === places ? Math.PI / 2 : Math.atan((scale * place) / (places - place) / Math.PI);
    const rotation = Math.max(Math.cos(angle), 1e-9) / radius;
    return { rotation, speed: Math.sin(angle), air: { density: 1, viscosity: radius / Math.exp(slowest + row * step) } };
  };
  const rows = Math.ceil((fastest - slowest) / step);
  const loads = splineTable(places, rows, (place, row) => {
    const { thrust, torque } = ringLoads(blade, flowAt(place, row));
    return [thrust, torque];
  });
  const slopes = splineTable(places, rows, (place, row) => {
    const { force, moment } = crossSlopes(blade, flowAt(place, row));
    return [force, moment];
  });
  const placeOf = ({ rotation, speed, air }: PropellerFlow) => {
    const helical = Math.hypot(rotation * radius, speed);
    const advance = (Math.PI * speed) / (rotation * radius);
    const reynolds = Math.log((air.density * helical * radius) / air.viscosity);
    return { helical, across: (places * advance) / (advance + scale), up: (reynolds - slowest) / step };
  };

  return {
    at: (flow) => {
      const { helical, across, up } = placeOf(flow);
      const [thrust, torque] = loads.at(across, up);
      const pressure = flow.air.density * helical ** 2;
      return propellerLoad({ thrust: thrust * pressure, torque: torque * pressure }, { diameter: blade.diameter, ...flow });
    },
    cross: (flow) => {
      const { helical, across, up } = placeOf(flow);
      const [force, moment] = slopes.at(across, up);
      return { force: force * flow.air.density * helical, moment: moment * flow.air.density * helical };
    },
  };
}

/** The advance ratio at which three quarters out no lift is left, about where thrust ends; some number for odd blades. */
function pitchAdvance({ elements, diameter, section }: Blade): number {
  const outer = elements.reduce((a, b) => (Math.abs(b.radius / diameter - 0.375) < Math.abs(a.radius / diameter - 0.375) ? b : a));
  return Math.min(2, Math.max(0.2, 0.75 * Math.PI * Math.tan(Math.min(1.3, outer.angle - section.zeroLift))));
}
