import type { MassFigures } from "../compute/mass/figures";

/** What the figures rest on and checks look at besides. */
export interface Facts {
  mass?: MassFigures;
}
