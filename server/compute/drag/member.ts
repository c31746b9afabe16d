import type { Member, Vec3 } from "../../model/design/geometry";
import { rodDragArea } from "./cylinder";
import { reynoldsOf, type PartDrag } from "./flow";
import { naturalTransition, plateFriction } from "./friction";
import { sectionForm } from "./form";

/** Thickness over chord of a faired strut, which nobody writes. Common practice, no source. */
const strutThickness = 0.25;

/** Share of its chord up to its thickest place: behind it the layer is turbulent. */
const thickest = 0.3;

/**
 * What a layer that leaves while laminar adds on the frontal area, and the Reynolds numbers of the chord between which it
 * fades (S. F. Hoerner, Fluid-Dynamic Drag, ch. 6, struts below their critical Reynolds number; from memory, low).
 */
const separated = { drag: 0.3, from: 5e4, to: 2e5 };

/** Drag of a strut or wire, both of its ends fastened: none of the relief of a free end. */
export function memberDrag({ path, chord, diameter, start, end }: Member): PartDrag {
  const { length, across } = layOf(start, end);
  if (diameter !== undefined && diameter > 0) {
    const how = "round, by Reynolds number and angle to the flow (Hoerner)";
    return (flow) => ({ path, area: rodDragArea(diameter, length, across, reynoldsOf(flow, diameter)), how });
  }
  if (chord !== undefined && chord > 0) {
    const how = `faired, taken as ${strutThickness * 100} % thick; friction, form, and separation at small Reynolds numbers (Hoerner)`;
    return (flow) => ({ path, area: chord * length * across * strutDrag(reynoldsOf(flow, chord)), how });
  }
  return () => ({ path, area: 0, how: "not counted: neither chord nor diameter is written" });
}

/** Drag coefficient of a faired strut on chord × length, by the Reynolds number of its chord. */
export function strutDrag(reynolds: number, thickness = strutThickness): number {
  const friction = plateFriction(reynolds, { transition: Math.min(naturalTransition, thickest * reynolds) });
  const share = Math.log(separated.to / Math.max(reynolds, 1)) / Math.log(separated.to / separated.from);
  return 2 * friction * sectionForm(thickness) + separated.drag * thickness * Math.min(1, Math.max(0, share));
}

/** Length, and sine of the angle to the x axis. */
function layOf(start: Vec3, end: Vec3): { readonly length: number; readonly across: number } {
  const [x, y, z] = [end[0] - start[0], end[1] - start[1], end[2] - start[2]];
  const length = Math.hypot(x, y, z);
  return { length, across: length > 0 ? Math.hypot(y, z) / length : 0 };
}
