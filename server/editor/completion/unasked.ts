import type { DimensionName } from "../../../grammar/units/dimension";
import { slotOf, type Place } from "./place";
import type { Cursor } from "./scope";

const numeric = new Set(["quantity", "stretch", "count"]);

/**
 * Should a list keep away that nobody asked for, which opens because a space, a bracket, a comma or `=` was typed? It takes the
 * next line end for a choice, so it may only open where something is missing that people look for in a list: not where
 * a number comes next, or where the line may be whole.
 */
export function keepsAway(trigger: string | undefined, { brackets }: Cursor, place: Place | undefined, wanted: readonly DimensionName[]): boolean {
  if (trigger === undefined || trigger === ".") return false;
  if (place?.type === "check" || place?.type === "loading" || place?.type === "origin") return false;
  if (place?.type !== "value") return true;
  const slot = slotOf(place.tokens);
  if (slot.type === "unit") return wanted.length === 0 || wanted[0] === "ratio";
  if (slot.type !== "operand") return true;
  const form = place.property?.form.form;
  const isNumber = form === undefined || numeric.has(form) || (form === "point" && brackets.length > 0);
  return isNumber && !place.figures;
}
