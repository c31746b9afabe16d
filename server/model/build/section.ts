import { plain, type Quantity } from "../../../grammar/units/quantity";
import type { SectionValue } from "../../../grammar/vocabulary/schema";
import type { MeasuredPolar, Section, SectionShape } from "../design/geometry";
import type { Instance } from "../resolve/instance";
import { readCoordinates } from "../coordinates/read";
import { readPolarTable } from "../polar-table/read";
import { textBeside } from "./beside";
import type { Reader } from "./reader";

/** A flat plate of 3 %: what a surface without a section gets. */
export const plateSection: Section<Quantity> = { shape: { type: "flat", thickness: plain(0.03) } };

export type Sections = readonly [Section<Quantity>, Section<Quantity>];

/** The sections that the block's own `foil` stands for, at root and tip. Undefined without one, or if it is broken. */
export function sectionsOf(owner: Instance, reader: Reader): Sections | undefined {
  const value = reader.written(owner, "foil") ? (reader.raw(owner, "foil") as SectionValue | readonly [SectionValue, SectionValue] | undefined) : undefined;
  if (!value) return undefined;
  const [root, tip] = "form" in value ? [value, value] : value;
  const inner = sectionOf(root, reader);
  const outer = tip === root ? inner : sectionOf(tip, reader);
  return inner && outer && [inner, outer];
}

/** A formula, or a `foil` block with its table and overrides. One with a table alone is a thin plate where a shape is needed. */
function sectionOf(value: SectionValue, reader: Reader): Section<Quantity> | undefined {
  if (value.form !== "block") return { shape: formulaOf(value) };
  const block = value.block.target as Instance;
  const formula = reader.raw(block, "shape") as Exclude<SectionValue, { form: "block" }> | undefined;
  const polar = measured(block, reader);
  const shape = formula ? formulaOf(formula) : reader.written(block, "file") ? fromFile(block, reader) : polar && plateSection.shape;
  return shape && {
    shape, ...(polar ? { polar } : {}),
    liftMax: reader.quantity(block, "lift_max"),
    zeroLiftAngle: reader.quantity(block, "zero_lift_angle"),
    moment: reader.quantity(block, "moment"),
  };
}

function formulaOf(value: Exclude<SectionValue, { form: "block" }>): SectionShape<Quantity> {
  return value.form === "naca" ? { type: "naca", digits: value.digits } : { type: "flat", thickness: value.thickness };
}

function fromFile(block: Instance, reader: Reader): SectionShape<Quantity> | undefined {
  const beside = textBeside(block, "file", reader);
  const read = beside && readCoordinates(beside.text);
  if (read && "points" in read) return { type: "coordinates", points: read.points };
  if (read) beside.complain(read.fault);
  return undefined;
}

function measured(block: Instance, reader: Reader): MeasuredPolar | undefined {
  const beside = textBeside(block, "polar", reader);
  const read = beside && readPolarTable(beside.text);
  if (read && "polar" in read) return read.polar;
  if (read) beside.complain(read.fault);
  return undefined;
}
