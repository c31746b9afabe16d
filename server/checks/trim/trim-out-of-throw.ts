import { dimensions } from "../../../grammar/units/dimension";
import { plain, quantity, type Quantity } from "../../../grammar/units/quantity";
import type { FigureSet } from "../../figures/figure-set";
import { cgAftOfLimit } from "../balance/cg-aft-of-limit";
import type { Check, Subject, Verdict } from "../check";
import { always, practice } from "../class-words";
import { judge } from "../judge";
import { balances } from "../readiness";
import { levelIncidence, pitchingSurface } from "../solve/incidence";

/** Level flight takes more of the pitch control than there is, or leaves too little. */
export const trimOutOfThrow: Check = {
  code: "trim_out_of_throw",
  wave: "polars",
  text: "Level flight at cruise takes more than the throw of the pitch control (error), or leaves little of it either way (warning).",
  thresholds: [{ name: "", dimension: "ratio", text: "Least share of either way's throw left at cruise.", usual: always(0.25), source: practice }],
  run(subject) {
    const least = subject.limit(trimOutOfThrow);
    if (!least) return [];
    const found = subject.sets
      .flatMap((set) => (balances(set, subject) && withinLimits(subject, set) ? trimmed(set) ?? [] : []))
      .filter(({ left }) => left < least.value)
      .sort((a, b) => a.left - b.left);
    return found.length > 0 ? [verdict(subject, found, least)] : [];
  },
};

interface Trimmed {
  readonly set: FigureSet;
  /** Share of the way that is used which is left. */
  readonly left: number;
  readonly way: "up" | "down";
  /** Of the first pitch control. */
  readonly path: string;
  readonly angle: number;
}

function trimmed(set: FigureSet): Trimmed | undefined {
  const trim = set.facts.flight?.points.cruiseTrim;
  if (!trim) return undefined;
  const { noseUp, noseDown } = trim.throwLeft;
  return { set, left: Math.min(noseUp, noseDown), way: noseUp < noseDown ? "up" : "down", ...trim.deflections[0] };
}

/** A balance point out of its limits has its own message, and moves the trim. */
function withinLimits(subject: Subject, set: FigureSet): boolean {
  const [x, forward, margin] = ["cg.x", "stability.cg_forward", "stability.static_margin"].map((name) => set.value(name));
  if (!x || !margin || judge(margin, subject.limit(cgAftOfLimit) ?? plain(0), "least").fails) return false;
  return !forward || !judge(x, forward, "least").fails;
}

function verdict(subject: Subject, found: readonly Trimmed[], least: Quantity): Verdict {
  const { places, say } = subject;
  const [{ set, left, way, path, angle }, ...others] = found;
  const surface = pitchingSurface(set);
  const loadings = set.loading.block && found.length < subject.sets.length
    ? ` in ${set.loading.name}${others.length > 0 ? ` (also in ${others.map((one) => one.set.loading.name).join(", ")})` : ""}` : "";
  const speed = set.value("flight.cruise_speed");
  const takes = `level flight at cruise${speed ? ` (${say(speed)})` : ""}${loadings} takes ${places.name(set, path)} to ${say(quantity(angle, dimensions.angle))}, ` +
    `${say(plain(1 - left), "share")} of its throw nose ${way}`;
  const mend = surface ? `set ${places.name(set, surface)} at another incidence` : "change the twist, the reflex or the balance point";
  const fix = surface === undefined ? undefined : levelIncidence(subject, subject.sets.filter((one) => one.facts.flight && pitchingSurface(one) === surface), surface, least.value);
  return {
    severity: left < 0 ? "error" : "warning", figure: `trim.${path}`, loading: set.loading.name,
    place: surface ? places.part(set, surface, "incidence") : places.inside(set, path),
    message: left < 0 ? `${takes}: it can't be held level; ${mend}` : `${takes}, and ${say(least, "share")} of it should be left for flying; ${mend}`,
    fixes: fix && [fix],
  };
}
