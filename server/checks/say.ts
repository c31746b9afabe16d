import type { Quantity } from "../../grammar/units/quantity";
import { displayBanded, type UnitSystem } from "../../grammar/units/display";

export type { UnitSystem } from "../../grammar/units/display";

/** A quantity as a person reads it, with its band: `312 mm ± 4 mm`. */
export type Say = (quantity: Quantity, percent?: boolean) => string;

export const sayIn = (system: UnitSystem): Say => (quantity, percent) => displayBanded(quantity, system, percent);
