import type { ValueNode } from "../../../grammar/tree";
import { plain, type Quantity } from "../../../grammar/units/quantity";
import type { SectionValue } from "../../../grammar/vocabulary/schema";
import type { MeasuredPolar, Section, SectionShape } from "../design/geometry";
import { relativeUri } from "../resolve/files";
import type { Instance, SourceFile } from "../resolve/instance";
import { readCoordinates } from "../coordinates/read";
import { readPolarTable } from "../polar-table/read";
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

interface Beside {
  readonly text: string;
  /** What is wrong with it, to follow its name, said where that is written. */
  readonly complain: (fault: string) => void;
}

/** The text of the file that a property names; undefined, and said, if it is not there. */
function textBeside(block: Instance, property: string, reader: Reader): Beside | undefined {
  const slot = block.slots.get(property);
  const path = reader.text(block, property);
  const node: ValueNode | undefined = slot?.entry.value;
  if (!slot || path === undefined || !node) return undefined;
  const file: SourceFile = slot.home.file;
  const uri = relativeUri(file.uri, path);
  const text = uri === undefined ? undefined : file.source.text(uri);
  const { problems } = reader.world;
  if (text === undefined) {
    problems.addFor(block, "file_not_found", file, node, `"${path}" is not there: no such file beside this one`);
    return undefined;
  }
  return { text, complain: (fault) => problems.addFor(block, "wrong_value", file, node, `"${path}" ${fault}`) };
}
