import type { Severity } from "../../shared/finding";
import { caution } from "../report/figures-text";
import { reportOf } from "../report/report";
import type { Analysis } from "../analysis";
import type { Finding } from "../../shared/finding";
import { paint } from "./colour";
import { findingText } from "./excerpt";
import type { Io } from "./io";
import { openDesigns, type Design, type OpenOptions } from "./open";

export interface CheckOptions extends OpenOptions {
  readonly format: "text" | "json";
  readonly strict: boolean;
}

/** Prints what is found. 0: nothing, or only what may be lived with; 1: errors, with `strict` warnings too. */
export async function check(files: readonly string[], options: CheckOptions, io: Io): Promise<number> {
  const designs = await openDesigns(files, options, io);
  const found = designs.map((design) => ({ design, findings: ofLoading(design, options.loading) }));
  if (options.format === "json") {
    const reports = found.map(({ design, findings }) => reportOf(design.analysis, design.sets, design.name, findings));
    io.out(`${JSON.stringify(reports.length === 1 ? reports[0] : reports, undefined, 2)}\n`);
  } else {
    for (const { design, findings } of found) io.out(`${textOf(design.name, design.analysis, findings, io)}\n\n`);
    io.out(`${caution}\n`);
  }
  const grave: readonly Severity[] = options.strict ? ["error", "warning"] : ["error"];
  return found.some(({ findings }) => findings.some(({ severity }) => grave.includes(severity))) ? 1 : 0;
}

/** What is found in one loading, and what is no matter of loadings. */
const ofLoading = ({ analysis }: Design, loading: string | undefined): readonly Finding[] =>
  analysis.findings.filter((finding) => loading === undefined || finding.loading === undefined || finding.loading === loading);

function textOf(name: string, { model }: Analysis, findings: readonly Finding[], io: Io): string {
  if (findings.length === 0) return `${name}: nothing found`;
  const colours = paint(io.colour);
  const count = (severity: Severity): string[] => {
    const n = findings.filter((finding) => finding.severity === severity).length;
    return n === 0 ? [] : [`${n} ${severity}${n === 1 ? "" : "s"}`];
  };
  const all = findings.map((finding) => findingText(finding, model.file.parsed, name, colours));
  return [...all, `${name}: ${[...count("error"), ...count("warning"), ...count("hint")].join(", ")}`].join("\n\n");
}
