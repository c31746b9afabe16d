import { type Diagnostic, DiagnosticSeverity, DiagnosticTag } from "vscode-languageserver";
import type { Finding, Severity } from "../../shared/finding";
import { rangeOf } from "../lines";
import { rangeIn, type View } from "./view";

export const source = "sparwright";

const levels: Readonly<Record<Severity, DiagnosticSeverity>> = {
  error: DiagnosticSeverity.Error, warning: DiagnosticSeverity.Warning, hint: DiagnosticSeverity.Information,
};

/** Codes of findings about something that may go. */
const needless = new Set(["unused_let", "waiver_without_effect"]);

/** By code, how its findings are shown instead. */
export type Severities = Readonly<Record<string, Severity | "off">>;

/** The findings as their reader wants them: with other severities, or not at all. */
export function presented(findings: readonly Finding[], severities: Severities): readonly Finding[] {
  return findings.flatMap((finding) => {
    const wanted = Object.hasOwn(severities, finding.code) ? severities[finding.code] : finding.severity;
    return wanted === "off" ? [] : [wanted === finding.severity ? finding : { ...finding, severity: wanted }];
  });
}

/** Findings of a view's text as a client shows them. */
export function diagnosticsOf(view: View, findings: readonly Finding[], related: boolean): Diagnostic[] {
  return findings.filter((finding) => finding.place.file === view.uri).map((finding): Diagnostic => ({
    range: rangeIn(view, finding.place), severity: levels[finding.severity], code: finding.code, source, message: finding.message,
    ...(needless.has(finding.code) ? { tags: [DiagnosticTag.Unnecessary] } : {}),
    ...(related && finding.related ? { relatedInformation: relatedTo(view, finding) } : {}),
    ...(finding.figure ? { data: { figure: finding.figure, loading: finding.loading } } : {}),
  }));
}

function relatedTo(view: View, finding: Finding): Diagnostic["relatedInformation"] {
  return finding.related?.flatMap(({ message, place }) => {
    const parsed = place.file === view.uri ? view.parsed : view.service.parsed(place.file);
    return parsed ? [{ message, location: { uri: place.file, range: rangeOf(parsed, place) } }] : [];
  });
}
