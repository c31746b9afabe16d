import { dimensions } from "../../../grammar/units/dimension";
import { quantity } from "../../../grammar/units/quantity";
import type { FigureSet } from "../../figures/figure-set";
import type { Check, Subject, Threshold, Verdict } from "../check";
import { always, byClass, practice } from "../class-words";
import { moveHub, otherPropeller } from "../solve/propeller";
import type { Plant } from "./parts";
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
    for (const set of subject.sets) for (const near of tooNear(subject, set)) {
      const name = (path: string) => subject.places.name(set, path);
      const key = [near.what, name(near.plant), near.what === "ground" ? "" : name(near.other)].join(" ");
      const known = found.get(key);
      if (!known || near.distance < known.near.distance - 1e-6) found.set(key, { set, near });
    }
    return [...found.values()].map(({ set, near }) => verdict(subject, set, near));
  },
};

/** What is nearer than its threshold, with the design's powerplants or others. */
function tooNear(subject: Subject, set: FigureSet, plants?: readonly Plant[]): Clearance[] {
  const least = new Map(propellerStrikes.thresholds.map(({ name }) => [name, subject.limit(propellerStrikes, name)?.value ?? 0]));
  return clearances(set, Math.max(...least.values()), plants).filter(({ what, distance }) => distance < least.get(what)!);
}

function verdict(subject: Subject, set: FigureSet, { plant, what, other, distance }: Clearance): Verdict {
  const { places } = subject;
  const length = (metres: number) => subject.say(quantity(metres, dimensions.length));
  const least = subject.limit(propellerStrikes, what)!;
  const [own, others] = what === "ground" ? [places.name(set, plant), ""] : [plant, other].map((path) => places.name(set, path));
  const thing = what === "ground" ? `the ground ${other}` : what === "disc" ? `the propeller of ${others === own ? "its image" : others}` : others;
  const strikes = distance <= 0;
  const clear = (one: FigureSet, plants: readonly Plant[]) => tooNear(subject, one, plants).every((near) => places.name(one, near.plant) !== own);
  const fixes = [what === "surface" || what === "body" ? moveHub(subject, set, plant, clear) : undefined, otherPropeller(subject, set, plant, "diameter", "less", clear)];
  const depth = strikes && distance < 0 ? ` by ${length(-distance)}` : "";
  return {
    severity: strikes ? "error" : "warning",
    place: places.part(set, plant, "at"), loading: set.loading.name,
    message: strikes
      ? `the propeller of ${own} strikes ${thing}${depth}; ${cures[what]}`
      : `the propeller of ${own} passes ${thing} at ${length(distance)}, and ${length(least.value)} is the least for bending mounts and blades; ${cures[what]}`,
    fixes: fixes.filter((fix) => fix !== undefined),
    related: what === "ground" ? undefined : [{ message: `${others} stands here`, place: places.part(set, other) }],
  };
}

const cures = {
  ground: "take a smaller propeller, or longer legs",
  body: "take a smaller propeller, or move its hub",
  surface: "take a smaller propeller, or move its hub",
  disc: "take smaller propellers, or move their hubs apart",
};
