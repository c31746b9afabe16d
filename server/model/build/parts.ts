import { add, multiply, plain, type Quantity } from "../../../grammar/units/quantity";
import type { Reader } from "./reader";
import type { Load, Receiver, Vec3, Wheel } from "../design/geometry";
import type { Instance } from "../resolve/instance";
import { pathIn, placed, referencePath, type Frame } from "./frame";
import type { BlockName } from "../../../grammar/vocabulary/value";

/** Blocks that are simply a weight at a place. */
export const loadKinds = new Set(["item", "servo", "receiver", "battery"]);

/** The weight a block stands for. A battery that only wires packs together has none of its own. */
export function buildLoad(block: Instance, reader: Reader, frame: Frame): Load<Quantity> | undefined {
  if (block.kind === "battery" && reader.raw(block, "packs") !== undefined) return undefined;
  const at = reader.point(block, "at");
  if (!at) return undefined;
  return {
    path: pathIn(frame, block),
    kind: block.kind,
    weight: reader.quantity(block, "weight"),
    at: placed(frame, at),
    size: reader.point(block, "size"),
  };
}

/** A wheel or skid: where it touches the ground, and its weight half a diameter above. */
export function buildWheel(block: Instance, reader: Reader, frame: Frame): { wheel: Wheel<Quantity>; load: Load<Quantity> } | undefined {
  const at = reader.point(block, "at");
  if (!at) return undefined;
  const diameter = reader.quantity(block, "diameter");
  const middle: Vec3<Quantity> = diameter ? [at[0], at[1], add(at[2], multiply(plain(0.5), diameter))] : at;
  const path = pathIn(frame, block);
  return {
    wheel: { path, kind: block.kind as Wheel["kind"], contact: placed(frame, at), diameter, steer: reader.flag(block, "steer") === true },
    load: { path, kind: block.kind, weight: reader.quantity(block, "weight"), at: placed(frame, middle) },
  };
}

export function buildReceiver(block: Instance, reader: Reader, frame: Frame): Receiver {
  const channels = (reader.raw(block, "outputs") ?? []) as readonly (readonly BlockName[])[];
  const nameOf = (part: BlockName) => referencePath(frame, part.target as Instance, part.path);
  return { path: pathIn(frame, block), outputs: channels.map((channel) => channel.map(nameOf)) };
}
