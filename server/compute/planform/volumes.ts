import type { Body, Surface } from "../../model/design/geometry";
import { measure } from "./measure";
import type { ReferenceGeometry } from "./reference-geometry";
import { sidesOf } from "./sides";
import { surfaceGeometry } from "./surface-geometry";

/** Panels of wings and tails nearer the horizontal than this are no fins: common practice, no source. */
const leastUpright = Math.sin((15 * Math.PI) / 180) ** 2;

/** Σ S cos²Γ · l / (S c̄) of the tailplanes behind the wing, quarter mean chord to quarter mean chord; undefined without one. */
export function tailVolume(surfaces: readonly Surface[], bodies: readonly Body[], reference: ReferenceGeometry): number | undefined {
  return pitchVolume(surfaces, bodies, reference, "tailplane", 1);
}

/** The same of the canards ahead of the wing, arm forward. */
export function canardVolume(surfaces: readonly Surface[], bodies: readonly Body[], reference: ReferenceGeometry): number | undefined {
  return pitchVolume(surfaces, bodies, reference, "canard", -1);
}

function pitchVolume(
  surfaces: readonly Surface[], bodies: readonly Body[], reference: ReferenceGeometry, kind: Surface["kind"], direction: 1 | -1,
): number | undefined {
  const volumes = surfaces.filter((surface) => surface.kind === kind).flatMap((surface) => {
    const geometry = surfaceGeometry(surface, surfaces, bodies);
    const arm = geometry ? direction * (geometry.quarterPoint[0] - wingQuarter(reference)) : 0;
    return geometry && arm > 0 ? [geometry.effectiveAreas.pitch * arm] : [];
  });
  return volumes.length > 0 ? sum(volumes) / (reference.area * reference.meanChord) : undefined;
}

/**
 * Σ S sin²Γ · l / (S b) of fins, winglets, V-tails and any other panel over 15° from the horizontal, arms aft positive,
 * quarter mean chord to quarter mean chord; undefined without any.
 */
export function finVolume(surfaces: readonly Surface[], reference: ReferenceGeometry): number | undefined {
  const volumes = surfaces.flatMap((surface) =>
    sidesOf(surface).sides.flatMap(({ pieces }) => pieces).flatMap((piece) => {
      const { area, upright, quarter } = measure([piece], "along");
      const counts = surface.kind === "fin" ? upright > 0 : upright >= leastUpright * area;
      return counts && area > 0 ? [upright * (quarter[0] / area - wingQuarter(reference))] : [];
    }));
  return volumes.length > 0 ? sum(volumes) / (reference.area * reference.span) : undefined;
}

const wingQuarter = ({ meanChord, meanChordX }: ReferenceGeometry): number => meanChordX + meanChord / 4;

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
