import type { Body, Surface, Vec3, Wheel } from "../../model/design/geometry";
import { convexDistance } from "../convex/distance";
import { bodyPieces, hull, thinPanel, type Convex } from "../convex/shapes";
import { rodDragArea } from "./cylinder";
import { reynoldsOf, type PartDrag } from "./flow";

/**
 * An open wheel that turns, 0.28 of its diameter wide, on its frontal area (Marks' Handbook). Full-size handbooks give 0.25
 * for a wheel and tyre, which is for Reynolds numbers a model's does not reach.
 */
const wheel = { drag: 0.58, width: 0.28 };

/** A leg is a round wire this share of its length thick. Common practice, no source. */
const legThickness = 1 / 40;

/** All that a leg may end at. */
export function airframePieces(bodies: readonly Body[], surfaces: readonly Surface[]): Convex[] {
  return [...bodies.flatMap(bodyPieces), ...surfaces.flatMap(({ halves }) => halves.flatMap(({ panels }) => panels.map(thinPanel)))];
}

/** Drag of a wheel or skid with its leg, which goes straight from the axle, or the contact point, to the nearest of the pieces. */
export function wheelDrag({ path, kind, contact, diameter }: Wheel, airframe: readonly Convex[]): PartDrag {
  const rolls = kind === "wheel" && diameter !== undefined && diameter > 0;
  const foot: Vec3 = rolls ? [contact[0], contact[1], contact[2] + diameter / 2] : contact;
  const nearest = Math.min(...airframe.map((piece) => convexDistance(hull([foot]), piece)));
  const length = Number.isFinite(nearest) ? nearest : 0;
  const thickness = legThickness * length;
  const wheelArea = rolls ? wheel.drag * wheel.width * diameter ** 2 : 0;
  const how = [
    ...(rolls ? [`wheel ${wheel.drag} on its frontal area, taken as ${wheel.width} of its diameter wide (Marks' Handbook)`] : []),
    "leg to the nearest body or surface, taken as round and 1/40 of its length thick (no source)",
    ...(kind === "wheel" && !rolls ? ["the wheel is not counted: no diameter is written"] : []),
  ].join("; ");
  return (flow) => ({ path, area: wheelArea + rodDragArea(thickness, length, 1, reynoldsOf(flow, thickness)), how });
}
