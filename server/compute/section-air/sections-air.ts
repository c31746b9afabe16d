import type { MeasuredPolar, Section, SectionShape } from "../../model/design/geometry";
import type { Polar } from "../polar/polar";
import { estimatedBelow, joined, mirrored, type Attached, type Below } from "./attached";
import { blended } from "./blended";
import { measuredAt, type Measured } from "./measured";
import { attachedOf, overridden } from "./of-polar";
import { plateAir } from "./plate";
import type { PolarLookup } from "./polar-shelf";
import { between, reynoldsGrid, shareOf } from "./reynolds-grid";
import type { SectionAir, SectionsAir } from "./section-air";
import { isSymmetric, upsideDown } from "./upside-down";

/**
 * What sections do in the air: by the designer's measured table, else by computed polars, for a flat plate by handbook values;
 * what is written in the `foil` block wins. Undefined while a polar that it takes is pending, which `lookup` then knows to be
 * wanted, and where none of the section's polars can be computed. Polars are taken at the two Reynolds numbers of the grid
 * around the one asked for. How a section stalls pushing down is only asked for when `liftMin`, or the drag at such a lift,
 * is; while that is pending it is an estimate, and `provisional` is true from then on.
 */
export function sectionsAir(lookup: PolarLookup): SectionsAir {
  const attached = remembering(attachedOf);
  const symmetric = remembering(isSymmetric);
  const turned = remembering(upsideDown);
  const tables = new WeakMap<MeasuredPolar, readonly Measured[]>();

  /** The polar at a place of the grid, or the next one that can be computed. */
  const found = (shape: SectionShape, from: number, way: 1 | -1): Polar | "none" | "pending" => {
    for (let i = from; i >= 0 && i < reynoldsGrid.length; i += way) {
      const answer = lookup(shape, reynoldsGrid[i]);
      if (answer !== "none") return answer;
    }
    return "none";
  };

  const computed = (shape: SectionShape, reynolds: number, make: (above: Attached) => SectionAir): SectionAir | "none" | "pending" => {
    const { low, high } = between(reynoldsGrid, reynolds);
    const [a, b] = low === high && lookup(shape, reynoldsGrid[low]) !== "none"
      ? [lookup(shape, reynoldsGrid[low]), lookup(shape, reynoldsGrid[low])]
      : [found(shape, low, -1), found(shape, high, 1)];
    if (a === "pending" || b === "pending") return "pending";
    const [first, second] = [a === "none" ? b : a, b === "none" ? a : b];
    if (first === "none" || second === "none") return "none";
    const [from, to] = [make(attached(first)), first === second ? undefined : make(attached(second))];
    return to ? blended(from, to, shareOf(from.reynolds, to.reynolds, reynolds)) : from;
  };

  const below = (shape: SectionShape, above: Attached): Below => {
    if (symmetric(shape)) return estimatedBelow(above, false);
    const under = computed(turned(shape), above.reynolds, oneSided);
    if (under === "pending" || under === "none") return estimatedBelow(above, under === "pending");
    return { liftMax: under.liftMax, drag: (lift) => under.drag(lift), provisional: false };
  };

  const measured = (section: Section, polar: MeasuredPolar, reynolds: number): SectionAir => {
    let table = tables.get(polar);
    if (!table) tables.set(polar, (table = measuredAt(section, polar)));
    const airOf = (run: Measured) => {
      const above = overridden(run.above, section);
      return joined(above, () => run.below ?? below(section.shape, above));
    };
    const { low, high, share } = between(table.map(({ above }) => above.reynolds), reynolds);
    return low === high ? airOf(table[low]) : blended(airOf(table[low]), airOf(table[high]), share);
  };

  const writtenOf = remembering((section: Section) => remembering((node: Attached) => overridden(node, section)));
  const mirroredOf = remembering(mirrored);
  const nodeOf = (section: Section) => {
    const written = writtenOf(section);
    // The other side of an asymmetric section may be asked for: each such answer knows whether it was.
    return symmetric(section.shape) ? (node: Attached) => mirroredOf(written(node)) : (node: Attached) => joined(written(node), () => below(section.shape, node));
  };

  return (section, reynolds) => {
    const { shape, polar } = section;
    if (polar) return measured(section, polar, reynolds);
    if (shape.type === "flat") return mirrored(overridden(plateAir(shape.thickness, held(reynolds)), section));
    const answer = computed(shape, reynolds, nodeOf(section));
    return typeof answer === "string" ? undefined : answer;
  };
}

const held = (reynolds: number): number => Math.min(reynoldsGrid[reynoldsGrid.length - 1], Math.max(reynoldsGrid[0], reynolds));

/** For a section turned upside down, whose own other side is not asked for. */
const oneSided = (above: Attached): SectionAir =>
  joined({ ...above, curve: { ...above.curve, least: -Infinity } }, () => estimatedBelow(above, false));

/** Remembered as long as what it is of. */
function remembering<K extends object, V>(of: (key: K) => V): (key: K) => V {
  const known = new WeakMap<K, { readonly value: V }>();
  return (key) => {
    let entry = known.get(key);
    if (!entry) known.set(key, (entry = { value: of(key) }));
    return entry.value;
  };
}
