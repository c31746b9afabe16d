import type { Quantity } from "../../../grammar/units/quantity";
import type { Body, Load, Member, Receiver, Surface, Wheel } from "../design/geometry";
import type { Bench, Powerplant, Source } from "../design/power";
import type { Instance } from "../resolve/instance";
import { bodyKinds, buildBody, buildMember } from "./bodies";
import type { Frame } from "./frame";
import { buildLoad, buildReceiver, buildWheel, loadKinds } from "./parts";
import { buildPowerplant, buildSource } from "./power";
import type { Reader } from "./reader";
import { buildSurface, surfaceKinds } from "./surfaces";

/** What one copy of a block puts into the design. */
export interface Built {
  readonly surfaces?: readonly Surface<Quantity>[];
  readonly bodies?: readonly Body<Quantity>[];
  readonly members?: readonly Member<Quantity>[];
  readonly loads?: readonly Load<Quantity>[];
  readonly wheels?: readonly Wheel<Quantity>[];
  readonly receivers?: readonly Receiver[];
  readonly sources?: readonly Source<Quantity>[];
  readonly powerplants?: readonly Powerplant<Quantity>[];
  readonly benches?: readonly Bench<Quantity>[];
}

/** Does a block of this kind stand for a part of its own? */
export const isBuilt = (kind: string): boolean =>
  surfaceKinds.has(kind) || bodyKinds.has(kind) || loadKinds.has(kind) || ["strut", "wire", "wheel", "skid", "powerplant"].includes(kind);

/** Builds one copy of a part, of a powerplant with these of its parts. `whole`: is it all there? */
export function buildPart(block: Instance, parts: readonly Instance[], reader: Reader, frame: Frame): Built & { readonly whole: boolean } {
  const one = <T>(built: T | undefined) => (built === undefined ? [] : [built]);
  const whole = (built: Built, ...lists: readonly (readonly unknown[])[]) => ({ ...built, whole: lists.every((list) => list.length > 0) });
  if (surfaceKinds.has(block.kind)) {
    const surfaces = one(buildSurface(block, reader, frame));
    return whole({ surfaces }, surfaces);
  }
  if (bodyKinds.has(block.kind)) {
    const bodies = one(buildBody(block, reader, frame));
    return whole({ bodies }, bodies);
  }
  switch (block.kind) {
    case "strut":
    case "wire": {
      const members = one(buildMember(block, reader, frame));
      return whole({ members }, members);
    }
    case "wheel":
    case "skid": {
      const built = buildWheel(block, reader, frame);
      return { wheels: one(built?.wheel), loads: one(built?.load), whole: built !== undefined };
    }
    case "powerplant": {
      const built = buildPowerplant(block, parts, reader, frame);
      return { powerplants: one(built?.plant), loads: built?.loads, benches: built?.benches, whole: built !== undefined };
    }
    case "battery": {
      const wires = reader.raw(block, "packs") !== undefined;
      const loads = one(buildLoad(block, reader, frame));
      return { sources: one(buildSource(block, reader, frame)), loads, whole: wires || loads.length > 0 };
    }
    default: {
      const loads = one(buildLoad(block, reader, frame));
      return whole(block.kind === "receiver" ? { receivers: [buildReceiver(block, reader, frame)], loads } : { loads }, loads);
    }
  }
}
