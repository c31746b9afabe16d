import { dimensions } from "../../../grammar/units/dimension";
import { chain, type Quantity } from "../../../grammar/units/quantity";

/** Of an angle, with its tolerance by the chain rule. */
export const sine = (a: Quantity): Quantity => chain(a, Math.sin(a.value), Math.cos(a.value), dimensions.ratio);
export const cosine = (a: Quantity): Quantity => chain(a, Math.cos(a.value), -Math.sin(a.value), dimensions.ratio);
export const tangent = (a: Quantity): Quantity => chain(a, Math.tan(a.value), 1 / Math.cos(a.value) ** 2, dimensions.ratio);
