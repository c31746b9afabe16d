import type { Body, BodyStation, Surface, Vec3 } from "../../model/design/geometry";
import { bodySection } from "../planform/body-section";
import { sidesOf } from "../planform/sides";
import { stationBetween, type Piece } from "../planform/station";

/** How far over or under an end a chord may lie and still cover it: share of the chord. */
const touch = 0.1;

export function sectionArea({ shape }: Pick<Body, "shape">, { width, height }: Pick<BodyStation, "width" | "height">): number {
  return width * height * (shape === "box" ? 1 : Math.PI / 4);
}

/** What of a body's flat end stands free, m²: less the sections of bodies that go on from there, none inside a wing or tail. */
export function freeEnd(body: Body, end: BodyStation, bodies: readonly Body[], surfaces: readonly Surface[]): number {
  const at: Vec3 = [body.nose[0] + end.x, body.nose[1], body.nose[2] + end.z];
  if (surfaces.some((s) => sidesOf(s).sides.some(({ pieces }) => pieces.some((piece) => lies(at, piece))))) return 0;
  const taken = bodies.reduce((sum, other) => (other === body ? sum : sum + sectionThere(other, at)), 0);
  return Math.max(0, sectionArea(body, end) - taken);
}

function sectionThere(body: Body, [x, y, z]: Vec3): number {
  const section = bodySection(body, x);
  if (!section || Math.abs(y - body.nose[1]) > section.halfWidth || z > section.top || z < section.bottom) return 0;
  return sectionArea(body, { width: 2 * section.halfWidth, height: section.top - section.bottom });
}

function lies([x, y, z]: Vec3, piece: Piece): boolean {
  const [from, to] = [piece.inner.leadingEdge[1], piece.outer.leadingEdge[1]];
  const share = (y - from) / (to - from);
  if (!(share >= 0 && share <= 1)) return false;
  const { leadingEdge, chord } = stationBetween(piece, share);
  return x >= leadingEdge[0] && x <= leadingEdge[0] + chord && Math.abs(z - leadingEdge[2]) <= touch * chord;
}
