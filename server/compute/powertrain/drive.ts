import { motorPoint, noLoadRotation, type MotorConstants, type MotorPoint } from "../motor/motor";
import type { PropellerLoad } from "../propeller/propeller-at";
import { bracketedRoot } from "../root";

/** One motor, its propeller and all between it and the pack. */
export interface Drive {
  readonly motor: MotorConstants;
  /** Motor turns per propeller turn. No loss in the gear. */
  readonly gearRatio: number;
  /** The propeller at a rotation (rad/s, above 0), at the airspeed it meets. */
  readonly load: (rotation: number) => PropellerLoad;
  /** Carries the motor's current, ohm. */
  readonly controllerResistance: number;
  /** From the pack to the controller: carries the pack's current, ohm. */
  readonly leadResistance: number;
}

export interface DrivePoint {
  /** Undefined while it does not turn. */
  readonly load: PropellerLoad | undefined;
  readonly motor: MotorPoint;
  /** From the pack, A. */
  readonly current: number;
  /** W */
  readonly controllerLoss: number;
  readonly leadLoss: number;
}

/**
 * Where motor and propeller agree, at the pack's terminal volts and a throttle of 0 to 1. The controller averages
 * ideally: the motor gets the share `throttle` of the volts and the pack gives that share of the motor's current;
 * switching losses at part throttle are left out. The propeller's torque rises with rotation and the motor's
 * falls, so there is one such point. The air may turn it faster than the volts do: the controller then lets no current
 * back, and the propeller drives the motor's friction. It stands still where neither volts nor air can start it.
 */
export function driveAt(drive: Drive, volts: number, throttle: number): DrivePoint {
  const { motor, gearRatio, load } = drive;
  const offered = throttle * volts;
  const path = motor.resistance + drive.controllerResistance + throttle ** 2 * drive.leadResistance;
  const currentAt = (rotation: number) => Math.max(0, (offered - rotation / motor.kv) / path);
  const spare = (rotation: number) =>
    (currentAt(rotation) - motor.noLoadCurrent) / motor.kv - load(rotation / gearRatio).torque / gearRatio;
  const free = Math.max(1, noLoadRotation({ ...motor, resistance: path }, offered));
  const least = free * 1e-6;
  if (!(spare(least) > 0)) return pointOf(drive, throttle, undefined, motorPoint(motor, offered / path, 0));
  let most = free;
  while (most < fastest && spare(most) > 0) most *= 2;
  const rotation = bracketedRoot(spare, least, most, most * 1e-13) ?? most;
  return pointOf(drive, throttle, load(rotation / gearRatio), motorPoint(motor, currentAt(rotation), rotation));
}

/** Held still, without current. */
export const stopped = (drive: Drive, throttle: number): DrivePoint => pointOf(drive, throttle, undefined, motorPoint(drive.motor, 0, 0));

/** Beyond any motor, rad/s: ends the search for a rotation at which the air drives no longer. */
const fastest = 1e6;

function pointOf(drive: Drive, throttle: number, load: PropellerLoad | undefined, motor: MotorPoint): DrivePoint {
  const current = throttle * motor.current;
  return {
    load, motor, current,
    controllerLoss: drive.controllerResistance * motor.current ** 2,
    leadLoss: drive.leadResistance * current ** 2,
  };
}
