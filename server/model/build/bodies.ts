import { metres, multiply, plain, type Quantity } from "../../../grammar/units/quantity";
import type { Body, BodyStation, Member } from "../design/geometry";
import type { Instance } from "../resolve/instance";
import { pathIn, placed, type Frame } from "./frame";
import type { Reader } from "./reader";
import { skinOf } from "./skin";

export const bodyKinds = new Set<string>(["fuselage", "body", "boom"]);

/**
 * Outlines of a body of which only length, width and height are known: share of the length, share of the width and
 * height. Common practice, no source.
 */
const outlines: Readonly<Record<string, readonly (readonly [number, number])[]>> = {
  fuselage: [[0, 0.4], [0.05, 0.7], [0.15, 0.95], [0.25, 1], [0.5, 1], [0.7, 0.75], [0.85, 0.5], [1, 0.25]],
  body: [[0, 0], [0.03, 0.4], [0.1, 0.7], [0.2, 0.9], [0.35, 1], [0.55, 0.97], [0.75, 0.75], [0.9, 0.45], [1, 0.1]],
  boom: [[0, 1], [1, 1]],
};

/** The length of a body: as written, or where its last station lies. */
export function bodyLength(block: Instance, reader: Reader): Quantity | undefined {
  const length = reader.quantity(block, "length");
  if (length) return length;
  const ends = stationBlocks(block).map((s) => reader.quantity(s, "x")).filter((x) => x !== undefined);
  return ends.sort((a, b) => b.value - a.value)[0];
}

const stationBlocks = (block: Instance): Instance[] => [...block.children.values()].filter((child) => child.kind === "station");

export function buildBody(block: Instance, reader: Reader, frame: Frame): Body<Quantity> | undefined {
  const nose = reader.point(block, "at");
  const stations = stationsOf(block, reader);
  if (!nose || !stations) return undefined;
  const shape = reader.raw(block, "shape");
  return {
    path: pathIn(frame, block),
    kind: block.kind as Body["kind"],
    nose: placed(frame, nose),
    shape: shape === "round" || shape === "box" ? shape : "oval",
    stations,
    skin: skinOf(block, reader),
    weight: reader.quantity(block, "weight"),
    balance: reader.quantity(block, "balance"),
  };
}

function stationsOf(block: Instance, reader: Reader): readonly BodyStation<Quantity>[] | undefined {
  const blocks = stationBlocks(block);
  if (blocks.length >= 2) {
    const stations = blocks.map((s) => stationOf(s, reader));
    if (!stations.every((s) => s !== undefined)) return undefined;
    return [...stations].sort((a, b) => a.x.value - b.x.value);
  }
  const length = reader.quantity(block, "length");
  const width = reader.quantity(block, "width");
  const height = reader.quantity(block, "height") ?? width;
  if (!length || !width || !height) return undefined;
  return outlines[block.kind].map(([x, share]) => ({
    x: multiply(plain(x), length), width: multiply(plain(share), width), height: multiply(plain(share), height), z: metres(0),
  }));
}

function stationOf(block: Instance, reader: Reader): BodyStation<Quantity> | undefined {
  const x = reader.quantity(block, "x");
  const width = reader.quantity(block, "width");
  const height = reader.quantity(block, "height") ?? width;
  return x && width && height && { x, width, height, z: reader.quantity(block, "z") ?? metres(0) };
}

export function buildMember(block: Instance, reader: Reader, frame: Frame): Member<Quantity> | undefined {
  const start = reader.point(block, "start");
  const end = reader.point(block, "end");
  if (!start || !end) return undefined;
  return {
    path: pathIn(frame, block),
    kind: block.kind as Member["kind"],
    start: placed(frame, start),
    end: placed(frame, end),
    chord: reader.quantity(block, "chord"),
    diameter: reader.quantity(block, "diameter"),
    weight: reader.quantity(block, "weight"),
  };
}
