import { type ExtensionContext, Uri, workspace } from "vscode";
import { LanguageClient } from "vscode-languageclient/browser";
import { start } from "./start";

/** VS Code in a browser: the server is a web worker. */
export async function activate(context: ExtensionContext): Promise<void> {
  const bytes = await workspace.fs.readFile(Uri.joinPath(context.extensionUri, "dist/web-server.js"));
  // Hosts that keep extensions on another origin refuse a worker from there, but not one made of its bytes.
  const address = URL.createObjectURL(new Blob([new Uint8Array(bytes)], { type: "text/javascript" }));
  context.subscriptions.push({ dispose: () => URL.revokeObjectURL(address) });
  await start(context, (options) => new LanguageClient("sparwright", "Sparwright", () => Promise.resolve(new Worker(address)), options));
}
