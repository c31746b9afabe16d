import type { Powerplant } from "../../model/design/power";
import { foldedPropellerDrag, stoppedPropellerDrag } from "../drag/stopped-propeller";
import type { PropellerLoad } from "../propeller/propeller-at";
import type { DrivePoint } from "./drive";
import type { Assumption } from "./drive-of";

/** One powerplant running. W, A, V, N, N m, rad/s. */
export interface PlantRun {
  readonly path: string;
  /** Path of what feeds it. */
  readonly source: string;
  /** Of the propeller. */
  readonly rotation: number;
  readonly motorRotation: number;
  /** Along the shaft: what the air does to it, turning or not. */
  readonly thrust: number;
  /** `driven` by its motor; `turned` by the flight, its motor dragged along; `folded` back; or it `stands`. */
  readonly how: "driven" | "turned" | "folded" | "stands";
  /** At the propeller. */
  readonly torque: number;
  readonly shaftPower: number;
  /** What it takes at the pack's terminals. */
  readonly electricPower: number;
  readonly packCurrent: number;
  readonly motorCurrent: number;
  readonly motorVolts: number;
  /** Copper and no-load losses together. */
  readonly motorHeat: number;
  readonly controllerLoss: number;
  readonly leadLoss: number;
  /** Shaft power over power at the pack's terminals; 0 where it takes none. */
  readonly efficiency: number;
  readonly motorEfficiency: number;
  readonly tipSpeed: number;
  readonly tipMach: number;
  readonly figureOfMerit: number;
  /** Absent while it does not turn. */
  readonly propeller?: PropellerLoad;
  readonly assumed: readonly Assumption[];
}

export interface PlantFlow {
  readonly source: string;
  /** At the pack's terminals. */
  readonly volts: number;
  /** Of the flow along the shaft, Pa. */
  readonly pressure: number;
  readonly assumed: readonly Assumption[];
}

export function plantRun(
  plant: Powerplant, { load, motor, current, controllerLoss, leadLoss }: DrivePoint, { source, volts, pressure, assumed }: PlantFlow,
): PlantRun {
  const electricPower = volts * current;
  return {
    path: plant.path, source, assumed, electricPower, controllerLoss, leadLoss,
    rotation: load ? motor.rotation / (plant.motor?.gearRatio ?? 1) : 0,
    motorRotation: motor.rotation,
    ...(load ? { thrust: load.thrust, how: motor.shaftPower > 0 ? "driven" : "turned" } : undriven(plant, pressure)),
    torque: load?.torque ?? 0,
    shaftPower: load ? motor.shaftPower : 0,
    packCurrent: current,
    motorCurrent: motor.current,
    motorVolts: motor.volts,
    motorHeat: motor.copperLoss + motor.noLoadLoss,
    efficiency: load && electricPower > 0 ? motor.shaftPower / electricPower : 0,
    motorEfficiency: motor.efficiency,
    tipSpeed: load?.tipSpeed ?? 0,
    tipMach: load?.tipMach ?? 0,
    figureOfMerit: load?.figureOfMerit ?? 0,
    ...(load && { propeller: load }),
  };
}

function undriven({ propeller }: Powerplant, pressure: number): Pick<PlantRun, "thrust" | "how"> {
  if (!propeller || pressure === 0) return { thrust: 0, how: "stands" };
  return propeller.folding ?
    { thrust: -pressure * foldedPropellerDrag(propeller), how: "folded" } :
    { thrust: -pressure * stoppedPropellerDrag(propeller), how: "stands" };
}
