import { stripAir, type AirAt } from "./air-at";
import type { AirBasis } from "./air-basis";
import type { AirState } from "./air-state";

/** Drag of the sections over dynamic pressure, m². */
export interface ProfileDrag {
  readonly area: number;
  /** By the path of each surface. */
  readonly surfaces: ReadonlyMap<string, number>;
  /** Did a limit of pushing down, or a drag there, rest on an estimate until a polar is worked out? */
  readonly provisional: boolean;
}

/** Each strip by its section's drag at its own lift and Reynolds number; what lies inside bodies or between roots has none. */
export function profileDrag(basis: AirBasis, air: AirAt, { liftCoefficients, pitch }: Pick<AirState, "liftCoefficients" | "pitch">): ProfileDrag {
  const surfaces = new Map<string, number>();
  let provisional = false;
  const add = (path: string, area: number) => surfaces.set(path, (surfaces.get(path) ?? 0) + area);
  basis.strips.forEach(({ path, weight, inside, chord, length }, i) => {
    if (weight === 0 || inside) return;
    const section = stripAir(basis, air, i, pitch);
    add(path, weight * section.drag(liftCoefficients[i]) * chord * length);
    provisional ||= section.provisional ?? false;
  });
  basis.plates.forEach(({ path, area }, i) => add(path, air.plates[i].drag(0) * area));
  return { area: [...surfaces.values()].reduce((sum, area) => sum + area, 0), surfaces, provisional };
}
