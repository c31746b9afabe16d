import type { Body, Surface } from "../../model/design/geometry";
import { bodySection } from "../planform/body-section";
import { fillOf, gapOf } from "../planform/gap";
import { sidesOf } from "../planform/sides";
import { stationBetween, type Piece } from "../planform/station";
import type { Covered } from "./body-moment";

/** How far over or under a body a chord may lie and still cross it: share of the chord. */
const touch = 0.1;

/** The chords of the surfaces that cross a body in the plane of its axis. */
export function coveredBy(body: Body, surfaces: readonly Surface[], bodies: readonly Body[]): Covered[] {
  return surfaces.flatMap((surface) => {
    const gap = gapOf(surface, surfaces, bodies);
    const fills = gap?.carried ? Object.values(fillOf(gap)) : [];
    return [...fills, ...sidesOf(surface).sides.flatMap(({ pieces }) => pieces)].flatMap((piece) => crossing(body, piece) ?? []);
  });
}

function crossing(body: Body, piece: Piece): [Covered] | undefined {
  const [from, to] = [piece.inner.leadingEdge[1], piece.outer.leadingEdge[1]];
  if (from === to) return undefined;
  const share = (body.nose[1] - from) / (to - from);
  if (!(share >= 0 && share <= 1)) return undefined;
  const { leadingEdge: [x, , z], chord } = stationBetween(piece, share);
  const meets = [0.1, 0.5, 0.9].some((part) => {
    const section = bodySection(body, x + part * chord);
    return section && z >= section.bottom - touch * chord && z <= section.top + touch * chord;
  });
  return meets ? [[x, x + chord]] : undefined;
}
