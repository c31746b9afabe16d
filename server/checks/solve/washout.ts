import type { Fix } from "../../../shared/finding";
import { middleAlong, turning } from "../../compute/aircraft/turned";
import { stallOf } from "../../compute/aircraft/flight-points";
import { spanOf } from "../../compute/planform/sides";
import type { FigureSet } from "../../figures/figure-set";
import { wingLimit } from "../../figures/flight/points";
import type { Instance } from "../../model/resolve/instance";
import type { Subject } from "../check";
import { nominal } from "../readiness";
import { setProperty } from "./edit";
import { literalOf, literalText, type Literal } from "./literal";

const degree = Math.PI / 180;

/** A builder can set half a degree. */
const step = degree / 2;

/** More washout than this besides what there is makes another wing. */
const most = 8;

/** The block of a wing's outermost panel. */
export function tipPanel({ places }: Subject, set: FigureSet, wing: string): Instance | undefined {
  const panels = nominal(set).surfaces.find(({ path }) => path === wing)?.halves[0]?.panels;
  return panels && places.blockOf(set, wing)?.children.get(panels[panels.length - 1].name);
}

/**
 * More washout of the outermost panel, the least in half degrees with which the wing of each of these loadings first stalls no
 * farther out than `limit` (share of the half-span); where its twist is written out, or none is.
 */
export function moreWashout(subject: Subject, sets: readonly FigureSet[], wing: string, limit: number): Fix | undefined {
  const panel = tipPanel(subject, sets[0], wing);
  const write = panel && writer(subject, panel);
  if (!write) return undefined;
  const stations = sets.map((set) => stationBy(set, wing));
  for (let n = 1; n <= most; n++) {
    const holds = stations.every((at) => { const station = at(n * step); return station !== undefined && station <= limit; });
    if (holds) return write(n * step);
  }
  return undefined;
}

/** Where a wing would first stall with so much more washout (rad), spread over its outermost panel. */
function stationBy(set: FigureSet, wing: string): (more: number) => number | undefined {
  const { flight, shape } = set.facts;
  const panels = shape?.nominal.surfaces.find(({ path }) => path === wing)?.halves[0].panels ?? [];
  if (!flight || !shape || panels.length === 0) return () => undefined;
  const { model, loaded } = flight;
  const spans = panels.map(spanOf);
  const whole = spans.reduce((sum, span) => sum + span, 0);
  const from = 1 - spans[spans.length - 1] / whole;
  const turned = turning(model.pitch, model.basis, shape.nominal, (strip) =>
    (strip.path === wing ? -Math.max(0, (middleAlong(strip) - from) / (1 - from)) : 0));
  return (more) => {
    const stall = stallOf({ ...model, basis: turned(more) }, loaded);
    const first = stall && wingLimit(stall);
    return first?.station;
  };
}

/** Writes so much more washout, rad, the way the panel has it. */
function writer({ file }: Subject, panel: Instance): ((more: number) => Fix | undefined) | undefined {
  if (panel.file !== file || panel.copied) return undefined;
  const [washout, twist] = ["washout", "twist"].map((name) => panel.slots.get(name));
  if ([washout, twist].some((slot) => slot && slot.home !== panel)) return undefined;
  const over = ({ unit, value, span }: Literal, name: string, by: number): Fix => {
    const text = literalText(value + by, unit, degree / 10);
    return { title: `${name} of ${text}`, edits: [{ file: file.uri, start: span.start, end: span.end, text }] };
  };
  if (washout) {
    const literal = literalOf(washout.entry.value);
    return literal && ((more) => over(literal, "Give the tip a washout", more));
  }
  const value = twist?.entry.value;
  if (value?.type === "pair") {
    const literal = literalOf(value.right);
    return literal && ((more) => over(literal, "Give the tip a twist", -more));
  }
  if (twist) {
    // One twist for the whole panel: its root keeps it.
    const literal = literalOf(value);
    return literal && ((more) => {
      const text = `${literalText(literal.value, literal.unit, degree / 10)} to ${literalText(literal.value - more, literal.unit, degree / 10)}`;
      return { title: `Write twist = ${text}`, edits: [{ file: file.uri, start: literal.span.start, end: literal.span.end, text }] };
    });
  }
  return (more) => {
    const text = literalText(more, "deg", degree / 10);
    const edit = setProperty(file, panel, "washout", text);
    return edit && { title: `Give the tip a washout of ${text}`, edits: [edit] };
  };
}
