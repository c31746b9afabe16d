import type { Air } from "../atmosphere/atmosphere";

/** The stream a part stands in. */
export interface Flow {
  /** m/s */
  readonly speed: number;
  readonly air: Pick<Air, "density" | "viscosity">;
}

/** What one part adds. */
export interface DragPart {
  readonly path: string;
  /** Drag over dynamic pressure, m². */
  readonly area: number;
  /** How it was found and what was assumed, in words. */
  readonly how: string;
}

/** A part whose shape is known, in any stream. */
export type PartDrag = (flow: Flow) => DragPart;

export const reynoldsOf = ({ speed, air }: Flow, length: number): number => (air.density * Math.abs(speed) * length) / air.viscosity;
