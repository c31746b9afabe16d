import type { EntryNode } from "../../../grammar/tree";
import type { Fix, Place } from "../../../shared/finding";
import type { FigureSet } from "../../figures/figure-set";
import type { Subject } from "../check";
import { nominal } from "../readiness";
import { axisOf, literalText, type Literal } from "./literal";

/** Something with a weight whose place is written out in this file: a fix can move it. */
export interface Movable {
  readonly name: string;
  /** The entry that says where it is; all copies of it move with that. */
  readonly entry: EntryNode;
  readonly literal: Literal;
  readonly place: Place;
  /** Where it, or the first of its copies, is in the design's axes, m. */
  readonly at: number;
  /** Half its length or width along the axis: as written, else that of a small pack. */
  readonly half: number;
  /** What moves with it in each loading, kg: both of a mirrored pair. */
  readonly weights: ReadonlyMap<FigureSet, number>;
}

/**
 * All loads that a fix may move along an axis, the heaviest first. Copies, placed ones too, all move aft by the same; to
 * the side they may move against each other, so along y only what stands at the top of the file and is not mirrored.
 */
export function movables(subject: Subject, axis: 0 | 1, fits: (kind: string, path: string) => boolean): Movable[] {
  const found = new Map<EntryNode, Movable & { readonly weights: Map<FigureSet, number> }>();
  for (const set of subject.sets) {
    for (const { path, kind, weight, at, size } of nominal(set).loads) {
      if (!weight || !fits(kind, path) || (axis === 1 && path.includes("."))) continue;
      const block = set.loading.blocks.get(path);
      const slot = block && subject.places.slot(set, block, "at");
      const place = slot && subject.places.written(slot);
      const literal = slot && axisOf(slot.entry.value, axis);
      if (!place || !literal) continue;
      let one = found.get(slot.entry);
      if (!one) {
        one = { name: subject.places.name(set, path), entry: slot.entry, literal, place, at: at[axis], half: size ? size[axis] / 2 : usualHalf, weights: new Map() };
        found.set(slot.entry, one);
      }
      one.weights.set(set, (one.weights.get(set) ?? 0) + weight);
    }
  }
  const heft = ({ weights }: Movable) => Math.max(...weights.values());
  return [...found.values()].sort((a, b) => heft(b) - heft(a));
}

/** Common practice, no source. m */
const usualHalf = 0.03;

/** Writes it `by` further aft (axis 0) or to the right (1), m. */
export function move(subject: Subject, { name, literal }: Movable, axis: 0 | 1, by: number): Fix {
  const text = literalText(literal.value + by, literal.unit, step);
  const { start, end } = literal.span;
  return { title: `Move ${name} to ${axis === 0 ? "x" : "y"} = ${text}`, edits: [{ file: subject.file.uri, start, end, text }] };
}

/** Places are written to the millimetre. */
const step = 1e-3;
