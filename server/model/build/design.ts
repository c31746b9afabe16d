import { dimensions } from "../../../grammar/units/dimension";
import { plain, quantity, type Quantity } from "../../../grammar/units/quantity";
import type { AirframeClass, Design } from "../design/design";
import type { Body, Load, Member, Receiver, Surface, Wheel } from "../design/geometry";
import type { Bench, Powerplant, Source } from "../design/power";
import type { Instance } from "../resolve/instance";
import { copies, pathIn, placements, root as rootFrame, type Frame } from "./frame";
import { buildPart, isBuilt } from "./part";
import type { Reader } from "./reader";
import { buildSorties } from "./sorties";
import { surfaceKinds } from "./surfaces";

/** A design being put together: the lists fill as blocks are met. */
interface Lists {
  readonly surfaces: Surface<Quantity>[];
  readonly bodies: Body<Quantity>[];
  readonly members: Member<Quantity>[];
  readonly loads: Load<Quantity>[];
  readonly wheels: Wheel<Quantity>[];
  readonly receivers: Receiver[];
  readonly sources: Source<Quantity>[];
  readonly powerplants: Powerplant<Quantity>[];
  readonly benches: Bench<Quantity>[];
  readonly removable: string[];
  readonly broken: Instance[];
  /** The block each part came from, by the part's path. */
  readonly blocks: Map<string, Instance>;
}

export interface BuiltDesign {
  readonly design: Design<Quantity>;
  /** Blocks that should be part of it but couldn't be built: their figures are absent for a reason. */
  readonly broken: readonly Instance[];
  readonly blocks: ReadonlyMap<string, Instance>;
}

/** Which parts a loading leaves out. `leftOut` gets the path of a part and whether it is optional. */
export type LeftOut = (path: string, optional: boolean) => boolean;

/** All parts of a design with every copy written out, less what the loading, if there is one, leaves out. */
export function buildDesign(root: Instance, reader: Reader, leftOut: LeftOut, loading?: Instance): BuiltDesign {
  const lists: Lists = {
    surfaces: [], bodies: [], members: [], loads: [], wheels: [], receivers: [], sources: [], powerplants: [], benches: [],
    removable: [], broken: [], blocks: new Map(),
  };
  collect(root, reader, rootFrame, leftOut, lists);
  const { broken, blocks, ...parts } = lists;
  return { design: { ...wholeOf(root, reader, loading), ...parts, sorties: buildSorties(root, reader, loading) }, broken, blocks };
}

const noAllowance = plain(0);

function wholeOf(root: Instance, reader: Reader, loading: Instance | undefined) {
  const airframe = only(root, "airframe");
  const air = only(root, "air");
  const loads = only(root, "loads");
  const classWord = airframe && reader.raw(airframe, "class");
  return {
    title: airframe?.node?.title?.text ?? "",
    class: (typeof classWord === "string" ? classWord : "sport") as AirframeClass,
    allowance: (airframe && reader.quantity(airframe, "allowance")) ?? noAllowance,
    cruise: (loading && reader.quantity(loading, "cruise")) ?? (airframe && reader.quantity(airframe, "cruise")),
    neverExceed: loads && reader.quantity(loads, "never_exceed"),
    flaps: loading && reader.own(loading, "flaps"),
    field: {
      altitude: (air && reader.quantity(air, "altitude")) ?? quantity(0, dimensions.length),
      temperature: air && reader.quantity(air, "temperature"),
      pressure: air && reader.quantity(air, "pressure"),
    },
  };
}

/** The one block of a kind at the top. */
export function only(root: Instance, kind: string): Instance | undefined {
  return [...root.children.values()].find((child) => child.kind === kind);
}

function collect(owner: Instance, reader: Reader, frame: Frame, leftOut: LeftOut, lists: Lists): void {
  for (const block of owner.children.values()) {
    if (block.kind === "place") {
      for (const inner of placements(block, reader, frame)) collect(block, reader, inner, leftOut, lists);
      if (!reader.point(block, "at")) lists.broken.push(block);
    } else if (block.kind === "gear") collect(block, reader, frame, leftOut, lists);
    else if (surfaceKinds.has(block.kind)) add(block, reader, frame, leftOut, lists);
    else for (const copy of copies(block, reader, frame)) add(block, reader, copy, leftOut, lists);
  }
}

function add(block: Instance, reader: Reader, frame: Frame, leftOut: LeftOut, lists: Lists): void {
  if (!isBuilt(block.kind)) return;
  const path = pathIn(frame, block);
  const optional = reader.flag(block, "optional") === true;
  if (leftOut(path, optional)) return;
  lists.blocks.set(path, block);
  if (optional || block.kind === "battery") lists.removable.push(path);
  const parts = block.kind === "powerplant" ? [...block.children.values()].filter((part) => !leftOut(pathIn(frame, part), false)) : [];
  for (const part of parts) lists.blocks.set(pathIn(frame, part), part);
  // Loadings that change nothing of a part have the very same.
  const built = reader.remember([path, ...parts.map((part) => part.key)].join(" "), () => buildPart(block, parts, reader, frame));
  if (!built.whole) lists.broken.push(block);
  for (const name of partLists) for (const one of built[name] ?? []) (lists[name] as unknown[]).push(one);
}

const partLists = ["surfaces", "bodies", "members", "loads", "wheels", "receivers", "sources", "powerplants", "benches"] as const;

/** May a loading leave it out? Also groups of parts, and each part of a powerplant. */
export const isPart = (kind: string): boolean => isBuilt(kind) || ["place", "gear", "motor", "propeller", "fan", "esc"].includes(kind);
