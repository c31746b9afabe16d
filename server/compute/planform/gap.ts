import type { Body, Station, Surface } from "../../model/design/geometry";
import { bodySection } from "./body-section";
import { sidesOf } from "./sides";
import { stationAt, type Piece } from "./station";

/** The gap between the two roots of a mirrored surface. */
export interface Gap {
  readonly path: string;
  /** y of the plane half way. */
  readonly plane: number;
  readonly right: Station;
  readonly left: Station;
  /** Does it carry lift and count as area? */
  readonly carried: boolean;
}

/** How far a body may fall short of a root, and a root lie over or under a body, and still touch: share of the root chord. */
const touch = 0.1;

/**
 * The gap of a surface whose roots stand apart, undefined where they meet. Unless `carryThrough` decides, it counts as
 * surface only if a fuselage (for tails also a boom) crosses the plane there and reaches both roots, and no other surface
 * of the kind starts on that plane at that height (within half the root chord) and station.
 */
export function gapOf(surface: Surface, surfaces: readonly Surface[], bodies: readonly Body[]): Gap | undefined {
  const { plane, sides } = sidesOf(surface);
  const right = sides.find(({ side }) => side === "right")?.pieces[0]?.inner;
  const left = sides.find(({ side }) => side === "left")?.pieces[0]?.inner;
  if (plane === undefined || !right || !left || !(right.leadingEdge[1] > left.leadingEdge[1])) return undefined;
  const gap = { path: surface.path, plane, right, left };
  const carried = surface.carryThrough !== "auto"
    ? surface.carryThrough
    : surface.kind !== "fin" && bodies.some((body) => carries(surface, body) && fills(body, gap)) &&
      !surfaces.some((other) => other !== surface && other.kind === surface.kind && startsInside(other, gap));
  return { ...gap, carried };
}

/** The two pieces that close a gap, from its plane out to each root. */
export function fillOf({ plane, right, left }: Gap): { readonly right: Piece; readonly left: Piece } {
  return { right: { inner: stationAt(right, plane), outer: right }, left: { inner: stationAt(left, plane), outer: left } };
}

function carries(surface: Surface, body: Body): boolean {
  return body.kind === "fuselage" || (body.kind === "boom" && surface.kind !== "wing");
}

function fills(body: Body, { plane, right, left }: Omit<Gap, "carried">): boolean {
  const [x, , z] = right.leadingEdge;
  return [0, 0.25, 0.5, 0.75, 1].some((share) => {
    const at = bodySection(body, x + share * right.chord);
    if (!at) return false;
    const slack = touch * right.chord;
    const y = body.nose[1];
    return Math.abs(y - plane) <= at.halfWidth + slack &&
      right.leadingEdge[1] <= y + at.halfWidth + slack && left.leadingEdge[1] >= y - at.halfWidth - slack &&
      z >= at.bottom - slack && z <= at.top + slack;
  });
}

function startsInside(other: Surface, { plane, right }: Omit<Gap, "carried">): boolean {
  const [x, , z] = right.leadingEdge;
  const stations = sidesOf(other).sides.flatMap(({ pieces }) => pieces.flatMap(({ inner, outer }) => [inner, outer]));
  const overlap = stations.some((s) => s.leadingEdge[0] < x + right.chord) && stations.some((s) => s.leadingEdge[0] + s.chord > x);
  return overlap && sidesOf(other).sides.some(({ pieces }) => pieces.some(({ inner, outer }) => {
    const [from, to] = [inner.leadingEdge[1] - plane, outer.leadingEdge[1] - plane];
    const near = Math.min(Math.abs(from), Math.abs(to)) <= 0.02 * right.chord;
    const height = Math.abs(from) <= Math.abs(to) ? inner.leadingEdge[2] : outer.leadingEdge[2];
    return (near || from * to < 0) && Math.abs(height - z) < right.chord / 2;
  }));
}
