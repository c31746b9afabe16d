import type { ExtensionContext } from "vscode";
import { LanguageClient, TransportKind } from "vscode-languageclient/node";
import { start } from "./start";

/** Desktop and remote hosts: the server is a Node process beside the extension. */
export async function activate(context: ExtensionContext): Promise<void> {
  const server = { module: context.asAbsolutePath("dist/server.js"), transport: TransportKind.stdio };
  await start(context, (options) => new LanguageClient("sparwright", "Sparwright", server, options));
}
