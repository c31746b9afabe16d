import { plain, type Quantity } from "../../../grammar/units/quantity";
import type { Check, Subject, Verdict } from "../check";
import { always, practice } from "../class-words";
import { bandNote, past, where } from "../judge";
import { balances } from "../readiness";
import { movePack } from "../solve/balance";
import { causesOf, type Cause } from "./cause";
import { cgAftOfLimit } from "./cg-aft-of-limit";
import { aimedMargin, balancesOf, greatestMargin } from "./margins";

/** More static margin than is any use. */
export const cgForwardOfLimit: Check = {
  code: "cg_forward_of_limit",
  wave: "slow",
  text: "The balance point lies so far forward that the static margin is over what any class asks for.",
  thresholds: [{ name: "", dimension: "ratio", text: "Greatest static margin, in mean chords.", usual: always(greatestMargin), source: practice }],
  run(subject) {
    const most = subject.limit(cgForwardOfLimit);
    if (!most) return [];
    const ready = subject.sets.filter((set) => balances(set, subject));
    const found = past(ready, "stability.static_margin", most, "most").filter((one) => one.fails);
    return causesOf(subject, found).map((cause) => verdict(subject, cause, most));
  },
};

function verdict(subject: Subject, { found, place, pack }: Cause, most: Quantity): Verdict {
  const [worst] = found;
  const least = (subject.limit(cgAftOfLimit) ?? plain(0)).value;
  const wanted = { least, most: most.value, aim: aimedMargin(subject, least, most.value) };
  const fix = pack && movePack(subject, pack, balancesOf(subject), wanted);
  return {
    severity: "hint", place, figure: "stability.static_margin", loading: worst.set.loading.name,
    message: `static margin is ${subject.say(worst.value, "share")}${where(found, subject)}, over ${subject.say(most, "share")}: the elevator works against it ` +
      `all the time and may not raise the nose for landing${bandNote(worst)}; move ${pack ? `${pack.name} or other weight` : "weight"} aft`,
    fixes: fix && [fix],
  };
}
