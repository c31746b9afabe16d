import { dimensions } from "../../../grammar/units/dimension";
import { quantity, type Quantity } from "../../../grammar/units/quantity";
import type { Fix } from "../../../shared/finding";
import type { RunResult } from "../../compute/powertrain/run-at";
import { runsOf } from "../../figures/power";
import type { FigureSet } from "../../figures/figure-set";
import type { Check, Subject, Verdict } from "../check";
import { always, isUsual, practice } from "../class-words";
import { bandNote, judge } from "../judge";
import { nominal } from "../readiness";
import { otherPropeller, propellerSizes } from "../solve/propeller";
import { greatestLoads, loadsWith, runWith } from "./loads";
import { partOf, type Plant } from "./parts";

const lumped = "from the lasting one, for a motor that holds 0.45 J/(g K), iron and copper, and so warms in about a minute";

/** More heat left in a motor than it sheds. */
export const motorHot: Check = {
  code: "motor_hot",
  wave: "slow",
  text: "More heat is left in a motor than one of its weight sheds: at cruise, in the climb, or standing at full throttle.",
  thresholds: [
    { name: "cruise", dimension: "power_per_mass", text: "Heat that a motor sheds as long as a flight lasts, over its weight.", usual: always(600), source: practice },
    { name: "climb", dimension: "power_per_mass", text: "Heat it takes for a minute: a climb at full throttle.", usual: always(1000), source: lumped },
    { name: "standing", dimension: "power_per_mass", text: "Heat it takes for half a minute: full throttle before it flies.", usual: always(1500), source: lumped },
  ],
  run(subject) {
    const found = new Map<string, Verdict>();
    for (const set of subject.sets) {
      const over = new Set(greatestLoads(subject, set).filter(({ what, actual, lasting }) => what === "motor" && actual > lasting).flatMap(({ plants }) => plants));
      for (const plant of nominal(set).powerplants) {
        const name = subject.places.name(set, plant.path);
        // Over its rating it is hot by that, and current_over_limit has said so.
        const verdict = found.has(name) || over.has(plant.path) ? undefined : judgeOne(subject, set, plant, name);
        if (verdict) found.set(name, verdict);
      }
    }
    return [...found.values()];
  },
};

/** What is said of each: when, for how long it would be borne, and what to do. */
const spells = {
  cruise: { when: "level at cruise", borne: "for as long as a flight lasts", cure: "take a motor of more weight or less resistance, or a propeller that turns slower at cruise" },
  climb: { when: "climbing at full throttle", borne: "for a minute", cure: "climb in bursts, or take a smaller propeller or a heavier motor" },
  standing: { when: "standing at full throttle on a full charge", borne: "for half a minute", cure: "take a smaller propeller, less pitch, or a heavier motor" },
} as const;

function judgeOne(subject: Subject, set: FigureSet, { path }: Plant, name: string): Verdict | undefined {
  const { say } = subject;
  const figure = `power.${path}.motor_heat`;
  const heats = heatsOf(set, path, figure);
  const judged = (["cruise", "climb", "standing"] as const).flatMap((spell) => {
    const [heat, limit] = [heats[spell], subject.limit(motorHot, spell)];
    return heat && limit ? [{ spell, heat, limit, ...judge(heat, limit, "most") }] : [];
  });
  const worst = judged.find(({ fails }) => fails) ?? judged.find(({ straddles }) => straddles);
  if (!worst) return undefined;
  const { spell, heat, limit, fails } = worst;
  const motor = partOf(subject, set, path, "motor");
  const { when, borne, cure } = spells[spell];
  const leaves = `${when}, ${say(heat)} of heat are left in the motor of ${name}`;
  const stands = isUsual(subject, motorHot, spell) ? `it stands about ${say(limit)} ${borne}` : `limits asks for ${say(limit)}`;
  return {
    severity: fails ? "warning" : "hint", figure, loading: set.loading.name,
    place: motor ? subject.places.block(motor) : subject.places.part(set, path),
    fixes: fails && spell !== "cruise" ? smaller(subject, set, path) : undefined,
    message: fails
      ? `${leaves}; ${stands}${bandNote(worst)}: magnets fade and windings char; ${cure}`
      : `${leaves}; ${stands}: it holds, but its band reaches past the limit`,
  };
}

/** Propellers of less diameter or pitch that leave no more heat than the motor stands, standing and in the climb, and no part over its rating. */
function smaller(subject: Subject, set: FigureSet, path: string): Fix[] {
  const within = (one: FigureSet, plants: readonly Plant[]) => {
    const spells = [["standing", 0], ["climb", one.facts.envelope?.climb?.speed]] as const;
    const weight = weightOf(one, path) ?? NaN;
    const cool = spells.every(([spell, speed]) => {
      const limit = subject.limit(motorHot, spell);
      const run = speed === undefined ? undefined : runWith(one, plants, "full", { speed });
      const own = run && runsOf(run).find((each) => each.path === path);
      return !limit || !own || own.motorHeat <= limit.value * weight;
    });
    return cool && loadsWith(subject, one, plants).every(({ actual, lasting }) => actual <= lasting);
  };
  return propellerSizes.flatMap((size) => otherPropeller(subject, set, path, size, "less", within) ?? []);
}

const weightOf = (set: FigureSet, path: string): number | undefined => nominal(set).loads.find((load) => load.path === `${path}.motor`)?.weight;

/** Heat left in a motor over its weight, in each spell that is known. */
function heatsOf(set: FigureSet, path: string, figure: string): Readonly<Record<keyof typeof spells, Quantity | undefined>> {
  const { envelope } = set.facts;
  const weight = weightOf(set, path);
  const of = (run: RunResult | undefined): Quantity | undefined => {
    const own = run && runsOf(run).find((one) => one.path === path);
    return own && weight && weight > 0 ? quantity(own.motorHeat / weight, dimensions.power_per_mass) : undefined;
  };
  return { cruise: of(envelope?.cruise?.run), climb: of(envelope?.climb?.run), standing: set.value(figure) };
}
