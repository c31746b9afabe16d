import { add, negate, type Quantity } from "../../../grammar/units/quantity";
import type { Vec3 } from "../design/geometry";
import type { Instance } from "../resolve/instance";
import { pathOf } from "../resolve/instance";
import type { Reader } from "./reader";

export type Side = "right" | "left";

/** Where a block's axes lie in the design: moved by `shift`, perhaps mirrored in y = 0 first; and how its copies are named. */
export interface Frame {
  readonly mirrored: boolean;
  readonly shift?: Vec3<Quantity>;
  /** The image in the design's plane of symmetry, taken last. */
  readonly image: boolean;
  /** Which copy of each block around is meant. */
  readonly sides: ReadonlyMap<Instance, Side>;
}

export const root: Frame = { mirrored: false, image: false, sides: new Map() };

const reflect = (p: Vec3<Quantity>): Vec3<Quantity> => [p[0], negate(p[1]), p[2]];

/** A direction seen from the design's axes. */
export function turned(frame: Frame, v: Vec3<Quantity>): Vec3<Quantity> {
  return frame.mirrored !== frame.image ? reflect(v) : v;
}

/** A place seen from the design's axes. */
export function placed(frame: Frame, p: Vec3<Quantity>): Vec3<Quantity> {
  const own = frame.mirrored ? reflect(p) : p;
  const s = frame.shift;
  const moved: Vec3<Quantity> = s ? [add(own[0], s[0]), add(own[1], s[1]), add(own[2], s[2])] : own;
  return frame.image ? reflect(moved) : moved;
}

/** Is a thing in this frame a mirror image of what was written? */
export const isImage = (frame: Frame): boolean => frame.mirrored !== frame.image;

/** The path of a block's copy in this frame: `pods.right.hull`. */
export function pathIn(frame: Frame, block: Instance): string {
  const names: string[] = [];
  for (let at: Instance | undefined = block; at?.parent; at = at.parent) {
    const side = frame.sides.get(at);
    names.unshift(side ? `${at.key}.${side}` : at.key);
  }
  return names.join(".");
}

/** The path a reference means, seen from a copy: sides named by hand stay, sides of the blocks around are filled in. */
export function referencePath(frame: Frame, target: Instance, named: string): string {
  return named === pathOf(target) ? pathIn(frame, target) : named;
}

const withSide = (frame: Frame, block: Instance, side: Side) => new Map([...frame.sides, [block, side]]);

/** The copies of a block: itself, or with `mirror = yes` the right one as written and the left one, its image. */
export function copies(block: Instance, reader: Reader, frame: Frame): readonly Frame[] {
  if (!reader.flag(block, "mirror")) return [frame];
  const right: Frame = { ...frame, sides: withSide(frame, block, "right") };
  // The image is taken in the axes the block stands in, before those are moved.
  const left: Frame = { ...frame, mirrored: !frame.mirrored, sides: withSide(frame, block, "left") };
  return [right, left];
}

/** The frames of a placed assembly's copies; none when its place is not known. */
export function placements(place: Instance, reader: Reader, around: Frame): readonly Frame[] {
  const at = reader.point(place, "at");
  if (!at) return [];
  const shift = around.shift ? placed({ ...around, image: false }, at) : around.mirrored ? reflect(at) : at;
  const mirrored = around.mirrored !== (reader.flag(place, "flip") === true);
  const one: Frame = { mirrored, shift, image: around.image, sides: around.sides };
  if (!reader.flag(place, "mirror")) return [one];
  return [
    { ...one, sides: withSide(one, place, "right") },
    { ...one, image: !one.image, sides: withSide(one, place, "left") },
  ];
}
