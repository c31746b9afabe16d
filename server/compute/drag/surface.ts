import type { Panel, SectionShape, Surface } from "../../model/design/geometry";
import { panelArea } from "../mass/panel";
import { sectionOutline } from "../mass/section-outline";
import { reynoldsOf, type Flow, type PartDrag } from "./flow";
import { sectionForm } from "./form";
import { turbulentFriction } from "./friction";
import { isPrinted, printedRoughness } from "./printed";

/** What of a panel friction works on. */
interface Faces {
  readonly chord: number;
  /** Both faces × form factor, m². */
  readonly area: number;
}

export interface SurfaceDrag {
  /** Friction of both faces with its form, turbulent from the front: what gaps and corners are counted on. Drag area, m². */
  readonly friction: (flow: Flow) => number;
  /** What the layer lines of a printed surface add to the section drag of a smooth one; absent for another. */
  readonly layerLines?: PartDrag;
}

export function surfaceDrag({ path, halves, skin }: Surface): SurfaceDrag {
  const faces = halves.flatMap(({ panels }) => panels.map(facesOf));
  const over = (coefficient: (chord: number) => number) => faces.reduce((sum, { chord, area }) => sum + area * coefficient(chord), 0);
  const friction = (flow: Flow) => over((chord) => turbulentFriction(reynoldsOf(flow, chord)));
  if (!isPrinted(skin)) return { friction };
  const how = "layer lines of a printed skin, taken as 0.2 mm high and across the flow, the worst: what they add to the section drag of smooth skin";
  return { friction, layerLines: (flow) => ({ path, area: over((chord) => printedRoughness(flow, chord).added), how }) };
}

function facesOf(panel: Panel): Faces {
  const thickness = (thicknessOf(panel.inner.section.shape) + thicknessOf(panel.outer.section.shape)) / 2;
  return { chord: (panel.inner.chord + panel.outer.chord) / 2, area: 2 * panelArea(panel) * sectionForm(thickness) };
}

/** Thickness over chord. */
function thicknessOf(shape: SectionShape): number {
  if (shape.type === "flat") return shape.thickness;
  const ys = sectionOutline(shape).map(([, y]) => y);
  return ys.length > 0 ? Math.max(...ys) - Math.min(...ys) : 0;
}
