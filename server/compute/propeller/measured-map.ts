import type { MeasuredLoad } from "../../model/design/power";
import { atmosphere } from "../atmosphere/atmosphere";
import { interpolate } from "./blade-types";
import type { PropellerFlow, PropellerMap } from "./propeller-map";
import { coefficientLoad, propellerLoad } from "./propeller-at";

/** Points whose rotations lie this close to that of the first are one run: it wavers as a tunnel is run. */
const close = 0.02;

/** What measured points are off the computed propeller, over the advance ratio, at one rotation. */
interface Run {
  /** Of the rotation times density: the logarithm that the Reynolds number goes with. */
  readonly place: number;
  readonly advances: readonly number[];
  readonly thrust: readonly number[];
  readonly power: readonly number[];
}

/**
 * A map that goes through measured points: what they are off the computed one in both coefficients is carried on straight lines
 * over the advance ratio in each run, and between runs over the logarithm of rotation × air density. Beyond them it stays that of
 * the nearest, so the computed shape goes on without a step. Air across the shaft is computed.
 */
export function measuredMap(computed: PropellerMap, points: readonly MeasuredLoad[], diameter: number): PropellerMap {
  const runs = runsOf(computed, points, diameter);
  return {
    cross: computed.cross,
    at: (flow) => {
      const load = computed.at(flow);
      const off = (key: "thrust" | "power") =>
        interpolate(runs.map((run) => run.place), runs.map((run) => interpolate(run.advances, run[key], load.advanceRatio)), placeOf(flow));
      const { thrust, torque } = coefficientLoad(off("thrust"), off("power"), { diameter, ...flow });
      return propellerLoad({ thrust: load.thrust + thrust, torque: load.torque + torque }, { diameter, ...flow });
    },
  };
}

const placeOf = ({ rotation, air }: PropellerFlow): number => Math.log(rotation * air.density);

function runsOf(computed: PropellerMap, points: readonly MeasuredLoad[], diameter: number): readonly Run[] {
  // Its viscosity matters; a table says no temperature.
  const standard = atmosphere({ altitude: 0 });
  if (!standard) return [];
  const groups: MeasuredLoad[][] = [];
  for (const point of [...points].sort((a, b) => a.rotation * a.density - b.rotation * b.density)) {
    const run = groups.at(-1);
    if (run && point.rotation * point.density < (1 + close) * run[0].rotation * run[0].density) run.push(point);
    else groups.push([point]);
  }
  return groups.map((group) => {
    const offs = group.map((point) => {
      const flow = { rotation: point.rotation, speed: point.speed, air: { ...standard, density: point.density } };
      const own = propellerLoad({ thrust: point.thrust, torque: point.power / point.rotation }, { diameter, ...flow });
      const model = computed.at(flow);
      return {
        place: placeOf(flow), advance: own.advanceRatio,
        thrust: own.thrustCoefficient - model.thrustCoefficient, power: own.powerCoefficient - model.powerCoefficient,
      };
    }).sort((a, b) => a.advance - b.advance);
    return {
      place: offs.reduce((sum, { place }) => sum + place, 0) / offs.length,
      advances: offs.map(({ advance }) => advance), thrust: offs.map(({ thrust }) => thrust), power: offs.map(({ power }) => power),
    };
  });
}
