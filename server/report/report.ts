import { dimensions } from "../../grammar/units/dimension";
import { siSymbol } from "../../grammar/units/si";
import { halfWidth, type Quantity } from "../../grammar/units/quantity";
import type { ParsedFile } from "../../grammar/tree";
import type { Finding } from "../../shared/finding";
import type { Report, ReportedFigure, ReportedFinding, ReportedSeries } from "../../shared/report";
import type { Analysis } from "../analysis";
import type { FigureSet } from "../figures/figure-set";
import type { Row, Series } from "../figures/series";
import { rangeOf } from "../lines";

/**
 * One design as machines read it: figures of the given loadings in SI units, and what was found. `file` is how it is
 * named; `wanted` picks figures by name.
 */
export function reportOf(
  analysis: Analysis, sets: readonly FigureSet[], file: string, findings: readonly Finding[], wanted: (name: string) => boolean = () => true,
): Report {
  const figures = (set: FigureSet) => set.all().filter(({ name }) => wanted(name));
  const series = (set: FigureSet) => set.series().filter(({ name }) => wanted(name));
  const plots = sets.map((set) => [set.loading.name, Object.fromEntries(series(set).map((one) => [one.name, seriesOf(one)]))] as const);
  return {
    design: sets[0].loading.design.title,
    loadings: Object.fromEntries(sets.map((set) => [
      set.loading.name, Object.fromEntries(figures(set).map(({ name, quantity }) => [name, figureOf(quantity)])),
    ])),
    findings: findings.map((finding) => findingOf(finding, analysis.model.file.parsed, file)),
    ...(plots.some(([, of]) => Object.keys(of).length > 0) ? { series: Object.fromEntries(plots) } : {}),
  };
}

function seriesOf({ title, x, lines }: Series): ReportedSeries {
  const row = ({ title, dimension, values }: Row) =>
    ({ title, unit: siSymbol(dimensions[dimension]), values: values.map((value) => (value !== undefined && Number.isFinite(value) ? value : null)) });
  return { title, x: row(x), lines: lines.map(row) };
}

function figureOf(q: Quantity): ReportedFigure {
  const half = halfWidth(q);
  return { value: q.value, low: q.value - half, high: q.value + half, unit: siSymbol(q.dimension) };
}

function findingOf({ code, severity, message, place, figure }: Finding, parsed: ParsedFile, file: string): ReportedFinding {
  return { code, severity, message, file, range: rangeOf(parsed, place), ...(figure === undefined ? {} : { figure }) };
}
