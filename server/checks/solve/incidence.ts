import type { Fix } from "../../../shared/finding";
import { turning, type Turned } from "../../compute/aircraft/turned";
import { heldAt, trimAt } from "../../compute/aircraft/trim";
import { bracketedRoot } from "../../compute/root";
import type { FigureSet } from "../../figures/figure-set";
import type { Subject } from "../check";
import { nominal } from "../readiness";
import { setProperty } from "./edit";
import { literalOf, literalText } from "./literal";

const degree = Math.PI / 180;

/** A builder can set half a degree. */
const step = degree / 2;

/** Beyond this a surface is set for something else. */
const steepest = 10 * degree;

interface At {
  readonly turned: Turned;
  readonly query: { readonly liftCoefficient: number; readonly cgX: number; readonly cgZ: number };
}

/**
 * The incidence, in half degrees, of a tailplane or canard that has its pitch control level at cruise; of several loadings midway.
 * Only where `spare`, the least share of either way of the stick left, is then there in all of them, and the incidence is a plain
 * number in the text or none is written.
 */
export function levelIncidence(subject: Subject, sets: readonly FigureSet[], path: string, spare: number): Fix | undefined {
  const [first] = sets;
  const block = subject.places.blockOf(first, path);
  const slot = block?.slots.get("incidence");
  const literal = literalOf(slot?.entry.value);
  if (!block || block.file !== subject.file || block.copied || (slot && (slot.home !== block || !literal))) return undefined;
  const flights = sets.map((set) => cruising(set, path)).filter((at) => at !== undefined);
  const turns = flights.flatMap(({ turned, query: { liftCoefficient, cgX, cgZ } }) =>
    bracketedRoot((share) => heldAt(turned(share), liftCoefficient)?.moment(cgX, cgZ) ?? NaN, -2 * steepest, 2 * steepest, step / 50) ?? []);
  if (turns.length < sets.length) return undefined;
  const now = literal?.value ?? 0;
  const angle = Math.round((now + (Math.min(...turns) + Math.max(...turns)) / 2) / step) * step;
  const holds = flights.every(({ turned, query }) => {
    const left = trimAt(turned(angle - now), query)?.throwLeft;
    return left && Math.min(left.noseUp, left.noseDown) >= spare;
  });
  if (!holds || Math.abs(angle) > steepest) return undefined;
  const text = literalText(angle, literal?.unit ?? "deg", degree / 10);
  const edit = setProperty(subject.file, block, "incidence", text);
  return edit && { title: `Set ${subject.places.name(first, path)} at an incidence of ${text}`, edits: [edit] };
}

function cruising({ facts: { flight, shape } }: FigureSet, path: string): At | undefined {
  if (!flight || !shape) return undefined;
  const { model, loaded: { x, z }, points } = flight;
  const turned = turning(model.pitch, model.basis, shape.nominal, (strip) => (strip.path === path ? 1 : 0));
  return { turned, query: { liftCoefficient: points.cruise.state.liftCoefficient, cgX: x, cgZ: z } };
}

/** The tailplane or canard that a loading's pitch control is part of. */
export function pitchingSurface(set: FigureSet): string | undefined {
  const path = set.facts.flight?.model.basis.controls[0]?.surface;
  const kind = nominal(set).surfaces.find((surface) => surface.path === path)?.kind;
  return kind === "tailplane" || kind === "canard" ? path : undefined;
}
