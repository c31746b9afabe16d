import { type Connection, type Diagnostic, DiagnosticSeverity } from "vscode-languageserver";
import type { Finding } from "../../shared/finding";
import { type Settings, statusNotification } from "../../shared/protocol";
import { diagnosticsOf, presented, source } from "../editor/diagnostics";
import { status } from "../editor/status";
import type { View } from "../editor/view";
import { calledOff } from "../report/figures-text";
import type { Client } from "./capabilities";

/** Tells the client what is found in its texts, and their headlines if it wants them. A client that is gone is told nothing. */
export class Publisher {
  wantsStatus = false;

  constructor(private readonly connection: Connection) {}

  show(view: View, version: number, findings: readonly Finding[], { severities }: Settings, client: Client, whole: boolean): void {
    const shown = presented(findings, severities);
    const diagnostics = diagnosticsOf(view, shown, client.related);
    if (view.analysis.stopped) diagnostics.push(atTop(calledOff, DiagnosticSeverity.Information, "called_off"));
    this.send(this.connection.sendDiagnostics({ uri: view.uri, version, diagnostics }));
    const graveness = shown.map((finding) => finding.severity);
    if (this.wantsStatus) this.send(this.connection.sendNotification(statusNotification, status(view, version, graveness)));
    if ((whole || view.analysis.reached !== "quick") && client.refreshHints) this.send(this.connection.languages.inlayHint.refresh());
  }

  clear(uri: string): void {
    this.send(this.connection.sendDiagnostics({ uri, diagnostics: [] }));
  }

  /** A fault of ours: in the log in full, and at the top of the text in a line, so that nobody waits for figures. */
  failed(uri: string, version: number | undefined, error: unknown): void {
    this.connection.console.error(`${uri}: ${error instanceof Error ? error.stack ?? error.message : String(error)}`);
    const message = "Figures are missing: Sparwright failed on this text. Its log tells more.";
    this.send(this.connection.sendDiagnostics({ uri, version, diagnostics: [atTop(message, DiagnosticSeverity.Warning, "internal")] }));
  }

  private send(sent: Promise<unknown>): void {
    sent.catch(() => undefined);
  }
}

/** About the text as a whole. */
function atTop(message: string, severity: DiagnosticSeverity, code: string): Diagnostic {
  const start = { line: 0, character: 0 };
  return { range: { start, end: start }, severity, source, code, message };
}
