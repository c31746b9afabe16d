import type { Quantity } from "../../../grammar/units/quantity";
import type { SectionValue } from "../../../grammar/vocabulary/schema";
import type { Section, SectionShape } from "../design/geometry";
import { relativeUri } from "../resolve/files";
import type { Instance } from "../resolve/instance";
import { readCoordinates } from "./coordinates";
import type { Reader } from "./reader";

/** The section a `foil` property stands for: a formula, or a `foil` block with its overrides. Undefined if that is broken. */
export function sectionOf(value: SectionValue, reader: Reader): Section<Quantity> | undefined {
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
    problems.addFor(block, "file_not_found", file, node, `there is no file "${path}" beside this one`);
    return undefined;
  }
  const read = readCoordinates(text);
  if ("points" in read) return { type: "coordinates", points: read.points };
  problems.addFor(block, "wrong_value", file, node, `"${path}" ${read.fault}`);
  return undefined;
}
