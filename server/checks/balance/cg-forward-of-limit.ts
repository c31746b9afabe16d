import { dimensions } from "../../../grammar/units/dimension";
import { plain, quantity, type Quantity } from "../../../grammar/units/quantity";
import type { Fix } from "../../../shared/finding";
import type { Check, Subject, Verdict } from "../check";
import { always, practice } from "../class-words";
import { bandNote, judge, past, where, type Judged } from "../judge";
import { balances } from "../readiness";
import { movePack } from "../solve/balance";
import { causesOf, type Cause } from "./cause";
import { cgAftOfLimit } from "./cg-aft-of-limit";
import { aimedMargin, balancesOf, forwardMargin, greatestMargin, type Balance } from "./margins";

/** The balance point lies ahead of what the elevator can hold, or gives more static margin than is any use. */
export const cgForwardOfLimit: Check = {
  code: "cg_forward_of_limit",
  wave: "slow",
  text: "The balance point lies ahead of its forward limit by the power of the pitch controls (warning), or the static margin is over what any class asks for (hint).",
  thresholds: [{ name: "", dimension: "ratio", text: "Greatest static margin, in mean chords.", usual: always(greatestMargin), source: practice }],
  run(subject) {
    const most = subject.limit(cgForwardOfLimit);
    if (!most) return [];
    const ready = subject.sets.filter((set) => balances(set, subject));
    const ahead = ready.flatMap((set): Judged[] => {
      const [x, limit] = [set.value("cg.x"), set.value("stability.cg_forward")];
      const judged = x && limit && { set, value: x, ...judge(x, limit, "least") };
      return judged?.fails ? [judged] : [];
    }).sort((a, b) => spare(a) - spare(b));
    const others = ready.filter((set) => !ahead.some((one) => one.set === set));
    const stiff = past(others, "stability.static_margin", most, "most").filter((one) => one.fails);
    return [
      ...causesOf(subject, ahead).map((cause) => aheadOfLimit(subject, cause, most)),
      ...causesOf(subject, stiff).map((cause) => overMargin(subject, cause, most)),
    ];
  },
};

/** How far behind the forward limit, m. */
const spare = ({ set, value }: Judged): number => value.value - set.value("stability.cg_forward")!.value;

/** How far behind the limit a fix puts the balance point, in mean chords: common practice, no source. */
const behind = 0.03;

function aheadOfLimit(subject: Subject, { found, place, pack }: Cause, most: Quantity): Verdict {
  const [worst] = found;
  const { set } = worst;
  const rule = set.facts.flight?.points.forward?.rule;
  const [limit, aft] = [set.value("stability.cg_forward")!, set.value("stability.cg_aft")];
  const room = !aft || aft.value - limit.value > behind * set.value("wing.mean_chord")!.value;
  const short = subject.say(quantity(-spare(worst), dimensions.length));
  const all = balancesOf(subject);
  const margins = all.map(forwardMargin).filter((margin) => margin !== undefined);
  const least = (subject.limit(cgAftOfLimit) ?? plain(0)).value;
  const aim = Math.min(...margins) - behind;
  const fix = pack && aim > least ? movePack(subject, pack, all, { least, most: Math.min(most.value, ...margins), aim: Math.min(aim, most.value) }) : undefined;
  const control = subject.places.name(set, set.facts.flight?.model.basis.controls[0]?.path ?? "the elevator");
  const moves = room ? `move ${pack ? `${pack.name} or other weight` : "weight"} aft, or give` : "no balance point is right for both limits: give";
  return {
    severity: "warning", place, figure: "stability.cg_forward", loading: set.loading.name,
    message: `balance point ${short} ahead of the forward limit${where(found, subject)}: full nose-up throw can't ` +
      `${rule === "rotation" ? "lift the nose wheel at 1.1 × stall speed" : "hold the nose up down to the stall"}${bandNote(worst)}; ${moves} ${control} more throw or area`,
    fixes: fix && [fix],
  };
}

function overMargin(subject: Subject, { found, place, pack }: Cause, most: Quantity): Verdict {
  const [worst] = found;
  return {
    severity: "hint", place, figure: "stability.static_margin", loading: worst.set.loading.name,
    message: `static margin is ${subject.say(worst.value, "share")}${where(found, subject)}, over ${subject.say(most, "share")}: the elevator works against it ` +
      `all the time and may not raise the nose for landing${bandNote(worst)}; move ${pack ? `${pack.name} or other weight` : "weight"} aft`,
    fixes: usualFix(subject, pack, balancesOf(subject), most.value),
  };
}

function usualFix(subject: Subject, pack: Cause["pack"], all: readonly Balance[], most: number): Fix[] | undefined {
  const least = (subject.limit(cgAftOfLimit) ?? plain(0)).value;
  const fix = pack && movePack(subject, pack, all, { least, most, aim: aimedMargin(subject, least, most) });
  return fix && [fix];
}
