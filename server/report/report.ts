import { siSymbol } from "../../grammar/units/si";
import { halfWidth, type Quantity } from "../../grammar/units/quantity";
import type { ParsedFile } from "../../grammar/tree";
import type { Finding } from "../../shared/finding";
import type { Report, ReportedFigure, ReportedFinding } from "../../shared/report";
import type { Analysis } from "../analysis";
import type { FigureSet } from "../figures/figure-set";
import { rangeOf } from "../lines";

/**
 * One design as machines read it: figures of the given loadings in SI units, and what was found. `file` is how it is
 * named; `wanted` picks figures by name.
 */
export function reportOf(
  analysis: Analysis, sets: readonly FigureSet[], file: string, findings: readonly Finding[], wanted: (name: string) => boolean = () => true,
): Report {
  const figures = (set: FigureSet) => set.all().filter(({ name }) => wanted(name));
  return {
    design: sets[0].loading.design.title,
    loadings: Object.fromEntries(sets.map((set) => [
      set.loading.name, Object.fromEntries(figures(set).map(({ name, quantity }) => [name, figureOf(quantity)])),
    ])),
    findings: findings.map((finding) => findingOf(finding, analysis.model.file.parsed, file)),
  };
}

function figureOf(q: Quantity): ReportedFigure {
  const half = halfWidth(q);
  return { value: q.value, low: q.value - half, high: q.value + half, unit: siSymbol(q.dimension) };
}

function findingOf({ code, severity, message, place, figure }: Finding, parsed: ParsedFile, file: string): ReportedFinding {
  return { code, severity, message, file, range: rangeOf(parsed, place), ...(figure === undefined ? {} : { figure }) };
}
