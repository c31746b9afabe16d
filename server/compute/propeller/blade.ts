import type { Propeller } from "../../model/design/power";
import { bladeTypeOf, interpolate, radii } from "./blade-types";
import type { BladeSection } from "./section";

/** A ring of the disc and the piece of each blade in it. */
export interface BladeElement {
  /** m */
  readonly radius: number;
  readonly width: number;
  readonly chord: number;
  /** Of the chord to the disc, rad. */
  readonly angle: number;
}

export interface Blade {
  readonly count: number;
  readonly diameter: number;
  /** Where the root vortex is put, m. */
  readonly hubRadius: number;
  readonly section: BladeSection;
  readonly elements: readonly BladeElement[];
}

/** Enough that thrust and torque are within 0.3 % of those of ten times as many. */
const elementCount = 24;

/** Share of the innermost station's radius at which the root vortex leaves the hub. */
const hubShare = 0.75;

/**
 * The blades of a propeller cut into elements, finer at root and tip: by its own stations where it has two or more, else
 * by the means of its type. Inside the innermost station nothing carries.
 */
export function bladeOf(propeller: Propeller, count = elementCount): Blade {
  const known = cut.get(propeller);
  if (known?.elements.length === count) return known;
  const blade = cutBlade(propeller, count);
  cut.set(propeller, blade);
  return blade;
}

const cut = new WeakMap<Propeller, Blade>();

function cutBlade(propeller: Propeller, count: number): Blade {
  const type = bladeTypeOf(propeller);
  const ratio = propeller.pitch / propeller.diameter;
  const outline = ownOutline(propeller) ?? {
    radii,
    chords: type.chord,
    angles: radii.map((x, i) => Math.atan((type.pitch[i] * ratio) / (Math.PI * x)) + type.easing.rate * (ratio - type.easing.middle)),
  };
  const tip = propeller.diameter / 2;
  const root = outline.radii[0] * tip;
  const edge = (i: number) => root + ((tip - root) * (1 - Math.cos((Math.PI * i) / count))) / 2;
  const elements = Array.from({ length: count }, (_, i): BladeElement => {
    const radius = (edge(i) + edge(i + 1)) / 2;
    return {
      radius,
      width: edge(i + 1) - edge(i),
      chord: interpolate(outline.radii, outline.chords, radius / tip) * tip,
      angle: interpolate(outline.radii, outline.angles, radius / tip),
    };
  });
  return { count: propeller.blades, diameter: propeller.diameter, hubRadius: hubShare * root, section: type.section, elements };
}

interface Outline {
  readonly radii: readonly number[];
  readonly chords: readonly number[];
  readonly angles: readonly number[];
}

function ownOutline({ stations }: Propeller): Outline | undefined {
  const usable = [...(stations ?? [])]
    .filter(({ radius }) => radius > 0.02 && radius <= 1)
    .sort((a, b) => a.radius - b.radius)
    .filter(({ radius }, i, all) => i === 0 || radius > all[i - 1].radius);
  if (usable.length < 2) return undefined;
  return { radii: usable.map((s) => s.radius), chords: usable.map((s) => s.chord), angles: usable.map((s) => s.angle) };
}
