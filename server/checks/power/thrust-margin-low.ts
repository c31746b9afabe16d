import { dimensions } from "../../../grammar/units/dimension";
import { halfWidth, quantity, type Quantity } from "../../../grammar/units/quantity";
import type { Fix } from "../../../shared/finding";
import type { FigureSet } from "../../figures/figure-set";
import type { Check, Subject, Verdict } from "../check";
import { asker, byClass, practice } from "../class-words";
import { bandNote, past, where, type Judged } from "../judge";
import { flies, whole } from "../readiness";
import { otherPropeller } from "../solve/propeller";
import { moreCells, moreKv } from "../solve/stronger";
import { enoughThrust, unharmed, type Wanted } from "./thrust";

/** Too little thrust for the weight, or too little left over the drag. */
export const thrustMarginLow: Check = {
  code: "thrust_margin_low",
  wave: "slow",
  text: "Thrust to weight, climb, or thrust over drag is under what the class needs.",
  thresholds: [
    {
      name: "thrust_to_weight", dimension: "ratio", text: "Least static thrust over weight.",
      usual: byClass({ trainer: 0.35, sport: 0.5, aerobatic: 0.8, glider: undefined, motor_glider: 0.3, speed: 0.5, seaplane: 0.5 }, 0.4),
      source: "a quarter of the weight at least, a third to a half better, 1 for vertical flight: Shaw's rule, magazine column 2001; by class common practice, no source",
    },
    {
      name: "climb_rate", dimension: "speed", text: "Least best rate of climb.",
      usual: byClass({ sport: 2, aerobatic: 4, glider: undefined, speed: 4, slow: 0.8, indoor: 0.5, seaplane: 2 }, 1.5),
      source: "300 ft/min at least: 14 CFR 23.65 as it was until 2017, from memory; by class common practice, no source",
    },
    {
      name: "thrust_over_drag", dimension: "ratio", text: "Least thrust over drag, level at 1.3 × stall.",
      usual: byClass({ aerobatic: 2.5, glider: undefined, speed: 2, slow: 1.3, indoor: 1.3 }, 1.5), source: practice,
    },
  ],
  run(subject) {
    const flown = subject.sets.filter((set) => flies(set, subject));
    const found = kinds.flatMap((kind) => {
      const least = subject.limit(thrustMarginLow, kind.name);
      const judged = least ? past(kind.name === "thrust_to_weight" ? subject.sets.filter(whole) : flown, kind.figure, least, "least") : [];
      return least && judged.length > 0 ? [{ kind, least, judged }] : [];
    });
    // They mostly come together, of one cause.
    const first = found.find(({ judged: [worst] }) => worst.fails) ?? found[0];
    return first ? [verdict(subject, first)] : [];
  },
};

const kinds = [
  { name: "thrust_to_weight", figure: "power.thrust_to_weight", harm: "it will leave the ground late and climb badly" },
  { name: "climb_rate", figure: "flight.climb_rate", harm: "it will hardly clear what stands at the end of the field" },
  { name: "thrust_over_drag", figure: "power.thrust_margin", harm: "slow and nose up it will not climb away" },
] as const;

type Kind = (typeof kinds)[number];

interface Found {
  readonly kind: Kind;
  readonly least: Quantity;
  readonly judged: readonly Judged[];
}

function verdict(subject: Subject, { kind, least, judged }: Found): Verdict {
  const [worst] = judged;
  const { set, fails } = worst;
  const plant = set.loading.design.powerplants[0];
  const value = `${told(subject, kind, worst)}${where(judged, subject)}`;
  const needs = `${asker(subject, thrustMarginLow, kind.name)} ${subject.say(least)}`;
  return {
    severity: fails ? "warning" : "hint", figure: kind.figure, loading: set.loading.name,
    place: plant ? subject.places.part(set, plant.path) : subject.places.whole(),
    message: fails
      ? `${value}, ${needs}${bandNote(worst)}: ${kind.harm}; give it more propeller, more cells or less weight`
      : `${value}: ${needs}; it holds, but its band reaches past the limit`,
    fixes: fails && plant ? stronger(subject, set, plant.path) : undefined,
  };
}

function told({ say }: Subject, { name }: Kind, { set, value }: Judged): string {
  if (name === "thrust_to_weight") return `thrust is ${say(value)} of the weight`;
  if (name === "climb_rate") return `it climbs ${say(value)} at full throttle`;
  const slow = set.facts.flight && quantity(1.3 * set.facts.flight.points.stall.speed, dimensions.speed);
  return `thrust is ${say(value)} of the drag${slow ? ` level at ${say(slow)}` : ""}`;
}

/** A larger propeller, more cells or more rpm per volt: enough for every threshold, with every part within its lasting rating. */
function stronger(subject: Subject, set: FigureSet, path: string): Fix[] {
  // Past the limit by as much as the figure's band is wide, so that it does not reach back over it.
  const [thrustToWeight, climb, thrustOverDrag] = kinds.map(({ name, figure }) => {
    const [limit, now] = [subject.limit(thrustMarginLow, name)?.value, set.value(figure)];
    return limit === undefined || !now ? limit : limit * (1 + (1.2 * halfWidth(now)) / Math.abs(now.value));
  });
  const wanted: Wanted = { thrustToWeight, climb, thrustOverDrag };
  const heaviest = Math.max(...subject.sets.map((one) => one.value("mass.total")?.value ?? 0));
  return [
    otherPropeller(subject, set, path, "diameter", "more", (one, powerplants) =>
      enoughThrust(one, { powerplants }, wanted, heaviest) && unharmed(subject, one, { powerplants })),
    moreCells(subject, set, path, (one, sources, heavier) => enoughThrust(one, { sources }, wanted, heaviest + heavier) && unharmed(subject, one, { sources })),
    moreKv(subject, set, path, (one, powerplants) => enoughThrust(one, { powerplants }, wanted, heaviest), (one, powerplants) => unharmed(subject, one, { powerplants })),
  ].filter((fix) => fix !== undefined);
}
