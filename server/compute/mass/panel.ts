import type { Half, Panel, Surface, Vec3 } from "../../model/design/geometry";
import { noMoments, type Moments } from "./moments";
import type { SectionSlices } from "./section";
import { addSlice, enlargedArea, enlargedOutline, gauss, mix, mixSlices, mixVec, type Slice } from "./slice";

/** One panel of one half, with the side its upper face is found by. */
export interface PlacedPanel {
  readonly panel: Panel;
  readonly side: Half["side"];
}

export function placedPanels(surface: Pick<Surface, "halves">): PlacedPanel[] {
  return surface.halves.flatMap(({ side, panels }) => panels.map((panel) => ({ panel, side })));
}

/** Length of a panel across its chords, as built (dihedral does not shorten it), m. */
export function panelSpan({ inner, outer }: Pick<Panel, "inner" | "outer">): number {
  return Math.hypot(outer.leadingEdge[1] - inner.leadingEdge[1], outer.leadingEdge[2] - inner.leadingEdge[2]);
}

/** Area of a panel in its own plane, m². */
export function panelArea(panel: Pick<Panel, "inner" | "outer">): number {
  return (panelSpan(panel) * (panel.inner.chord + panel.outer.chord)) / 2;
}

/**
 * Both faces of a panel at 1 kg/m²: `mass` is the wetted area. The outline goes evenly from the inner section to the
 * outer; the slope of the faces along the span is left out, as is the face of the tip.
 */
export function panelSkin(placed: PlacedPanel, slices: SectionSlices): Moments {
  return along(placed, slices, (s) => s.outline, enlargedOutline);
}

/** What a panel encloses, at 1 kg/m³: `mass` is the volume. */
export function panelVolume(placed: PlacedPanel, slices: SectionSlices): Moments {
  return along(placed, slices, (s) => s.area, enlargedArea);
}

function along(
  { panel, side }: PlacedPanel,
  slices: SectionSlices,
  pick: (section: { readonly outline: Slice; readonly area: Slice }) => Slice,
  enlarge: (slice: Slice, chord: number) => Slice,
): Moments {
  const sum = noMoments();
  const span = panelSpan(panel);
  if (span === 0) return sum;
  const { inner, outer } = panel;
  const a = pick(slices(inner.section.shape));
  const b = pick(slices(outer.section.shape));
  const up = upward(panel, side, span);
  for (const [t, weight] of gauss) {
    const slice = enlarge(mixSlices(a, b, t), mix(inner.chord, outer.chord, t));
    const twist = mix(inner.twist, outer.twist, t);
    const s = Math.sin(twist);
    const c = Math.cos(twist);
    const chordwise: Vec3 = [c, -s * up[1], -s * up[2]];
    const thickness: Vec3 = [s, c * up[1], c * up[2]];
    addSlice(sum, weight * span, slice, mixVec(inner.leadingEdge, outer.leadingEdge, t), chordwise, thickness);
  }
  return sum;
}

/** Unit vector out of the upper face, across the chord and the span. One that stands on edge has its upper face inward. */
function upward({ inner, outer }: Panel, side: Half["side"], span: number): Vec3 {
  const dy = (outer.leadingEdge[1] - inner.leadingEdge[1]) / span;
  const dz = (outer.leadingEdge[2] - inner.leadingEdge[2]) / span;
  const right: Vec3 = [0, -dz, dy];
  const left: Vec3 = [0, dz, -dy];
  if (side !== "only") return side === "right" ? right : left;
  if (Math.abs(dy) > 1e-9) return dy > 0 ? right : left;
  return -dz * inner.leadingEdge[1] <= 0 ? right : left;
}
