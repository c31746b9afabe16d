import type { Fix } from "../../../shared/finding";
import type { FigureSet } from "../../figures/figure-set";
import type { Subject } from "../check";
import { partOf, type Plant } from "../power/parts";
import { nominal } from "../readiness";
import { axisOf, literalOf, literalText } from "./literal";

/** Propellers come in half inches, or in centimetres where the design is written in metric units. m */
const inch = 0.0254;
const stepOf = (unit: string): number => (unit === "in" || unit === "ft" ? inch / 2 : 0.01);

/** Is all well in a loading with these powerplants in place of its own? */
type Holds = (set: FigureSet, plants: readonly Plant[]) => boolean;

/** How much smaller or larger diameter or pitch may get before it is another design. */
const [smallest, largest] = [0.65, 1.35];

/** What a propeller of the same family may have more or less of. */
export const propellerSizes = ["diameter", "pitch"] as const;

/**
 * The next lesser or greater diameter or pitch with which `holds` is true of every loading, for a propeller whose own is
 * written out; all that is made of the same block change with it. All else stays. One that was measured has no other pitch.
 */
export function otherPropeller(
  subject: Subject, set: FigureSet, path: string, size: (typeof propellerSizes)[number], way: "less" | "more", holds: Holds,
): Fix | undefined {
  const block = partOf(subject, set, path, "propeller");
  const slot = block && subject.places.slot(set, block, size);
  const now = nominal(set).powerplants.find((plant) => plant.path === path)?.propeller;
  if (size === "pitch" && (now?.measured || now?.stations)) return undefined;
  const literal = slot && slot.home.file === subject.file ? literalOf(slot.entry.value) : undefined;
  if (!block || !literal) return undefined;
  const step = stepOf(literal.unit);
  const sets = distinct(subject.sets.filter((one) => nominal(one).powerplants.length > 0));
  const resized = (one: FigureSet, to: number) => nominal(one).powerplants.map((plant): Plant => {
    const own = partOf(subject, one, plant.path, "propeller");
    return plant.propeller && own && subject.places.slot(one, own, size)?.entry === slot!.entry
      ? { ...plant, propeller: { ...plant.propeller, [size]: to } } : plant;
  });
  const by = way === "less" ? -1 : 1;
  const whole = literal.value / step;
  const first = way === "less" ? Math.ceil(whole - 1e-6) - 1 : Math.floor(whole + 1e-6) + 1;
  for (let n = first; n * step >= smallest * literal.value && n * step <= largest * literal.value; n += by) {
    if (!sets.every((one) => holds(one, resized(one, n * step)))) continue;
    const text = literalText(n * step, literal.unit, 1e-4);
    const { start, end } = literal.span;
    return { title: `Take a propeller of ${text}${size === "pitch" ? " pitch" : ""}`, edits: [{ file: subject.file.uri, start, end, text }] };
  }
  return undefined;
}

/**
 * The least move of a propeller's hub, out of the way it pushes or pulls, with which `holds` is true of every loading;
 * where its place is written out, and no further than a mount reaches.
 */
export function moveHub(subject: Subject, set: FigureSet, path: string, holds: Holds): Fix | undefined {
  const block = subject.places.blockOf(set, path);
  const slot = block && subject.places.slot(set, block, "at");
  const literal = slot && slot.home.file === subject.file ? axisOf(slot.entry.value, 0) : undefined;
  const direction = nominal(set).powerplants.find((plant) => plant.path === path)?.pusher ? 1 : -1;
  if (!literal) return undefined;
  const sets = distinct(subject.sets);
  const moved = (one: FigureSet, by: number) => nominal(one).powerplants.map((plant): Plant => {
    const own = subject.places.blockOf(one, plant.path);
    const [x, y, z] = plant.hub;
    return own && subject.places.slot(one, own, "at")?.entry === slot!.entry ? { ...plant, hub: [x + direction * by, y, z] } : plant;
  });
  const enough = (millimetres: number) => sets.every((one) => holds(one, moved(one, millimetres / 1000)));
  let [low, high] = [0, mountReach];
  if (!enough(high)) return undefined;
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (enough(middle)) high = middle;
    else low = middle;
  }
  const text = literalText(literal.value + (direction * high) / 1000, literal.unit, 1e-3);
  const { start, end } = literal.span;
  return { title: `Move ${subject.places.name(set, path)} to x = ${text}`, edits: [{ file: subject.file.uri, start, end, text }] };
}

/** mm */
const mountReach = 60;

/** Loadings mostly share all but weights: each arrangement of propellers and what is around them needs looking at once. */
export function distinct(sets: readonly FigureSet[]): FigureSet[] {
  const seen = new Set<string>();
  return sets.filter((set) => {
    const { powerplants, sources, field, bodies, surfaces, wheels } = nominal(set);
    const key = JSON.stringify([powerplants, sources, field, bodies, surfaces, wheels]);
    return !seen.has(key) && seen.add(key);
  });
}
