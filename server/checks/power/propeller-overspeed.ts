import { dimensions } from "../../../grammar/units/dimension";
import { plain, quantity } from "../../../grammar/units/quantity";
import type { PlantRun } from "../../compute/powertrain/plant-run";
import { rotationLimit } from "../../compute/propeller/rotation-limit";
import type { EnvelopePoint } from "../../figures/flight/envelope";
import { runsOf } from "../../figures/power";
import type { FigureSet } from "../../figures/figure-set";
import type { Check, Subject, Verdict } from "../check";
import { always, practice } from "../class-words";
import { nominal } from "../readiness";
import { placeIn, type Plant } from "./parts";

/** A propeller faster than its blades or the air allow. */
export const propellerOverspeed: Check = {
  code: "propeller_overspeed",
  wave: "slow",
  text: "A propeller turns faster than its maker or its blade type allows, or its tips come near the speed of sound: standing, in level flight, or in a dive.",
  thresholds: [
    {
      name: "rotation", dimension: "ratio", text: "Greatest share of the allowed rotation: the maker's `max_rpm`, else rpm × diameter of the blade type.",
      usual: always(1), source: "thin 145,000, wide 65,000, thick 190,000 rpm × inch: common practice, no source; the maker's figure goes first",
    },
    { name: "mach", dimension: "ratio", text: "Greatest Mach number of the tips.", usual: always(0.7), source: practice },
  ],
  run(subject) {
    const found = new Map<string, Verdict>();
    for (const set of subject.sets) for (const plant of nominal(set).powerplants) {
      const name = subject.places.name(set, plant.path);
      const verdict = found.has(name) ? undefined : judgeOne(subject, set, plant);
      if (verdict) found.set(name, verdict);
    }
    return [...found.values()];
  },
};

/** A running point of a powerplant, with when it is met. */
interface Case {
  readonly run: PlantRun;
  /** "standing at full throttle on a full charge". */
  readonly when: string;
}

/** Standing; full throttle in level flight, and in a dive to the design's own `never_exceed`; any other dive with the throttle shut. */
function casesOf(subject: Subject, { facts: { power, envelope } }: FigureSet, path: string): Case[] {
  const at = (point: EnvelopePoint) => runsOf(point.run).find((run) => run.path === path);
  const speed = (point: EnvelopePoint) => subject.say(quantity(point.speed, dimensions.speed));
  const standing = power && runsOf(power.full).find((run) => run.path === path);
  const top = envelope?.full[envelope.full.length - 1];
  const open = envelope?.ownLimit ? envelope.dive.open : undefined;
  const one = (run: PlantRun | undefined, when: string): Case[] => (run ? [{ run, when }] : []);
  return [
    ...one(standing, "standing at full throttle on a full charge"),
    ...(top ? one(at(top), `at ${speed(top)}, level at full throttle on a full charge`) : []),
    ...(open ? one(at(open), `in a dive at ${speed(open)} with full throttle on a full charge`) : []),
    ...(envelope ? one(at(envelope.dive.shut), `in a dive at ${speed(envelope.dive.shut)} with the throttle shut`) : []),
  ];
}

function judgeOne(subject: Subject, set: FigureSet, plant: Plant): Verdict | undefined {
  const { say } = subject;
  const [share, mach] = [subject.limit(propellerOverspeed, "rotation"), subject.limit(propellerOverspeed, "mach")];
  const name = subject.places.name(set, plant.path);
  const speed = (rotation: number) => say(quantity(rotation, dimensions.rotation));
  const about = { figure: `power.${plant.path}.static_rpm`, loading: set.loading.name };
  const limit = plant.propeller && rotationLimit(plant.propeller);
  const cases = casesOf(subject, set, plant.path);
  const fast = limit && share && cases.find(({ run }) => run.rotation > limit.rotation * share.value);
  if (fast) {
    const maker = limit.from === "maker";
    const part = share.value === 1 ? "" : ` (limits asks for ${say(share, "share")} of that)`;
    const allowed = maker ? `its maker allows ${speed(limit.rotation)}` : `blades of this type stand ${speed(limit.rotation)} at this diameter`;
    return {
      ...about, severity: maker ? "error" : "warning", place: placeIn(subject, set, plant.path, "propeller", maker ? "max_rpm" : "diameter"),
      message: `the propeller of ${name} turns ${speed(fast.run.rotation)} ${fast.when}; ${allowed}${part}: a blade may come off and cut; ` +
        "take fewer cells or fewer rpm per volt, or a propeller made for it",
    };
  }
  const loud = mach && cases.find(({ run }) => run.tipMach > mach.value);
  if (!loud) return undefined;
  return {
    ...about, severity: "warning", place: placeIn(subject, set, plant.path, "propeller", "diameter"),
    message: `the tips of ${name} reach Mach ${say(plain(loud.run.tipMach))} ${loud.when}, over ${say(mach)}: loud, and the thrust falls short of what is computed; ` +
      "take a smaller diameter, fewer cells or fewer rpm per volt",
  };
}
