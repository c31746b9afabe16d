import type { Body, Surface } from "../../model/design/geometry";
import type { StripLoad } from "../lattice/strip-loads";
import { bodySection } from "../planform/body-section";
import { sidesOf } from "../planform/sides";
import { stationBetween } from "../planform/station";
import { coverage } from "./deflection";
import { Lookups, sectionsAlong, type Lookup, type StripLookup } from "./strip-sections";

/** A flap on a strip: where it stands in neutral (reflex and flaps), and what the whole way of the stick adds, rad, down positive. */
export interface StripFlap {
  readonly chordShare: number;
  readonly rest: number;
  readonly noseUp: number;
  readonly noseDown: number;
}

/** A strip of a surface as the air of sections sees it. */
export interface AirStrip extends StripLoad {
  readonly lookup: StripLookup;
  readonly flap?: StripFlap;
  /** Does it lie inside a body or between the roots, where no air of its own passes? */
  readonly inside: boolean;
  /** Is it part of the last of a half's tip, where the flow may part without anyone feeling it? */
  readonly outermost: boolean;
  /** Where a flap ends near by: the strips within reach and their shares. */
  readonly faired?: readonly (readonly [strip: number, share: number])[];
  /** How many strips it stands for: 2 with a twin on the other side, 0 for that twin. */
  readonly weight: number;
}

/** A piece of a surface in the plane of symmetry: it drags and lifts nothing. */
export interface AirPlate {
  readonly path: string;
  readonly lookup: StripLookup;
  readonly area: number;
}

/** A control as strips see it. */
export interface StripControl extends Omit<StripFlap, "chordShare"> {
  readonly surface: string;
  readonly control: Parameters<typeof coverage>[0];
}

export interface AirStrips {
  readonly strips: readonly AirStrip[];
  readonly plates: readonly AirPlate[];
  readonly lookups: readonly Lookup[];
}

/** Share of a half's area, from the tip in, of which the stall is not counted. Common practice, no source. */
const tipArea = 0.02;

/** A flap counts where it covers this much of a strip. */
const counted = 0.5;

/** Slices a panel in the plane of symmetry is cut into, each with a chord of its own. */
const slices = 4;

export interface StripSources {
  readonly strips: readonly StripLoad[];
  readonly symmetric: boolean;
  readonly surfaces: readonly Surface[];
  readonly bodies: readonly Body[];
  readonly controls: readonly StripControl[];
  /** Paths of surfaces in the plane of symmetry. */
  readonly leftOut: readonly string[];
}

/** Strips of a lattice with their sections, flaps and surroundings; and what stands in the plane of symmetry. */
export function airStrips({ strips, symmetric, surfaces, bodies, controls, leftOut }: StripSources): AirStrips {
  const lookups = new Lookups();
  const byPath = new Map(surfaces.map((surface) => [surface.path, surface]));
  const tips = outermost(strips);
  const made = strips.flatMap((strip, i): Omit<AirStrip, "weight">[] => {
    const half = byPath.get(strip.path)?.halves.find(({ side }) => side === strip.side);
    const middle = (strip.along[0] + strip.along[1]) / 2;
    const there = half && sectionsAlong(half, middle);
    if (!there) return [];
    const flap = flapOf(strip, controls);
    return [{
      ...strip, lookup: lookups.of(there, strip.chord), ...(flap ? { flap } : {}),
      inside: middle < 0 || bodies.some((body) => within(body, strip)), outermost: tips.has(i),
    }];
  });
  if (made.length !== strips.length) throw new RangeError("a strip of a surface that is not there");
  const twins = symmetric && made.every((one, i) => i % 2 === 0 || alike(made[i - 1], one));
  return {
    strips: made.map((one, i) => ({ ...one, ...fairing(made, i), weight: twins ? (i % 2 === 0 ? 2 : 0) : 1 })),
    plates: leftOut.flatMap((path) => platesOf(byPath.get(path), lookups)),
    lookups: lookups.list,
  };
}

/**
 * How far beyond its end a flap still raises the limit of lift, in chords: what it does to the pressure does not end where it does.
 * Common practice, no source.
 */
const fairedOver = 0.5;

/** The strips of the same surface within reach, if some have a flap and some none. */
function fairing(strips: readonly Omit<AirStrip, "weight">[], i: number): Pick<AirStrip, "faired"> {
  const own = strips[i];
  const near = strips.flatMap((other, j) =>
    (other.path === own.path && Math.hypot(other.y - own.y, other.z - own.z) <= fairedOver * own.chord ? [[j, other.length] as const] : []));
  if (new Set(near.map(([j]) => strips[j].flap !== undefined)).size < 2) return {};
  const whole = near.reduce((sum, [, length]) => sum + length, 0);
  return { faired: near.map(([j, length]) => [j, length / whole]) };
}

function outermost(strips: readonly StripLoad[]): Set<number> {
  const halves = new Map<string, number[]>();
  strips.forEach(({ path, side }, i) => {
    const name = `${path} ${side}`;
    halves.set(name, [...(halves.get(name) ?? []), i]);
  });
  const found = new Set<number>();
  for (const half of halves.values()) {
    const area = (i: number) => strips[i].chord * strips[i].length;
    const whole = half.reduce((sum, i) => sum + area(i), 0);
    let sum = 0;
    for (const i of half.sort((a, b) => strips[b].along[0] + strips[b].along[1] - strips[a].along[0] - strips[a].along[1])) {
      sum += area(i);
      if (sum > tipArea * whole) break;
      found.add(i);
    }
  }
  return found;
}

/** The flap that covers most of a strip. What turns whole is no flap. */
function flapOf({ path, along }: StripLoad, controls: readonly StripControl[]): StripFlap | undefined {
  let most: StripFlap | undefined;
  let share = counted;
  for (const { surface, control, rest, noseUp, noseDown } of controls) {
    if (surface !== path || control.allMoving) continue;
    const covered = coverage(control, along);
    if (covered.share < share) continue;
    share = covered.share;
    most = { chordShare: covered.chord, rest, noseUp, noseDown };
  }
  return most;
}

function within(body: Body, { x, y, z, chord }: StripLoad): boolean {
  const section = bodySection(body, x + chord / 4);
  return section !== undefined && Math.abs(y - body.nose[1]) < section.halfWidth && z > section.bottom && z < section.top;
}

function alike(a: Omit<AirStrip, "weight">, b: Omit<AirStrip, "weight">): boolean {
  return a.path === b.path && a.inside === b.inside && a.outermost === b.outermost &&
    a.lookup.every((part, i) => Math.abs(part - b.lookup[i]) < 1e-6) &&
    a.flap?.chordShare === b.flap?.chordShare && a.flap?.rest === b.flap?.rest;
}

function platesOf(surface: Surface | undefined, lookups: Lookups): AirPlate[] {
  if (!surface) return [];
  return sidesOf(surface).sides.flatMap(({ pieces }) => pieces.flatMap((piece) => Array.from({ length: slices }, (_, i): AirPlate => {
    const share = (i + 0.5) / slices;
    const { chord } = stationBetween(piece, share);
    const [a, b] = [piece.inner.leadingEdge, piece.outer.leadingEdge];
    const area = (chord * Math.hypot(b[1] - a[1], b[2] - a[2])) / slices;
    return { path: surface.path, lookup: lookups.of({ inner: piece.inner.section, outer: piece.outer.section, share }, chord), area };
  })));
}
