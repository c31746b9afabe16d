import * as z from "zod";

/** The report that `--format json` prints. Figures are in SI units, whatever units people are shown. */

const position = z.strictObject({
  line: z.int().nonnegative(),
  character: z.int().nonnegative(),
}).describe("From 0; characters are UTF-16 code units, as in the language server protocol.");

export const reportedFigure = z.strictObject({
  value: z.number(),
  low: z.number().describe("Value less the half-width of its band (95 %); the value itself where it has none."),
  high: z.number(),
  unit: z.string().describe("An SI symbol: m, kg, 1, 1/rad, N."),
});

export const reportedFinding = z.strictObject({
  code: z.string(),
  severity: z.enum(["error", "warning", "hint"]),
  message: z.string(),
  file: z.string(),
  range: z.strictObject({ start: position, end: position }),
  figure: z.string().optional().describe("The figure it rests on."),
});

const row = z.strictObject({
  title: z.string(),
  unit: z.string().describe("An SI symbol."),
  values: z.array(z.number().nullable()).describe("null where there is no answer."),
});

export const reportedSeries = z.strictObject({
  title: z.string(),
  x: row,
  lines: z.array(row).describe("Each as long as x."),
}).describe("Numbers for a plot, without bands.");

export const report = z.strictObject({
  design: z.string().describe("The airframe's title; empty where it has none."),
  loadings: z.record(z.string(), z.record(z.string(), reportedFigure)).describe("By loading, then by figure."),
  findings: z.array(reportedFinding),
  series: z.record(z.string(), z.record(z.string(), reportedSeries)).optional().describe("What plots show, by loading, then by name."),
});

export type Report = z.infer<typeof report>;
export type ReportedFigure = z.infer<typeof reportedFigure>;
export type ReportedSeries = z.infer<typeof reportedSeries>;
export type ReportedFinding = z.infer<typeof reportedFinding>;
