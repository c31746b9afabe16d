import type { Powerplant } from "../../model/design/power";
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
  /** Along the shaft. */
  readonly thrust: number;
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

export function plantRun(
  plant: Powerplant, source: string, { load, motor, current, controllerLoss, leadLoss }: DrivePoint, volts: number, assumed: readonly Assumption[],
): PlantRun {
  const electricPower = volts * current;
  return {
    path: plant.path, source, assumed, electricPower, controllerLoss, leadLoss,
    rotation: load ? motor.rotation / (plant.motor?.gearRatio ?? 1) : 0,
    motorRotation: motor.rotation,
    thrust: load?.thrust ?? 0,
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
