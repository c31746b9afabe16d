import type { Fix } from "../../../shared/finding";
import { ballastNeeded, shiftNeeded } from "../../compute/mass/balance";
import { marginOf, placeFor, type Balance } from "../balance/margins";
import type { Subject } from "../check";
import { nominal } from "../readiness";
import { freeName, newBlock, pointText } from "./edit";
import { move, movables, type Movable } from "./movable";

/** What a fix is to reach in every loading it changes: `aim` in the worst one, and the others between the ends. */
export interface Wanted {
  readonly least: number;
  readonly most: number;
  readonly aim: number;
}

/** The packs whose place is written out, the heaviest first. */
export const packs = (subject: Subject): Movable[] => movables(subject, 0, (kind) => kind === "battery");

/** Moves a pack so that the balance is good in the loadings it is aboard in; nothing where no place inside the aircraft does it. */
export function movePack(subject: Subject, pack: Movable, balances: readonly Balance[], wanted: Wanted): Fix | undefined {
  const aboard = balances.filter(({ set }) => pack.weights.has(set));
  if (aboard.length === 0) return undefined;
  const shifts = (margin: number) => aboard.map((b) => shiftNeeded(b.mass, b.x, placeFor(b, margin), pack.weights.get(b.set)!));
  const forward = aboard.some((b) => marginOf(b) < wanted.least);
  const { from, to } = extent(balances);
  // Margins fall as the pack goes aft: the loading with the least margin bounds it aft, the one with the most forward.
  const first = Math.max(...shifts(wanted.most), from + pack.half - pack.at);
  const last = Math.min(...shifts(wanted.least), to - pack.half - pack.at);
  if (last - first < leastRoom) return undefined;
  const aimed = forward ? Math.min(...shifts(wanted.aim)) : Math.max(...shifts(wanted.aim));
  const inset = (last - first) / 10;
  return move(subject, pack, 0, Math.min(last - inset, Math.max(first + inset, aimed)));
}

/** A place between bounds that are nearer to each other than this can't be set. m */
const leastRoom = 0.005;

/** Adds a weight in the nose that brings the worst loading to the margin aimed at; nothing where it would be too heavy a part of the aircraft. */
export function noseWeight(subject: Subject, balances: readonly Balance[], { aim }: Wanted): Fix | undefined {
  const { bodies } = nominal(subject.sets[0]);
  const nose = bodies.map((body) => body.nose).filter(([, y]) => Math.abs(y) < onCentre).sort((a, b) => a[0] - b[0])[0];
  if (bodies.length > 0 && !nose) return undefined;
  const x = nose ? nose[0] + inNose : extent(balances).from;
  const needed = Math.max(...balances.map((b) => (x < placeFor(b, aim) ? ballastNeeded(b.mass, b.x, placeFor(b, aim), x) : Infinity)));
  const grams = Math.ceil(needed * 1000);
  if (!(grams > 0 && grams < heaviestNose * 1000 * Math.min(...balances.map((b) => b.mass)))) return undefined;
  const at = pointText([x, 0, nose?.[2] ?? 0]);
  const block = `item ${freeName(subject.file, "nose_weight")} { weight = ${grams} g ; at = ${at} }`;
  return { title: `Add ${grams} g at the nose`, edits: [newBlock(subject.file, block)] };
}

/** A nose this near to the plane of symmetry can hold a weight alone. m */
const onCentre = 1e-3;

/** As a share of the whole: common practice, no source. */
const heaviestNose = 0.15;

/** How far behind the tip of a nose its weight sits: common practice, no source. m */
const inNose = 0.02;

/** From where to where there is something to hold a weight. */
function extent(balances: readonly Balance[]): { from: number; to: number } {
  const xs = balances.flatMap(({ set }) => {
    const { bodies, surfaces } = nominal(set);
    const hulls = bodies.flatMap(({ nose, stations }) => stations.map((station) => nose[0] + station.x));
    const edges = surfaces.flatMap(({ halves }) => halves.flatMap(({ panels }) => panels.flatMap(({ inner, outer }) =>
      [inner, outer].flatMap(({ leadingEdge, chord }) => [leadingEdge[0], leadingEdge[0] + chord]))));
    return hulls.length > 0 ? hulls : edges;
  });
  return { from: Math.min(...xs), to: Math.max(...xs) };
}
