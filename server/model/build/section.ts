import { plain, type Quantity } from "../../../grammar/units/quantity";
import type { SectionValue } from "../../../grammar/vocabulary/schema";
import type { Section, SectionShape } from "../design/geometry";
import { relativeUri } from "../resolve/files";
import type { Instance } from "../resolve/instance";
import { readCoordinates } from "../coordinates/read";
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

/** A formula, or a `foil` block with its overrides. */
function sectionOf(value: SectionValue, reader: Reader): Section<Quantity> | undefined {
  if (value.form !== "block") return { shape: formulaOf(value) };
  const block = value.block.target as Instance;
  const formula = reader.raw(block, "shape") as Exclude<SectionValue, { form: "block" }> | undefined;
  const shape = formula ? formulaOf(formula) : fromFile(block, reader);
  return shape && {
    shape,
    liftMax: reader.quantity(block, "lift_max"),
    zeroLiftAngle: reader.quantity(block, "zero_lift_angle"),
    moment: reader.quantity(block, "moment"),
  };
}

function formulaOf(value: Exclude<SectionValue, { form: "block" }>): SectionShape<Quantity> {
  return value.form === "naca" ? { type: "naca", digits: value.digits } : { type: "flat", thickness: value.thickness };
}

function fromFile(block: Instance, reader: Reader): SectionShape<Quantity> | undefined {
  const slot = block.slots.get("file");
  const path = reader.text(block, "file");
  const node = slot?.entry.value;
  if (!slot || path === undefined || !node) return undefined;
  const { file } = slot.home;
  const uri = relativeUri(file.uri, path);
  const text = uri === undefined ? undefined : file.source.text(uri);
  const { problems } = reader.world;
  if (text === undefined) {
    problems.addFor(block, "file_not_found", file, node, `"${path}" is not there: no such file beside this one`);
    return undefined;
  }
  const read = readCoordinates(text);
  if ("points" in read) return { type: "coordinates", points: read.points };
  problems.addFor(block, "wrong_value", file, node, `"${path}" ${read.fault}`);
  return undefined;
}
