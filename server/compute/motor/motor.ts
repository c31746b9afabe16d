import type { Motor } from "../../model/design/power";

/** The constants of a motor that its running needs: kv in rad/s per volt, ohm, A. */
export type MotorConstants = Pick<Motor, "kv" | "resistance" | "noLoadCurrent">;

export interface MotorPoint {
  /** V at the motor's leads. */
  readonly volts: number;
  /** Of the motor's own shaft, before a gear: rad/s and N m. */
  readonly rotation: number;
  readonly torque: number;
  readonly current: number;
  /** W */
  readonly shaftPower: number;
  readonly electricPower: number;
  /** I²R, and the friction, iron and air losses that the no-load current stands for. */
  readonly copperLoss: number;
  readonly noLoadLoss: number;
  /** 0 where it draws or gives nothing. */
  readonly efficiency: number;
}

/**
 * A motor at a voltage and a rotation, first order: back voltage, winding resistance and a constant no-load current
 * (M. Drela, First-Order DC Electric Motor Model, MIT, 2007). Resistance does not grow with heat, nor the no-load current
 * with speed: rotation within 2 to 3 %, current within 5 to 10 % from catalogue constants.
 */
export function motorAt(motor: MotorConstants, volts: number, rotation: number): MotorPoint {
  return motorPoint(motor, (volts - rotation / motor.kv) / motor.resistance, rotation);
}

/** A motor by its current and rotation. */
export function motorPoint(motor: MotorConstants, current: number, rotation: number): MotorPoint {
  const back = rotation / motor.kv;
  const volts = back + current * motor.resistance;
  const torque = (current - motor.noLoadCurrent) / motor.kv;
  const shaftPower = torque * rotation;
  const electricPower = volts * current;
  return {
    volts, rotation, torque, current, shaftPower, electricPower,
    copperLoss: current ** 2 * motor.resistance,
    noLoadLoss: back * motor.noLoadCurrent,
    efficiency: shaftPower > 0 && electricPower > 0 ? shaftPower / electricPower : 0,
  };
}

/** Free running: no torque. rad/s; 0 where the voltage can't turn it. */
export function noLoadRotation(motor: MotorConstants, volts: number): number {
  return Math.max(0, motor.kv * (volts - motor.noLoadCurrent * motor.resistance));
}

/** Held still. */
export function stalled(motor: MotorConstants, volts: number): MotorPoint {
  return motorAt(motor, volts, 0);
}

/** Where it turns most of its input into shaft power. With no no-load current that is free running. */
export function mostEfficient(motor: MotorConstants, volts: number): MotorPoint {
  return atCurrent(motor, volts, Math.sqrt((motor.noLoadCurrent * volts) / motor.resistance));
}

/** Where it gives the most shaft power: far past what it stands for long. */
export function mostPowerful(motor: MotorConstants, volts: number): MotorPoint {
  return atCurrent(motor, volts, (volts / motor.resistance + motor.noLoadCurrent) / 2);
}

function atCurrent(motor: MotorConstants, volts: number, current: number): MotorPoint {
  return motorPoint(motor, current, motor.kv * (volts - current * motor.resistance));
}
