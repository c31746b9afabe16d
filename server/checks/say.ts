import { display, type Style, type System } from "../../grammar/units/display";
import type { Quantity } from "../../grammar/units/quantity";

export type { System } from "../../grammar/units/display";

/** A quantity as a person reads it, with its band: `312 mm ± 4 mm`. `style` decides where the dimension leaves it open. */
export type Say = (quantity: Quantity, style?: Style) => string;

export const sayIn = (system: System): Say => (quantity, style) => display(quantity, system, style).text;
