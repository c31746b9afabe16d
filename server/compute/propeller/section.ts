/** What differs between the sections of one type of blade and another's. */
export interface BladeSection {
  /** Per radian. */
  readonly liftSlope: number;
  /** Zero-lift angle at Re 50,000, rad. */
  readonly zeroLift: number;
  /** Least drag coefficient at Re 50,000. */
  readonly dragMin: number;
  /** Times the square of the lift coefficient's distance from `designLift`: what drag grows by. */
  readonly dragRise: number;
}

/** A section at one place of a blade and one Reynolds number. */
export interface LocalSection {
  readonly liftSlope: number;
  readonly zeroLift: number;
  readonly dragMin: number;
  readonly dragRise: number;
  readonly liftMax: number;
  /** Share of the lift lost in the stall that spinning gives back. */
  readonly regained: number;
}

export interface SectionForces {
  readonly lift: number;
  readonly drag: number;
}

const referenceReynolds = 50_000;
const liftMax = 1.35;
/** How sharply the lift curve bends at the stall. */
const sharpness = 5;
const stallDrag = 1.5;
const designLift = 0.5;
/** Radians that the zero-lift angle falls, and the power by which greatest lift grows, for each unit of ln Re. */
const zeroLiftFall = Math.PI / 180;
const liftMaxExponent = 0.15;
const dragExponent = -0.5;
/** Times `referenceReynolds`: towards there all three fade out, as they do in the sections; the propellers end below it. */
const steady = 4;
const delay = 3;
/** Reynolds number below which nothing changes any more. */
const creeping = 1e3;

/**
 * A blade section at a chord Reynolds number and a chord over local radius. How the zero-lift angle falls between Re
 * 60,000 and 200,000 and drag with it is about what tunnel tests of wing sections show (M. S. Selig et al., Summary of
 * Low-Speed Airfoil Data, 1995 on); for the other constants see `blade-types.ts`. Spinning delays the stall: near the hub
 * 3 (c/r)² of the lift lost is given back (H. Snel, R. Houwink, J. Bosschers, ECN-C--93-052, 1994; from memory).
 * Compressibility is not modelled.
 */
export function sectionAt(section: BladeSection, reynolds: number, chordByRadius: number): LocalSection {
  const share = Math.hypot(reynolds, creeping) / referenceReynolds;
  const low = -Math.log(share ** -2 + steady ** -2) / 2;
  return {
    liftSlope: section.liftSlope,
    zeroLift: section.zeroLift - zeroLiftFall * low,
    dragMin: section.dragMin * Math.exp(dragExponent * low),
    dragRise: section.dragRise,
    liftMax: liftMax * Math.exp(liftMaxExponent * low),
    regained: Math.min(1, delay * chordByRadius ** 2),
  };
}

/**
 * Lift and drag coefficients at any angle of attack (rad). Drag grows with the square of the lift off that of the design, as
 * in tunnel tests of thin sections (same Summary). The lift line bends over into a plateau that dies out square to
 * the flow; the lift that the stall takes comes back as drag, up to a flat plate's 1.3 or so square to the flow (S. F.
 * Hoerner, Fluid-Dynamic Drag, 1965; from memory).
 */
export function sectionForces(section: LocalSection, angle: number): SectionForces {
  const alpha = angle - section.zeroLift;
  const cosine = Math.cos(alpha);
  const line = section.liftSlope * Math.sin(alpha);
  const bent = line / (1 + Math.abs(line / section.liftMax) ** sharpness) ** (1 / sharpness);
  let held = bent;
  if (cosine > 0) held += section.regained * cosine ** 4 * (line - bent);
  const lost = (Math.abs(line - held) / section.liftSlope) * Math.abs(held);
  return { lift: held * cosine, drag: section.dragMin + section.dragRise * (bent - designLift) ** 2 + stallDrag * lost };
}
