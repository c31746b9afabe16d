import type { Skin } from "../../model/design/geometry";

export interface SkinMass {
  /** The walls. */
  readonly walls: number;
  /** Ribs or bulkheads, and infill. */
  readonly fill: number;
}

/** Does the skin say enough to weigh something? */
export function skinWeighs(skin: Skin | undefined): skin is Skin {
  if (!skin) return false;
  if (skin.arealDensity !== undefined) return true;
  return skin.density !== undefined && (skin.wall !== undefined || (skin.infill ?? 0) > 0);
}

/**
 * Mass in kg of a shell of `area` m² around `volume` m³. Walls are as thick as `wall` and at most fill the volume.
 * Ribs are walls across it, one every `ribSpacing`, counted as spread evenly; infill takes its share of what the walls
 * leave. A material by area weighs that on each face and rib. End ribs, seams and overlaps are not modelled.
 */
export function skinMass(skin: Skin, area: number, volume: number): SkinMass {
  const ribs = skin.ribSpacing !== undefined && skin.ribSpacing > 0 ? 1 / skin.ribSpacing : 0;
  if (skin.arealDensity !== undefined) {
    const infill = (skin.infill ?? 0) * (skin.density ?? 0);
    return { walls: area * skin.arealDensity, fill: volume * (ribs * skin.arealDensity + infill) };
  }
  const density = skin.density ?? 0;
  const wall = skin.wall ?? 0;
  const wallVolume = Math.min(area * wall, volume);
  const share = Math.min(1, ribs * wall + (skin.infill ?? 0));
  return { walls: density * wallVolume, fill: density * (volume - wallVolume) * share };
}
