import type { Place } from "../../../shared/finding";
import { dimensions } from "../../../grammar/units/dimension";
import { plain, quantity } from "../../../grammar/units/quantity";
import type { FigureSet } from "../../figures/figure-set";
import type { Check, Subject } from "../check";
import { always, practice } from "../class-words";
import { judge, where, type Judged } from "../judge";
import { flies, nominal } from "../readiness";

/** Flaps that take most of the elevator to hold against. */
export const flapTrim: Check = {
  code: "flap_trim",
  wave: "polars",
  text: "Flaps fully down take much of the pitch control to hold the speed they are used at.",
  thresholds: [{
    name: "", dimension: "ratio", text: "Greatest change of the pitch control with flaps fully down at 1.3 × stall, as a share of its throw that way.", usual: always(0.5), source: practice,
  }],
  run(subject) {
    const most = subject.limit(flapTrim);
    if (!most) return [];
    const found = subject.sets.flatMap((set): Judged[] => {
      const value = flies(set, subject) ? shareOf(set) : undefined;
      const judged = value === undefined ? undefined : { set, value: plain(value), ...judge(plain(value), most, "most") };
      return judged?.fails ? [judged] : [];
    }).sort((a, b) => b.value.value - a.value.value);
    const [worst] = found;
    if (!worst) return [];
    const { set } = worst;
    const change = set.value("trim.flap_change")!;
    const [control] = set.facts.flight!.model.basis.controls;
    const name = subject.places.name(set, control.path);
    return [{
      severity: "warning", figure: "trim.flap_change", loading: set.loading.name, place: placeOf(subject, set),
      message: `flaps fully down pitch it ${nosesUp(set) ? "up" : "down"}${where(found, subject)}: at 1.3 × stall ${name} goes ${subject.say(quantity(Math.abs(change.value), dimensions.angle))} ` +
        `${change.value > 0 ? "down" : "up"} against that, ${subject.say(worst.value, "share")} of its throw and over ${subject.say(most, "share")}; ` +
        `give ${name} more throw and mix it in, or the flaps less throw or span`,
    }];
  },
};

/** The change as a share of the throw the way it goes. */
function shareOf(set: FigureSet): number | undefined {
  const change = set.value("trim.flap_change");
  const control = set.facts.flight?.model.basis.controls[0];
  if (!change || !control) return undefined;
  const throwThere = nosesUp(set) ? control.noseDown : control.noseUp;
  return throwThere === 0 ? undefined : Math.abs(change.value / throwThere);
}

/** Do the flaps raise the nose, so that the control must push it down? */
function nosesUp(set: FigureSet): boolean {
  const { noseDown } = set.facts.flight!.model.basis.controls[0];
  return Math.sign(set.value("trim.flap_change")!.value) === Math.sign(noseDown);
}

/** The flap that goes farthest down. */
function placeOf(subject: Subject, set: FigureSet): Place {
  const flaps = nominal(set).surfaces.flatMap(({ controls }) => controls).filter(({ kind }) => kind === "flap" || kind === "flaperon");
  const down = ({ throws }: (typeof flaps)[number]) => throws.down ?? throws.droop ?? 0;
  const [first] = [...flaps].sort((a, b) => down(b) - down(a));
  return first ? subject.places.inside(set, first.path) : subject.places.whole();
}
