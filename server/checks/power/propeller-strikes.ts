import { dimensions } from "../../../grammar/units/dimension";
import { quantity } from "../../../grammar/units/quantity";
import type { FigureSet } from "../../figures/figure-set";
import type { Check, Subject, Threshold, Verdict } from "../check";
import { always, byClass, practice } from "../class-words";
import { withoutSides } from "../names";
import { clearances, type Clearance } from "./clearances";

const clearOf = (name: Clearance["what"], text: string, usual: Threshold["usual"] = always(0.01)): Threshold =>
  ({ name, dimension: "length", text: `Least clearance of a propeller's disc from ${text}.`, usual, source: practice });

/** A propeller that hits something. */
export const propellerStrikes: Check = {
  code: "propeller_strikes",
  wave: "quick",
  text: "A propeller's disc strikes, or comes too near to, the ground (with gear), a body other than the one it sits on, a surface, another disc.",
  thresholds: [
    clearOf("ground", "the ground, standing and with the tail up", byClass({ indoor: 0.01, slow: 0.015 }, 0.025)),
    clearOf("body", "a body other than the one it sits on"),
    clearOf("surface", "a surface"),
    clearOf("disc", "another disc"),
  ],
  run(subject) {
    const found = new Map<string, { set: FigureSet; near: Clearance }>();
    for (const set of subject.sets) for (const near of clearances(set)) {
      const least = subject.limit(propellerStrikes, near.what);
      if (!least || near.distance >= least.value) continue;
      const key = [near.what, withoutSides(near.plant), near.what === "ground" ? "" : withoutSides(near.other)].join(" ");
      const known = found.get(key);
      if (!known || near.distance < known.near.distance - 1e-6) found.set(key, { set, near });
    }
    return [...found.values()].map(({ set, near }) => verdict(subject, set, near));
  },
};

function verdict(subject: Subject, set: FigureSet, { plant, what, other, distance }: Clearance): Verdict {
  const { places } = subject;
  const length = (metres: number) => subject.say(quantity(metres, dimensions.length));
  const least = subject.limit(propellerStrikes, what)!;
  const thing = what === "ground" ? `the ground ${other}` : what === "disc" ? `the propeller of ${otherName(plant, other)}` : withoutSides(other);
  const strikes = distance <= 0;
  const depth = strikes && distance < 0 ? ` by ${length(-distance)}` : "";
  return {
    severity: strikes ? "error" : "warning",
    place: places.part(set, plant, "at"), loading: set.loading.name,
    message: strikes
      ? `the propeller of ${withoutSides(plant)} strikes ${thing}${depth}; ${cures[what]}`
      : `the propeller of ${withoutSides(plant)} passes ${thing} at ${length(distance)}, and ${length(least.value)} is the least for bending mounts and blades; ${cures[what]}`,
    related: what === "ground" ? undefined : [{ message: `${withoutSides(other)} stands here`, place: places.part(set, other) }],
  };
}

/** The two of a mirrored pair bear the same name in the text. */
const otherName = (plant: string, other: string): string => (withoutSides(other) === withoutSides(plant) ? "its image" : withoutSides(other));

const cures = {
  ground: "take a smaller propeller, or longer legs",
  body: "take a smaller propeller, or move its hub",
  surface: "take a smaller propeller, or move its hub",
  disc: "take smaller propellers, or move their hubs apart",
};
