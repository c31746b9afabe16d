import { Disposable, type Uri, window, workspace } from "vscode";
import type { BaseLanguageClient, ConfigurationMiddleware } from "vscode-languageclient";
import { defaultSettings, type Settings, settingsSection } from "../shared/protocol";
import type { LoadingChoice } from "./loading-choice";

/** The settings for one document, its chosen loading included. */
export function settingsOf(uri: Uri | undefined, choice: LoadingChoice): Settings {
  const section = workspace.getConfiguration(settingsSection, uri);
  return {
    units: section.get("units", defaultSettings.units),
    severities: section.get("severities", defaultSettings.severities),
    loading: (uri && choice.of(uri.toString())) ?? section.get("loading", defaultSettings.loading),
  };
}

/** Puts the chosen loading over the one in the settings when the server asks. */
export function settingsMiddleware(choice: LoadingChoice): ConfigurationMiddleware {
  return {
    configuration: async (params, token, next) => {
      const answers: unknown = await next(params, token);
      if (!Array.isArray(answers)) return [];
      return answers.map((answer: unknown, i) => {
        const { section, scopeUri } = params.items[i];
        const chosen = section === settingsSection && scopeUri ? choice.of(scopeUri) : undefined;
        return chosen === undefined ? answer : { ...(answer as Settings), loading: chosen };
      });
    },
  };
}

/** Tells the server of each change; the values of the active document go along for servers that don't ask. */
export function announceSettings(client: BaseLanguageClient, choice: LoadingChoice): Disposable {
  const announce = (): void => {
    const settings = { [settingsSection]: settingsOf(window.activeTextEditor?.document.uri, choice) };
    if (client.isRunning()) void client.sendNotification("workspace/didChangeConfiguration", { settings });
  };
  return Disposable.from(
    choice.onDidChange(announce),
    workspace.onDidChangeConfiguration((change) => {
      if (change.affectsConfiguration(settingsSection)) announce();
    }),
  );
}
