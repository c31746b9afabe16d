import { dimensions } from "../../../grammar/units/dimension";
import { add, divide, metres, multiply, negate, plain, quantity, subtract, type Quantity } from "../../../grammar/units/quantity";
import type { Panel, Section, Station, Vec3 } from "../design/geometry";
import type { World } from "../evaluate/site";
import { cosine, sine, tangent } from "../evaluate/trigonometry";
import type { Instance } from "../resolve/instance";
import type { Reader } from "./reader";
import { plateSection, sectionsOf } from "./section";

/** One side of a surface as written, in axes from the leading edge at its root, root to tip. */
export interface WrittenHalf {
  readonly panels: readonly (Panel<Quantity> & { readonly block: Instance; readonly span: Quantity })[];
  /** Along the panels as built. */
  readonly length: Quantity;
}

/** What a panel hands on to the next: all that the tip before gives. */
interface Tip {
  readonly chord?: Quantity;
  readonly twist: Quantity;
  readonly dihedral: Quantity;
  readonly section: Section<Quantity>;
}

const angle = (value: number) => quantity(value, dimensions.angle);

export const panelsOf = (surface: Instance): Instance[] => [...surface.children.values()].filter((child) => child.kind === "panel");

const known = new WeakMap<World, Map<Instance, WrittenHalf | undefined>>();

/** One side, in Quantity arithmetic so that tolerances pass. Undefined without panels, or when one is broken. Remembered. */
export function writtenHalf(surface: Instance, reader: Reader): WrittenHalf | undefined {
  let halves = known.get(reader.world);
  if (!halves) known.set(reader.world, (halves = new Map()));
  if (!halves.has(surface)) halves.set(surface, workOut(surface, reader));
  return halves.get(surface);
}

const none: ReadonlySet<Instance> = new Set();

/** Up to the panel `last`, if one is named. `taking`: panels whose originals are being worked out. */
function workOut(surface: Instance, reader: Reader, last?: Instance, taking = none): WrittenHalf | undefined {
  const incidence = incidenceOf(surface, reader);
  let tip: Tip = {
    twist: angle(0), dihedral: raisedBy(surface, reader), section: sectionsOf(surface, reader)?.[0] ?? plateSection,
  };
  let edge: Vec3<Quantity> = [metres(0), metres(0), metres(0)];
  let length = metres(0);
  const panels: WrittenHalf["panels"][number][] = [];
  for (const block of panelsOf(surface)) {
    const before = brought(block, surface, reader, tip, taking);
    const span = reader.quantity(block, "span");
    const chords = reader.taper(block, "chord") ?? both(before.chord);
    if (!span || !chords) return undefined;
    const twists = twistOf(block, reader, before.twist);
    const dihedral = reader.own(block, "dihedral") ?? before.dihedral;
    const sections = sectionsOf(block, reader) ?? ([before.section, before.section] as const);
    const outerEdge = acrossPanel(edge, span, chords, dihedral, block, surface, reader);
    const station = (leadingEdge: Vec3<Quantity>, i: 0 | 1): Station<Quantity> =>
      ({ leadingEdge, chord: chords[i], twist: add(incidence, twists[i]), section: sections[i] });
    panels.push({ name: block.key, block, span, inner: station(edge, 0), outer: station(outerEdge, 1), weight: reader.quantity(block, "weight") });
    tip = { chord: chords[1], twist: twists[1], dihedral, section: sections[1] };
    edge = outerEdge;
    length = add(length, span);
    if (block === last) break;
  }
  return panels.length > 0 ? { panels, length } : undefined;
}

const both = (q: Quantity | undefined): readonly [Quantity, Quantity] | undefined => q && [q, q];

const incidenceOf = (surface: Instance, reader: Reader) => reader.quantity(surface, "incidence") ?? angle(0);

