import type { Fix, FixEdit } from "../../../shared/finding";
import type { FigureSet } from "../../figures/figure-set";
import type { Slot } from "../../model/resolve/instance";
import type { Source } from "../../model/design/power";
import type { Subject } from "../check";
import { partOf, type Plant } from "../power/parts";
import { nominal } from "../readiness";
import { literalOf, literalText, type Literal } from "./literal";
import { distinct } from "./propeller";

/** A pack of half as many cells again is another aircraft. */
const mostCells = 1.5;

/** A motor's maker winds the same motor up to so much faster. */
const mostKv = 1.3;

/** Motors come in tens of rpm per volt. rad/s per volt */
const kvStep = (10 * Math.PI) / 30;

/**
 * The fewest cells more with which `holds` is true of every loading, for the pack that feeds a powerplant, with its weight, and its
 * resistance where that is written, in proportion. `holds` gets the sources and what they weigh more, kg.
 */
export function moreCells(
  subject: Subject, set: FigureSet, path: string, holds: (set: FigureSet, sources: readonly Source[], heavier: number) => boolean,
): Fix | undefined {
  const fed = nominal(set).powerplants.find((plant) => plant.path === path)?.source;
  const [pack] = nominal(set).sources.find((source) => source.path === fed)?.packs ?? [];
  const cells = pack && slotOf(subject, set, pack.path, "cells");
  const value = cells?.entry.value;
  if (!pack || !cells || value?.type !== "quantity" || value.unit || cells.home.file !== subject.file) return undefined;
  const scaled = ["weight", "resistance"].map((name) => slotOf(subject, set, pack.path, name)).filter((slot) => slot !== undefined);
  const literals = scaled.map((slot) => (slot.home.file === subject.file ? literalOf(slot.entry.value) : undefined));
  if (!literals.every((literal) => literal !== undefined)) return undefined;
  const sets = distinct(subject.sets.filter((one) => nominal(one).powerplants.length > 0));
  for (let n = pack.cells + 1; n <= mostCells * pack.cells; n++) {
    const grown = n / pack.cells;
    const enough = sets.every((one) => {
      let heavier = 0;
      const sources = nominal(one).sources.map((source): Source => ({
        ...source, packs: source.packs.map((own) => {
          if (slotOf(subject, one, own.path, "cells")?.entry !== cells.entry) return own;
          heavier += (grown - 1) * (nominal(one).loads.find((load) => load.path === own.path)?.weight ?? 0);
          return { ...own, cells: n, ...(own.resistance !== undefined && { resistance: own.resistance * grown }) };
        }),
      }));
      return holds(one, sources, heavier);
    });
    if (!enough) continue;
    const edits = [{ file: subject.file.uri, start: value.start, end: value.end, text: String(n) }, ...literals.map((literal) => over(subject, literal, grown))];
    const weight = literals[0] && scaled[0] === slotOf(subject, set, pack.path, "weight") ? `, ${edits[1].text} by the weight of its cells` : "";
    return { title: `Take a pack of ${n} cells${weight}`, edits };
  }
  return undefined;
}

/**
 * The least rpm per volt more with which a powerplant gives `enough` in every loading, if that leaves all `within`: the same motor with
 * another winding, so its resistance falls with the square and its no-load current grows in proportion.
 */
export function moreKv(subject: Subject, set: FigureSet, path: string, enough: Holds, within: Holds): Fix | undefined {
  const motor = partOf(subject, set, path, "motor");
  const slots = ["kv", "resistance", "no_load_current"].map((name) => motor && subject.places.slot(set, motor, name));
  const literals = slots.map((slot) => (slot && slot.home.file === subject.file ? literalOf(slot.entry.value) : undefined));
  const [kv] = literals;
  if (!kv || slots.some((slot, i) => slot && !literals[i])) return undefined;
  const sets = distinct(subject.sets.filter((one) => nominal(one).powerplants.length > 0));
  const wound = (one: FigureSet, grown: number) => nominal(one).powerplants.map((plant): Plant => {
    const own = partOf(subject, one, plant.path, "motor");
    if (!plant.motor || !own || subject.places.slot(one, own, "kv")?.entry !== slots[0]!.entry) return plant;
    const { motor: as } = plant;
    return { ...plant, motor: { ...as, kv: as.kv * grown, resistance: as.resistance / grown ** 2, noLoadCurrent: as.noLoadCurrent * grown } };
  });
  const least = Math.floor(kv.value / kvStep + 1e-6) + 1;
  let [low, high] = [least - 1, Math.floor((mostKv * kv.value) / kvStep)];
  const all = (holds: Holds, n: number) => sets.every((one) => holds(one, wound(one, (n * kvStep) / kv.value)));
  if (high < least || !all(enough, high)) return undefined;
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (all(enough, middle)) high = middle;
    else low = middle;
  }
  if (!all(within, high)) return undefined;
  const grown = (high * kvStep) / kv.value;
  const edits = [grown, 1 / grown ** 2, grown].flatMap((factor, i) => { const literal = literals[i]; return literal ? [over(subject, literal, factor)] : []; });
  return { title: `Take a motor of ${edits[0].text}, of the same make`, edits };
}

type Holds = (set: FigureSet, plants: readonly Plant[]) => boolean;

function slotOf(subject: Subject, set: FigureSet, path: string, property: string): Slot | undefined {
  const block = subject.places.blockOf(set, path);
  return block && subject.places.slot(set, block, property);
}

/** Writes a literal so many times over, to three digits or as many as it has before the point. */
function over({ file }: Subject, { span: { start, end }, unit, value }: Literal, factor: number): FixEdit {
  const grown = value * factor;
  return { file: file.uri, start, end, text: literalText(grown, unit, 10 ** (Math.floor(Math.log10(Math.abs(grown))) - 3)) };
}
