import { dimensions, type DimensionName } from "../../../grammar/units/dimension";
import { chain, quantity, type Quantity } from "../../../grammar/units/quantity";
import { grassFriction, hardFriction } from "../../compute/aircraft/ground-runs";
import { throwSpeed, type Performance } from "../../compute/aircraft/performance";
import { standardGravity } from "../../compute/constants";
import { overStall } from "../../compute/flight/ground-run";
import type { Input } from "../figure";
import type { FigureSet } from "../figure-set";
import { named } from "../wing";

export const groundNumbers = ({ takeoff, landing, takeoffHard, landingHard, thrown }: Performance) => ({
  takeoff, landing, takeoffHard, landingHard, launchSink: thrown?.sinks,
  // What thrust leaves of power, over the weight.
  launchClimb: thrown?.gain === undefined ? undefined : (thrown.gain * throwSpeed) / standardGravity,
});

type Of = (name: keyof ReturnType<typeof groundNumbers>, dimension: DimensionName) => Quantity | undefined;

const mechanics = "J. D. Anderson, Introduction to Flight, ch. 6";
const surfaces = [
  { suffix: "", on: `grass with friction ${grassFriction}`, from: "friction: twice that of full-size wheels on turf, common practice, no source", numbers: ["takeoff", "landing"] },
  { suffix: "_hard", on: `hard ground with friction ${hardFriction}`, from: "friction: D. P. Raymer, Aircraft Design, table 17.1, full-size wheels", numbers: ["takeoffHard", "landingHard"] },
] as const;

/** Take-off and landing, or the throw of what has no wheels to run on. */
export function putGround(set: FigureSet, of: Of): void {
  const inputs = named(set, "mass.total", "flight.stall_speed");
  for (const { suffix, on, from, numbers: [off, down] } of surfaces) {
    set.put(`flight.takeoff_run${suffix}`, of(off, "length"), {
      formula: `∫ mass × speed / (thrust − drag − friction × load on the wheels) to ${overStall.liftOff} × stall, ${on}, no wind`,
      inputs, source: `${mechanics}; ground effect: C. Wieselsberger, NACA TM 77; ${from}`, notModelled: "bumps and long grass, the turn of the nose at lift-off, slope, wind.",
    });
    set.put(`flight.landing_run${suffix}`, of(down, "length"), {
      formula: `∫ mass × speed / (drag + friction × load on the wheels) from ${overStall.touchdown} × stall, ${on}, no brakes, no wind`,
      inputs, source: `${mechanics}; ${from}`, notModelled: "the way from the fence to the touch, slope, wind, an idling propeller.",
    });
  }
  const stall = set.value("flight.stall_speed");
  set.put("flight.landing_speed", stall && chain(stall, overStall.approach * stall.value, overStall.approach, stall.dimension), {
    formula: `${overStall.approach} × flight.stall_speed, which leaves ${overStall.touchdown} × for touching down`,
    inputs: named(set, "flight.stall_speed"), source: "approach as full-size practice: 14 CFR 23.73 (up to amendment 23-62)", notModelled: "wind and gusts: add half of what blows (common practice, no source).",
  });
  putLaunch(set, of, inputs);
}

function putLaunch(set: FigureSet, of: Of, inputs: readonly Input[]): void {
  const thrown: Input[] = [...inputs, { name: "throw", value: quantity(throwSpeed, dimensions.speed) }];
  const leaves =
    "the pull of the pilot, the time propeller and wing take to work, a throw up or down, wind, control; bands are those of the weight alone. Keep hands clear of the propeller: full throttle only after release where it turns behind the hand.";
  const throwing = "throw: common practice, no source";
  set.put("flight.hand_launch.sink", of("launchSink", "length"), {
    formula: "height lost after a level throw at full throttle, as a point at the highest lift the wing gives, until the path is level again; 0 where the throw is over the stall",
    inputs: thrown, source: `Newton's second law along and across the path: ${mechanics}; ${throwing}`, notModelled: leaves,
  });
  set.put("flight.hand_launch.climb", of("launchClimb", "speed"), {
    formula: "(thrust at full throttle − drag) × speed / weight, as thrown; below the stall with drag at the highest lift, where it is speed that is gained",
    inputs: thrown, source: `specific excess power: ${mechanics}; ${throwing}`, notModelled: leaves,
  });
}
