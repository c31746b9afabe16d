import { window } from "vscode";
import { designOf } from "./figures-view";
import type { LoadingChoice } from "./loading-choice";
import type { StatusBar } from "./status-bar";

/** Lets the user pick whose figures the editor shows, among the loadings the design has. */
export async function chooseLoading(statusBar: StatusBar, choice: LoadingChoice): Promise<void> {
  const active = window.activeTextEditor?.document.uri;
  const design = active && designOf(active);
  const status = design && statusBar.of(design);
  if (!status) {
    void window.showInformationMessage("Open an .airframe file to choose among its loadings.");
    return;
  }
  if (status.loadings.length < 2) {
    void window.showInformationMessage("This design has one loading. Write another as `loading NAME { without = [camera] }`.");
    return;
  }
  const items = status.loadings.map((label) => ({ label, description: label === status.loading ? "shown now" : undefined }));
  const picked = await window.showQuickPick(items, { title: "Loading", placeHolder: "Show the figures of which loading?" });
  if (picked) await choice.choose(design, picked.label);
}
