import { wingLimit } from "../../figures/flight/points";
import type { FigureSet } from "../../figures/figure-set";
import type { Place } from "../../../shared/finding";
import type { AirframeClass } from "../../model/design/design";
import type { Check, Subject } from "../check";
import { always, practice } from "../class-words";
import { past, where } from "../judge";
import { balances } from "../readiness";
import { moreWashout, tipPanel } from "../solve/washout";

/** Short wings stall as a whole, and softly: where along them says little. */
const leastAspectRatio = 3;

/** Those who fly these want a wing that stays level whatever they do. */
const gentle: ReadonlySet<AirframeClass> = new Set<AirframeClass>(["trainer", "sport"]);

/** The wing stalls first where the ailerons are. */
export const tipStallFirst: Check = {
  code: "tip_stall_first",
  wave: "polars",
  text: "The wing stalls first far out, where the ailerons are: a warning for trainer and sport, else a hint. Not under an aspect ratio of 3.",
  thresholds: [{
    name: "", dimension: "ratio", text: "Farthest out that the wing may first stall, as a share of its half-span.", usual: always(0.75), source: practice,
  }],
  run(subject) {
    const most = subject.limit(tipStallFirst);
    if (!most) return [];
    const ready = subject.sets.filter((set) => balances(set, subject) && (set.value("wing.aspect_ratio")?.value ?? 0) >= leastAspectRatio);
    const found = past(ready, "aero.stall_station", most, "most").filter((one) => one.fails);
    const [worst] = found;
    const wing = worst && wingOf(worst.set);
    if (!wing) return [];
    const fix = moreWashout(subject, found.map(({ set }) => set).filter((set) => wingOf(set) === wing), wing, most.value);
    return [{
      severity: gentle.has(subject.class) ? "warning" : "hint", figure: "aero.stall_station", loading: worst.set.loading.name,
      place: placeOf(subject, worst.set, wing),
      message: `${subject.places.name(worst.set, wing)} stalls first at ${subject.say(worst.value, "share")} of its half-span${where(found, subject)}, past ${subject.say(most, "share")}: ` +
        "the ailerons lose their hold and a wing drops; twist the tip nose down, taper less, or sweep less",
      fixes: fix && [fix],
    }];
  },
};

const wingOf = ({ facts }: FigureSet): string | undefined => facts.flight && wingLimit(facts.flight.points.stall)?.path;

/** The twist of the outermost panel, else that panel, else the wing. */
function placeOf(subject: Subject, set: FigureSet, wing: string): Place {
  const panel = tipPanel(subject, set, wing);
  if (!panel) return subject.places.part(set, wing);
  return subject.places.property(panel, panel.slots.has("washout") ? "washout" : "twist");
}
