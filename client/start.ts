import { type ExtensionContext, Uri, window, workspace } from "vscode";
import type { BaseLanguageClient, LanguageClientOptions } from "vscode-languageclient";
import { type InitializationOptions, statusNotification, type StatusParams } from "../shared/protocol";
import { registerCommands } from "./commands";
import { documentSelector } from "./documents";
import { FiguresView } from "./figures-view";
import { LoadingChoice } from "./loading-choice";
import { answerReadFile } from "./read-file";
import { announceSettings, settingsMiddleware, settingsOf } from "./settings";
import { StatusBar } from "./status-bar";

/** Starts the language server with the client `create` makes, and puts the features around it. */
export async function start(
  context: ExtensionContext,
  create: (options: LanguageClientOptions) => BaseLanguageClient,
): Promise<void> {
  const choice = new LoadingChoice(context.workspaceState);
  const watcher = workspace.createFileSystemWatcher("**/*.{airframe,dat,csv}");
  const initializationOptions: InitializationOptions = {
    readFile: true,
    status: true,
    settings: settingsOf(window.activeTextEditor?.document.uri, choice),
  };
  const client = create({
    documentSelector: documentSelector(),
    synchronize: { fileEvents: watcher },
    initializationOptions,
    middleware: { workspace: settingsMiddleware(choice) },
  });

  const statusBar = new StatusBar();
  const figures = new FiguresView(client);
  client.onNotification(statusNotification, (status: StatusParams) => {
    statusBar.update(status);
    if (status.state !== "working") figures.refresh(Uri.parse(status.uri));
  });
  answerReadFile(client);
  context.subscriptions.push(
    statusBar, figures, watcher,
    announceSettings(client, choice),
    ...registerCommands(client, statusBar, choice, figures),
    // Disposing of a client that failed to start rejects; there is nothing left to stop then.
    { dispose: () => client.stop().catch(() => undefined) },
  );
  await client.start();
}
