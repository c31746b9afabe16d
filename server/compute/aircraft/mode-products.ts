import { wakeFlows, type WakeStrip } from "../lattice/induced-drag";
import type { AirMode } from "./air-basis";

/** What second-order loads need, so that a state costs a few products: m² and m³ over dynamic pressure, by pairs of modes. */
export interface ModeProducts {
  /** Induced drag. */
  readonly drag: readonly (readonly number[])[];
  /** The same times its height z. */
  readonly dragHeight: readonly (readonly number[])[];
  /** Lift times its height z, by mode. */
  readonly liftHeight: readonly number[];
  /** Of each mode, in the wake far downstream: what products with another mode need. */
  readonly flows: readonly Float64Array[];
}

/** `known`: flows of the last modes, where these are the same as before. */
export function products(strips: readonly (WakeStrip & { readonly z: number })[], modes: readonly AirMode[], known: readonly Float64Array[] = []): ModeProducts {
  const flows = [...wakeFlows(strips, modes.slice(0, modes.length - known.length).map(({ circulation }) => circulation)), ...known];
  const pairs = (of: (i: number) => number) => modes.map((a) => flows.map((flow) => a.circulation.reduce((sum, g, i) => sum + g * flow[i] * of(i), 0)));
  return {
    flows, drag: pairs(() => 1),
    dragHeight: pairs((i) => strips[i].z),
    liftHeight: modes.map(({ circulation }) => circulation.reduce((sum, g, i) => sum + 2 * g * (strips[i].ends[1][0] - strips[i].ends[0][0]) * strips[i].z, 0)),
  };
}
