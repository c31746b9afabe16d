import { add, chain, divide, multiply, plain, raise, subtract, type Quantity } from "../../../grammar/units/quantity";
import { dimensions } from "../../../grammar/units/dimension";
import type { Panel } from "../design/geometry";
import type { Geometry } from "../evaluate/resolver";
import { bodyKinds, bodyLength } from "./bodies";
import { movedBy, seenFrom } from "./frame";
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

  pointOn({ block, path }, along, chord, holder, world) {
    const reader = new Reader(world);
    const at = reader.point(block, "at");
    const half = at && writtenHalf(block, reader);
    return half && seenFrom(holder, block, path, movedBy(at, pointOnHalf(half, along, chord)), reader);
  },

  seenFrom: ({ block, path }, place, holder, world) => seenFrom(holder, block, path, place, new Reader(world)),
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
