import { add, negate, type Quantity } from "../../../grammar/units/quantity";
import type { Vec3 } from "../design/geometry";
import { lineOf, type Instance } from "../resolve/instance";
import { sidesNamed, type Side } from "../resolve/names";
import type { Reader } from "./reader";

/** Where a block's axes lie in the design: mirrored in y = 0, then moved by `shift`; and how its copies are named. */
export interface Frame {
  /** Is a thing in this frame a mirror image of what was written? */
  readonly mirrored: boolean;
  readonly shift?: Vec3<Quantity>;
  /** Which copy of each block around is meant. */
  readonly sides: ReadonlyMap<Instance, Side>;
}

export const root: Frame = { mirrored: false, sides: new Map() };

export const reflect = (p: Vec3<Quantity>): Vec3<Quantity> => [p[0], negate(p[1]), p[2]];

/** A place moved by a vector in the same axes. */
export const movedBy = (p: Vec3<Quantity>, v: Vec3<Quantity>): Vec3<Quantity> => [add(p[0], v[0]), add(p[1], v[1]), add(p[2], v[2])];

/** A direction seen from the design's axes. */
export const turned = (frame: Frame, v: Vec3<Quantity>): Vec3<Quantity> => (frame.mirrored ? reflect(v) : v);

/** A place seen from the design's axes. */
export const placed = (frame: Frame, p: Vec3<Quantity>): Vec3<Quantity> =>
  frame.shift ? movedBy(turned(frame, p), frame.shift) : turned(frame, p);

/** The path of a block's copy in this frame: `pods.right.hull`. */
export function pathIn({ sides }: Pick<Frame, "sides">, block: Instance): string {
  return lineOf(block).map((at) => (sides.has(at) ? `${at.key}.${sides.get(at)}` : at.key)).join(".");
}

/** The path a reference means, seen from a copy: sides named by hand stay, sides of the blocks around are filled in. */
export function referencePath(frame: Frame, target: Instance, named: string): string {
  if (frame.sides.size === 0) return named;
  return pathIn({ sides: new Map([...frame.sides, ...sidesNamed(target, named)]) }, target);
}

const withSide = (frame: Frame, block: Instance, side: Side) => new Map([...frame.sides, [block, side]]);

/** The copies of a block: itself, or with `mirror = yes` the right one as written and the left one, its image. */
export function copies(block: Instance, reader: Reader, frame: Frame): readonly Frame[] {
  if (!reader.flag(block, "mirror")) return [frame];
  return [
    { ...frame, sides: withSide(frame, block, "right") },
    { ...frame, mirrored: !frame.mirrored, sides: withSide(frame, block, "left") },
  ];
}

/** The frames of a placed assembly's copies; none when its place is not known. */
export function placements(place: Instance, reader: Reader, around: Frame): readonly Frame[] {
  const at = reader.point(place, "at");
  if (!at) return [];
  const flipped = reader.flag(place, "flip") === true;
  const put = (mirrored: boolean, shift: Vec3<Quantity>, sides: Frame["sides"]): Frame =>
    ({ mirrored: around.mirrored !== mirrored, shift: placed(around, shift), sides });
  if (!reader.flag(place, "mirror")) return [put(flipped, at, around.sides)];
  return [put(flipped, at, withSide(around, place, "right")), put(!flipped, reflect(at), withSide(around, place, "left"))];
}

/** A place in a block's surroundings, seen from a block elsewhere: through the placings between, on the copies that `path` names. */
export function seenFrom(holder: Instance, block: Instance, path: string, p: Vec3<Quantity>, reader: Reader): Vec3<Quantity> {
  const around = new Set(lineOf(holder));
  const sides = sidesNamed(block, path);
  let seen = p;
  for (const at of [...lineOf(block)].reverse()) {
    if (around.has(at)) break;
    const left = sides.get(at) === "left";
    if (at.kind === "place") {
      const frames = placements(at, reader, root);
      const frame = left ? frames[1] : frames[0];
      if (frame) seen = placed(frame, seen);
    } else if (left) seen = reflect(seen);
  }
  return seen;
}
