import { add, chain, divide, multiply, plain, raise, subtract, type Quantity } from "../../../grammar/units/quantity";
import { dimensions } from "../../../grammar/units/dimension";
import type { Panel, Vec3 } from "../design/geometry";
import type { Geometry } from "../evaluate/resolver";
import type { World } from "../evaluate/site";
import type { Instance } from "../resolve/instance";
import { bodyKinds, bodyLength } from "./bodies";
import { placed, placements, root } from "./frame";
import { pointOnHalf, writtenHalf, type WrittenHalf } from "./half";
import { Reader } from "./reader";
import { surfaceKinds } from "./surfaces";

const surfaceNames = ["span", "area", "mean_chord"];

/** What the model gives back to expressions: sizes of surfaces and bodies, and places on surfaces. */
export const geometry: Geometry = {
  derivedNames: (block) => (surfaceKinds.has(block.kind) ? surfaceNames : bodyKinds.has(block.kind) ? ["length"] : []),

  derived(block, name, world) {
    const reader = new Reader(world);
    if (bodyKinds.has(block.kind) && name === "length") return bodyLength(block, reader);
    if (!surfaceKinds.has(block.kind) || !surfaceNames.includes(name)) return undefined;
    const half = writtenHalf(block, reader);
    if (!half) return undefined;
    const sides = reader.flag(block, "mirror") === true ? 2 : 1;
    if (name === "span") return spanOf(half, sides, block.kind);
    if (name === "area") return multiply(plain(sides), sum(half.panels.map(areaOf)));
    return divide(sum(half.panels.map(chordSquared)), sum(half.panels.map(areaOf)));
  },

  pointOn(surface, along, chord, holder, world) {
    const half = writtenHalf(surface, new Reader(world));
    return half && fromItsPlace(surface, holder, pointOnHalf(half, along, chord), world);
  },
};

const sum = (all: readonly Quantity[]) => all.reduce((a, b) => add(a, b));

/** Across both tips as seen from above; of a fin, its height. */
function spanOf(half: WrittenHalf, sides: number, kind: string): Quantity {
  const [root, tip] = [half.panels[0].inner.leadingEdge, half.panels.at(-1)!.outer.leadingEdge];
  if (kind === "fin") {
    const rise = subtract(tip[2], root[2]);
    return chain(rise, Math.abs(rise.value), Math.sign(rise.value) || 1, dimensions.length);
  }
  return sides === 2 ? multiply(plain(2), tip[1]) : subtract(tip[1], root[1]);
}

const areaOf = ({ span, inner, outer }: Panel<Quantity> & { span: Quantity }) =>
  multiply(multiply(plain(0.5), span), add(inner.chord, outer.chord));

/** ∫c² over the panel. */
function chordSquared({ span, inner, outer }: Panel<Quantity> & { span: Quantity }): Quantity {
  const [a, b] = [inner.chord, outer.chord];
  return multiply(multiply(plain(1 / 3), span), add(add(raise(a, 2), multiply(a, b)), raise(b, 2)));
}

/** A place in a placed assembly's axes, seen from a block outside it: on the copy as written, not its image. */
function fromItsPlace(surface: Instance, holder: Instance, point: Vec3<Quantity>, world: World): Vec3<Quantity> {
  const around = new Set<Instance>();
  for (let at: Instance | undefined = holder; at; at = at.parent) around.add(at);
  let p = point;
  for (let at = surface.parent; at && !around.has(at); at = at.parent) {
    if (at.kind !== "place") continue;
    const frame = placements(at, new Reader(world), root)[0];
    if (frame) p = placed(frame, p);
  }
  return p;
}

