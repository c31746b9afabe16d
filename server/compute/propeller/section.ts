export interface BladeSection {
  readonly liftSlope: number;
  readonly zeroLift: number;
  readonly zeroLiftShift: number;
  readonly liftMax: number;
  readonly liftMaxExponent: number;
  readonly sharpness: number;
  readonly dragMin: number;
  readonly dragExponent: number;
  readonly dragLift: number;
  readonly dragRise: number;
  readonly stallDrag: number;
  readonly delay?: number;
}
export const referenceReynolds = 50_000;
export interface SectionForces { readonly lift: number; readonly drag: number; }
export function sectionForces(section: BladeSection, angle: number, reynolds: number, chordRadius: number): SectionForces {
  const scale = Math.log(Math.min(Math.max(reynolds, 3000), 3e6) / referenceReynolds);
  const alpha = angle - section.zeroLift + section.zeroLiftShift * scale;
  const sine = Math.sin(alpha);
  const cosine = Math.cos(alpha);
  const linear = section.liftSlope * sine;
  const cap = section.liftMax * Math.exp(section.liftMaxExponent * scale);
  let held = linear / (1 + Math.abs(linear / cap) ** section.sharpness) ** (1 / section.sharpness);
  if (cosine > 0) held += Math.min(1, (section.delay ?? 0) * chordRadius * chordRadius) * cosine ** 4 * (linear - held);
  const excess = Math.abs(linear - held) / section.liftSlope;
  const rise = held - section.dragLift;
  const drag = section.dragMin * Math.exp(section.dragExponent * scale) + section.dragRise * rise * rise + section.stallDrag * excess * Math.abs(held);
  return { lift: held * cosine, drag };
}