/** How a panel without dihedral of its own stands: level, of a fin upright. */
function raisedBy(surface: Instance, reader: Reader): Quantity {
  return surface.kind === "fin" ? subtract(angle(Math.PI / 2), reader.quantity(surface, "cant") ?? angle(0)) : angle(0);
}

/** A panel copied by itself brings what it took from its own surface; else it goes on from the tip before. */
function brought(block: Instance, surface: Instance, reader: Reader, before: Tip, taking: ReadonlySet<Instance>): Tip {
  const own = block.origin?.parent;
  if (!own || taking.has(block)) return before;
  const panels = workOut(own, reader, block.origin, new Set([...taking, block]))?.panels;
  const inner = panels?.at(-1)?.inner;
  if (!panels || !inner) return before;
  const dihedrals = panels.flatMap((p) => reader.own(p.block, "dihedral") ?? []);
  // Whether a panel stands upright is the surface's own affair: a wing's panel makes a fin, and a fin's a wing.
  const alike = (own.kind === "fin") === (surface.kind === "fin");
  return {
    chord: inner.chord, twist: subtract(inner.twist, incidenceOf(own, reader)), section: inner.section,
    dihedral: dihedrals.at(-1) ?? raisedBy(alike ? own : surface, reader),
  };
}

function twistOf(block: Instance, reader: Reader, before: Quantity): readonly [Quantity, Quantity] {
  const washout = reader.own(block, "washout");
  if (washout) return [before, subtract(before, washout)];
  return (reader.written(block, "twist") ? reader.taper(block, "twist") : undefined) ?? [before, before];
}

function acrossPanel(
  edge: Vec3<Quantity>, span: Quantity, chords: readonly [Quantity, Quantity], dihedral: Quantity, block: Instance, surface: Instance, reader: Reader,
): Vec3<Quantity> {
  const ventral = surface.kind === "fin" && reader.flag(surface, "ventral") === true;
  const rise = multiply(span, sine(dihedral));
  return [
    add(edge[0], aftOf(block, span, chords, reader)),
    add(edge[1], multiply(span, cosine(dihedral))),
    add(edge[2], ventral ? negate(rise) : rise),
  ];
}

/** How far the tip's leading edge lies aft of the root's. */
function aftOf(block: Instance, span: Quantity, chords: readonly [Quantity, Quantity], reader: Reader): Quantity {
  const offset = reader.own(block, "offset");
  if (offset) return offset;
  const quarter = reader.own(block, "sweep_quarter");
  if (quarter) return add(multiply(span, tangent(quarter)), multiply(plain(0.25), subtract(chords[0], chords[1])));
  return multiply(span, tangent(reader.quantity(block, "sweep") ?? angle(0)));
}

/** The place at a share of the half and of the chord. Shares outside 0 to 1 go on along the end panel. */
export function pointOnHalf(half: WrittenHalf, along: Quantity, chord: Quantity): Vec3<Quantity> {
  let rest = multiply(along, half.length);
  const last = half.panels.at(-1)!;
  let panel = half.panels[0];
  for (panel of half.panels) {
    if (panel === last || rest.value <= panel.span.value) break;
    rest = subtract(rest, panel.span);
  }
  const t = divide(rest, panel.span);
  const between = (a: Quantity, b: Quantity) => add(a, multiply(t, subtract(b, a)));
  const [i, o] = [panel.inner.leadingEdge, panel.outer.leadingEdge];
  const c = between(panel.inner.chord, panel.outer.chord);
  return [add(between(i[0], o[0]), multiply(chord, c)), between(i[1], o[1]), between(i[2], o[2])];
}

/** Where a panel begins and ends, as shares of the half; undefined if it is another surface's. */
export function panelShares(half: WrittenHalf, panel: Instance): readonly [Quantity, Quantity] | undefined {
  let before = metres(0);
  for (const { block, span } of half.panels) {
    const after = add(before, span);
    if (block === panel) return [divide(before, half.length), divide(after, half.length)];
    before = after;
  }
  return undefined;
}
