import { cgAftOfLimit } from "./balance/cg-aft-of-limit";
import { cgForwardOfLimit } from "./balance/cg-forward-of-limit";
import { cgMoves } from "./balance/cg-moves";
import { cgOffCentre } from "./balance/cg-off-centre";
import type { Check } from "./check";
import { channelClash } from "./control/channel-clash";
import { modeDivergent } from "./modes/mode-divergent";
import { modeUndamped } from "./modes/mode-undamped";
import { benchDiffers } from "./power/bench-differs";
import { currentOverLimit } from "./power/current-over-limit";
import { motorHot } from "./power/motor-hot";
import { motorOutSinks } from "./power/motor-out-sinks";
import { motorOutUncontrollable } from "./power/motor-out-uncontrollable";
import { packDrained } from "./power/pack-drained";
import { propellerOverspeed } from "./power/propeller-overspeed";
import { propellerStrikes } from "./power/propeller-strikes";
import { thrustLineUnbalanced } from "./power/thrust-line-unbalanced";
import { thrustMarginLow } from "./power/thrust-margin-low";
import { canardStallsLast } from "./stall/canard-stalls-last";
import { lowReynolds } from "./stall/low-reynolds";
import { tipStallFirst } from "./stall/tip-stall-first";
import { finVolumeLow } from "./tail/fin-volume-low";
import { tailVolumeLow } from "./tail/tail-volume-low";
import { yawUnstable } from "./tail/yaw-unstable";
import { flapTrim } from "./trim/flap-trim";
import { trimOutOfThrow } from "./trim/trim-out-of-throw";
import { loadingHigh } from "./weight/loading-high";
import { ruleMass } from "./weight/rule-mass";
import { weightMissing } from "./weight/weight-missing";

/** All checks, in the order people read them. Each stands in a file of its own beside its page. */
export const checks: readonly Check[] = [
  weightMissing, cgOffCentre, cgAftOfLimit, cgForwardOfLimit, cgMoves,
  tailVolumeLow, finVolumeLow, yawUnstable, loadingHigh,
  tipStallFirst, canardStallsLast, lowReynolds, trimOutOfThrow, flapTrim, modeDivergent, modeUndamped,
  thrustMarginLow, currentOverLimit, motorHot, packDrained, benchDiffers, propellerOverspeed, propellerStrikes, thrustLineUnbalanced,
  motorOutUncontrollable, motorOutSinks,
  channelClash, ruleMass,
];
