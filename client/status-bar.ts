import { type Disposable, MarkdownString, StatusBarAlignment, ThemeColor, type Uri, window, workspace } from "vscode";
import type { StatusParams } from "../shared/protocol";
import { designOf } from "./figures-view";
import { statusText, statusTooltip } from "./status-text";

/** One item: the headline of the design in the active editor. Clicking it chooses the loading. */
export class StatusBar implements Disposable {
  private readonly item = window.createStatusBarItem("sparwright.status", StatusBarAlignment.Left, 10);
  private readonly latest = new Map<string, StatusParams>();
  private readonly listeners: readonly Disposable[];

  constructor() {
    this.item.name = "Sparwright";
    this.item.command = "sparwright.chooseLoading";
    this.listeners = [
      window.onDidChangeActiveTextEditor(() => this.show()),
      workspace.onDidCloseTextDocument((document) => this.latest.delete(document.uri.toString())),
    ];
  }

  of(uri: Uri): StatusParams | undefined {
    return this.latest.get(uri.toString());
  }

  update(status: StatusParams): void {
    const known = this.latest.get(status.uri);
    if (known && known.version > status.version) return;
    this.latest.set(status.uri, status);
    this.show();
  }

  clear(): void {
    this.latest.clear();
    this.show();
  }

  dispose(): void {
    this.item.dispose();
    for (const listener of this.listeners) listener.dispose();
  }

  private show(): void {
    const active = window.activeTextEditor?.document.uri;
    const status = active && this.of(designOf(active));
    if (!status) {
      this.item.hide();
      return;
    }
    this.item.text = statusText(status);
    this.item.tooltip = new MarkdownString(statusTooltip(status));
    this.item.accessibilityInformation = { label: `Sparwright: ${statusText(status).replace(/\$\([^)]*\) /, "")}` };
    this.item.backgroundColor = status.state === "error" ? new ThemeColor("statusBarItem.errorBackground") : undefined;
    this.item.show();
  }
}
