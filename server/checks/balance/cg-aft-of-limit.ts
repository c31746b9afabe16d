import { dimensions } from "../../../grammar/units/dimension";
import { quantity, type Quantity } from "../../../grammar/units/quantity";
import { leastMargin } from "../../figures/class-margins";
import type { Check, Subject, Verdict } from "../check";
import { asker } from "../class-words";
import { bandNote, past, where } from "../judge";
import { balances } from "../readiness";
import { movePack, noseWeight } from "../solve/balance";
import { causesOf, type Cause } from "./cause";
import { cgForwardOfLimit } from "./cg-forward-of-limit";
import { aimedMargin, balancesOf, forwardMargin, greatestMargin } from "./margins";

/** Too little static margin, or none. */
export const cgAftOfLimit: Check = {
  code: "cg_aft_of_limit",
  wave: "slow",
  text: "The balance point lies too far aft: the static margin is under the least for the class (warning) or under nothing (error).",
  thresholds: [{
    name: "", dimension: "ratio", text: "Least static margin, in mean chords.",
    usual: (airframe) => leastMargin[airframe].value, source: "5 to 15 % is a modellers' rule; by class common practice, no source",
  }],
  run(subject) {
    const least = subject.limit(cgAftOfLimit);
    if (!least) return [];
    const ready = subject.sets.filter((set) => balances(set, subject));
    return causesOf(subject, past(ready, "stability.static_margin", least, "least")).map((cause) => verdict(subject, cause, least));
  },
};

function verdict(subject: Subject, cause: Cause, least: Quantity): Verdict {
  const { say } = subject;
  const failing = cause.found.filter((one) => one.fails);
  const found = failing.length > 0 ? failing : cause.found;
  const [worst] = found;
  const margin = say(worst.value, "share");
  const needs = `${asker(subject, cgAftOfLimit)} ${say(least, "share")}`;
  const about = { place: cause.place, figure: "stability.static_margin", loading: worst.set.loading.name };
  if (failing.length === 0) {
    return { ...about, severity: "hint", message: `static margin is ${margin}${where(found, subject)}: ${needs}; it holds, but its band reaches past the limit` };
  }
  const chord = worst.set.value("wing.mean_chord")!.value;
  const unstable = worst.value.value < 0;
  const behind = say(quantity(((unstable ? 0 : least.value) - worst.value.value) * chord, dimensions.length));
  const limit = unstable ? "neutral point" : "aft limit";
  const sense = unstable ? ", and any disturbance grows until it can't be caught" : "";
  return {
    ...about,
    severity: unstable ? "error" : "warning",
    message: `balance point ${behind} behind the ${limit}${where(found, subject)}: static margin ${margin}${sense}; ${needs}${bandNote(worst)}; ` +
      (cause.pack ? `move ${cause.pack.name} or other weight forward` : "move weight forward"),
    fixes: fixesOf(subject, cause, least.value),
  };
}

function fixesOf(subject: Subject, { pack }: Cause, least: number) {
  const all = balancesOf(subject);
  const stiffest = subject.limit(cgForwardOfLimit)?.value ?? greatestMargin;
  const held = Math.min(stiffest, ...all.map((one) => forwardMargin(one) ?? Infinity));
  // A pitch control too weak for any balance point is another matter.
  const most = held > least ? held : stiffest;
  const wanted = { least, most, aim: aimedMargin(subject, least, most) };
  return [pack && movePack(subject, pack, all, wanted), noseWeight(subject, all, wanted)].filter((fix) => fix !== undefined);
}
