import { commands, type Disposable, window } from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";
import { chooseLoading } from "./choose-loading";
import { activeDesign } from "./documents";
import type { FiguresView } from "./figures-view";
import type { LoadingChoice } from "./loading-choice";
import { newDesign } from "./new-design";
import type { StatusBar } from "./status-bar";

export function registerCommands(
  client: BaseLanguageClient, statusBar: StatusBar, choice: LoadingChoice, figures: FiguresView,
): readonly Disposable[] {
  return [
    commands.registerCommand("sparwright.chooseLoading", () => chooseLoading(statusBar, choice)),
    commands.registerCommand("sparwright.showFigures", async () => {
      const design = activeDesign();
      if (design) await figures.open(design.document.uri);
      else void window.showInformationMessage("Open an .airframe file to see its figures.");
    }),
    commands.registerCommand("sparwright.newDesign", newDesign),
    commands.registerCommand("sparwright.restartServer", async () => {
      statusBar.clear();
      await client.stop();
      await client.start();
    }),
  ];
}
