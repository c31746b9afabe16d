import type { SurfaceKind } from "../../model/design/geometry";
import { bracketedRoot } from "../root";
import { liftMaxAt, stripAir, type AirAt } from "./air-at";
import type { AirBasis } from "./air-basis";
import type { AirState } from "./air-state";
import { heldAt, trimAt } from "./trim";

/** Where the first section of a surface reaches its limit as the lift of the whole grows. */
export interface LiftLimit {
  readonly path: string;
  readonly kind: SurfaceKind;
  /** Its limit of lift up or of lift down. */
  readonly sense: "up" | "down";
  /** Share of the half-span, from the plane of symmetry. */
  readonly station: number;
  /** Place of that strip in the basis. */
  readonly strip: number;
  /** Of the x axis to the flow, rad. */
  readonly angle: number;
  /** Share of the stick's way. */
  readonly pitch: number;
  /** Of the whole. */
  readonly liftCoefficient: number;
}

export interface LimitQuery {
  /** The balance point, m. */
  readonly cgX: number;
  readonly cgZ?: number;
  /** As for trim, m³. */
  readonly momentOfThrust?: number;
  /** Share of the stick's way at which it is held, whatever the moment; when absent it trims, if any control pitches. */
  readonly pitch?: number;
}

/** Lift coefficients looked through, and the step: no wing without slots or blowing lifts more. */
const [most, step] = [4, 0.125];

/** Fins and winglets part from the flow without a stall of the whole. */
const lifting: ReadonlySet<SurfaceKind> = new Set<SurfaceKind>(["wing", "canard", "tailplane"]);

/**
 * Each surface that reaches a limit, by the lift coefficient at which it does. Strips inside bodies and the last 2 % of a half's
 * area at its tip don't count. Tailplanes are looked at as far as wings and canards go. Empty where no lift can be trimmed.
 */
export function liftLimits(basis: AirBasis, air: AirAt, query: LimitQuery): LiftLimit[] {
  const surfaces = stripsBySurface(basis);
  const at = (lift: number) => stateAt(basis, query, lift);
  const found: LiftLimit[] = [];
  const before = new Map<Surface, number>();
  const open = () => surfaces.some(({ path, kind }) => kind !== "tailplane" && !found.some((limit) => limit.path === path));
  for (let lift = 0; lift <= most && open(); lift += step) {
    const state = at(lift);
    if (!state) continue;
    for (const surface of surfaces) {
      if (found.some(({ path }) => path === surface.path)) continue;
      const { margin } = nearest(basis, air, surface, state);
      const last = before.get(surface);
      before.set(surface, margin);
      if (last === undefined || !(last >= 0 && margin < 0)) continue;
      const exact = bracketedRoot((x) => marginAt(basis, air, surface, at(x)), lift - step, lift, 1e-6) ?? lift;
      const there = at(exact) ?? state;
      found.push(limitOf(basis, surface, there, nearest(basis, air, surface, there).strip));
    }
  }
  return found.sort((a, b) => a.liftCoefficient - b.liftCoefficient);
}

/** How far around a place a first limit is sought, as a share of it, and how often wider. */
const [around, wider] = [0.005, 8];

/**
 * The first wing or canard to reach its limit of lift up, near a lift coefficient at which one did in air much like this.
 * Undefined where none is found there: `liftLimits` looks everywhere.
 */
export function firstLimit(basis: AirBasis, air: AirAt, query: LimitQuery, near: number): LiftLimit | undefined {
  const surfaces = stripsBySurface(basis).filter(({ kind }) => kind !== "tailplane");
  // The ends of the bracket are asked for again and again.
  const known = new Map<number, number>();
  const margin = (lift: number) => {
    const before = known.get(lift);
    if (before !== undefined) return before;
    const state = stateAt(basis, query, lift);
    const least = state ? Math.min(...surfaces.map((surface) => nearest(basis, air, surface, state).margin)) : NaN;
    known.set(lift, least);
    return least;
  };
  let [low, high] = [near * (1 - around), near * (1 + around)];
  for (let i = 0; i < wider && margin(low) < 0; i++) low -= around * 2 ** i * near;
  for (let i = 0; i < wider && margin(high) >= 0; i++) high += around * 2 ** i * near;
  if (!(low > 0) || !(margin(low) >= 0) || !(margin(high) < 0)) return undefined;
  const lift = bracketedRoot(margin, low, high, 1e-7);
  const state = lift === undefined ? undefined : stateAt(basis, query, lift);
  if (!state) return undefined;
  const found = surfaces.map((surface) => ({ surface, ...nearest(basis, air, surface, state) })).reduce((a, b) => (b.margin < a.margin ? b : a));
  const limit = limitOf(basis, found.surface, state, found.strip);
  return limit.sense === "up" ? limit : undefined;
}

interface Surface {
  readonly path: string;
  readonly kind: SurfaceKind;
  readonly strips: readonly number[];
  readonly halfSpan: number;
}

function stripsBySurface({ strips }: AirBasis): Surface[] {
  const paths = [...new Set(strips.filter(({ kind }) => lifting.has(kind)).map(({ path }) => path))];
  return paths.map((path) => {
    const own = strips.flatMap((strip, i) => (strip.path === path ? [i] : []));
    return {
      path, kind: strips[own[0]].kind,
      strips: own.filter((i) => strips[i].weight > 0 && !strips[i].inside && !strips[i].outermost),
      halfSpan: Math.max(...own.flatMap((i) => strips[i].ends.map(([y]) => Math.abs(y)))),
    };
  }).filter((surface) => surface.strips.length > 0);
}

/** Trimmed; with the stick held where one is given, or in the middle where no control pitches. */
export function stateAt(basis: AirBasis, { pitch, ...query }: LimitQuery, liftCoefficient: number): AirState | undefined {
  const trims = pitch === undefined && basis.controls.length > 0;
  return trims ? trimAt(basis, { ...query, liftCoefficient }) : heldAt(basis, liftCoefficient, pitch);
}

const marginAt = (basis: AirBasis, air: AirAt, surface: Surface, state: AirState | undefined): number =>
  state ? nearest(basis, air, surface, state).margin : -1;

/** The strip nearest to its limit, and how much lift coefficient is left there. */
function nearest(basis: AirBasis, air: AirAt, { strips }: Surface, { liftCoefficients, pitch }: AirState): { readonly strip: number; readonly margin: number } {
  let [strip, margin] = [strips[0], Infinity];
  for (const i of strips) {
    const lift = liftCoefficients[i];
    // The limit of pushing down may be dear to know: it is asked for only where a strip does.
    const left = lift < 0 ? lift - stripAir(basis, air, i, pitch).liftMin : liftMaxAt(basis, air, i, pitch) - lift;
    if (left < margin) [strip, margin] = [i, left];
  }
  return { strip, margin };
}

function limitOf({ strips }: AirBasis, { path, kind, halfSpan }: Surface, state: AirState, strip: number): LiftLimit {
  return {
    path, kind, strip, angle: state.angle, pitch: state.pitch, liftCoefficient: state.liftCoefficient,
    sense: state.liftCoefficients[strip] < 0 ? "down" : "up",
    station: halfSpan > 0 ? Math.abs(strips[strip].y) / halfSpan : 0,
  };
}
