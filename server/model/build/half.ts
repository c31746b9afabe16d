import { dimensions } from "../../../grammar/units/dimension";
import { add, chain, divide, metres, multiply, negate, plain, quantity, subtract, type Quantity } from "../../../grammar/units/quantity";
import type { Panel, Section, Station, Vec3 } from "../design/geometry";
import type { Instance } from "../resolve/instance";
import { pathOf } from "../resolve/instance";
import type { SectionValue } from "../../../grammar/vocabulary/schema";
import { written, type Reader } from "./reader";
import { sectionOf } from "./section";

/** One side of a surface as written, in the axes it stands in, root to tip. */
export interface WrittenHalf {
  readonly panels: readonly (Panel<Quantity> & { readonly block: Instance; readonly span: Quantity })[];
  /** Along the panels as built. */
  readonly length: Quantity;
}

/** What a panel hands on to the next: all that the tip before gives. */
interface Tip {
  readonly chord?: Quantity;
  readonly twist: Quantity;
  readonly dihedral?: Quantity;
  readonly section: Section<Quantity>;
}

const angle = (value: number) => quantity(value, dimensions.angle);
const sine = (a: Quantity) => chain(a, Math.sin(a.value), Math.cos(a.value), dimensions.ratio);
const cosine = (a: Quantity) => chain(a, Math.cos(a.value), -Math.sin(a.value), dimensions.ratio);
const tangent = (a: Quantity) => chain(a, Math.tan(a.value), 1 / Math.cos(a.value) ** 2, dimensions.ratio);

/** A flat plate of 3 %: what a surface without a section gets. */
export const plateSection: Section<Quantity> = { shape: { type: "flat", thickness: plain(0.03) } };

export function panelsOf(surface: Instance): Instance[] {
  return [...surface.children.values()].filter((child) => child.kind === "panel");
}

/** Builds one side, in Quantity arithmetic so that tolerances pass. Undefined when its place or a panel is broken. */
export function writtenHalf(surface: Instance, reader: Reader): WrittenHalf | undefined {
  const at = reader.point(surface, "at");
  if (!at) return undefined;
  const incidence = reader.quantity(surface, "incidence") ?? angle(0);
  const raised = surface.kind === "fin" ? uprightAngle(surface, reader) : angle(0);
  let tip: Tip = { twist: angle(0), section: sectionsFor(surface, reader)?.[0] ?? plateSection };
  let edge = at;
  let length = metres(0);
  const panels: WrittenHalf["panels"][number][] = [];
  for (const block of panelsOf(surface)) {
    const own = brought(block, reader, tip);
    const span = reader.quantity(block, "span");
    const chords = reader.taper(block, "chord") ?? both(own.chord);
    if (!span || !chords || span.value <= 0) return undefined;
    const twists = twistOf(block, reader, own.twist) ?? [own.twist, own.twist];
    const dihedral = (written(block, "dihedral") ? reader.quantity(block, "dihedral") : own.dihedral) ?? raised;
    const sections = sectionsFor(block, reader) ?? [own.section, own.section];
    const outerEdge = acrossPanel(edge, span, chords, dihedral, block, surface, reader);
    const station = (leadingEdge: Vec3<Quantity>, i: 0 | 1): Station<Quantity> =>
      ({ leadingEdge, chord: chords[i], twist: add(incidence, twists[i]), section: sections[i] });
    panels.push({ name: block.key, block, span, inner: station(edge, 0), outer: station(outerEdge, 1), weight: reader.quantity(block, "weight") });
    tip = { chord: chords[1], twist: twists[1], dihedral, section: sections[1] };
    edge = outerEdge;
    length = add(length, span);
  }
  return panels.length > 0 ? { panels, length } : undefined;
}

const both = (q: Quantity | undefined): readonly [Quantity, Quantity] | undefined => q && [q, q];

function uprightAngle(fin: Instance, reader: Reader): Quantity {
  return subtract(angle(Math.PI / 2), reader.quantity(fin, "cant") ?? angle(0));
}

/** A panel copied by itself brings what it took from its own surface; else it goes on from the tip before. */
function brought(block: Instance, reader: Reader, before: Tip): Tip {
  const origin = block.origin;
  const surface = origin?.parent;
  if (!origin || !surface || origin.kind !== "panel") return before;
  const half = writtenHalf(surface, reader);
  const panel = half?.panels.find((p) => p.block === origin);
  if (!panel) return before;
  const incidence = reader.quantity(surface, "incidence") ?? angle(0);
  const run = half!.panels.slice(0, half!.panels.indexOf(panel) + 1);
  const dihedral = run.map((p) => (written(p.block, "dihedral") ? reader.quantity(p.block, "dihedral") : undefined)).filter(Boolean).at(-1);
  return {
    chord: panel.inner.chord, twist: subtract(panel.inner.twist, incidence), dihedral: dihedral ?? before.dihedral, section: panel.inner.section,
  };
}

function twistOf(block: Instance, reader: Reader, before: Quantity): readonly [Quantity, Quantity] | undefined {
  if (written(block, "twist")) return reader.taper(block, "twist");
  const washout = written(block, "washout") ? reader.quantity(block, "washout") : undefined;
  return washout && [before, subtract(before, washout)];
}

type Sections = readonly [Section<Quantity>, Section<Quantity>];

function sectionsFor(block: Instance, reader: Reader): Sections | undefined {
  if (!written(block, "foil")) return undefined;
  const value = reader.raw(block, "foil") as SectionValue | readonly [SectionValue, SectionValue] | undefined;
  if (!value) return undefined;
  const [inner, outer] = "form" in value ? [value, value] : value;
  const [a, b] = [sectionOf(inner, reader), sectionOf(outer, reader)];
  return a && b && [a, b];
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
  if (written(block, "offset")) return reader.quantity(block, "offset") ?? metres(0);
  if (written(block, "sweep_quarter")) {
    const sweep = reader.quantity(block, "sweep_quarter") ?? angle(0);
    return add(multiply(span, tangent(sweep)), multiply(plain(0.25), subtract(chords[0], chords[1])));
  }
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

/** Where the panel of that name begins and ends, as shares of the half. */
export function panelShares(half: WrittenHalf, panel: Instance): readonly [Quantity, Quantity] | undefined {
  let before = metres(0);
  for (const p of half.panels) {
    const after = add(before, p.span);
    if (p.block === panel || pathOf(p.block) === pathOf(panel)) return [divide(before, half.length), divide(after, half.length)];
    before = after;
  }
  return undefined;
}
