import { Uri, workspace } from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";
import { type FileText, readFileRequest, type ReadFileParams } from "../shared/protocol";
import { isDesign } from "./documents";

/** Coordinate files and tables are a few kilobytes; anything this large was named by mistake. */
const largest = 4 * 1024 * 1024;

/** Reads for the server what a design uses, through VS Code's own file systems, so that virtual workspaces work. */
export function answerReadFile(client: BaseLanguageClient): void {
  client.onRequest(readFileRequest, ({ uri }: ReadFileParams) => read(Uri.parse(uri)));
}

async function read(uri: Uri): Promise<FileText | null> {
  const open = workspace.textDocuments.find((document) => document.uri.toString() === uri.toString());
  if (open) return { text: open.getText() };
  if (!mayRead(uri)) return null;
  try {
    if ((await workspace.fs.stat(uri)).size > largest) return null;
    return { text: new TextDecoder().decode(await workspace.fs.readFile(uri)) };
  } catch {
    return null;
  }
}

/** In the workspace, or beneath the folder of an open design when no folder is open. */
function mayRead(uri: Uri): boolean {
  if (workspace.getWorkspaceFolder(uri)) return true;
  return workspace.textDocuments.some((document) => {
    if (!isDesign(document) || document.uri.scheme !== uri.scheme || document.uri.authority !== uri.authority) return false;
    const folder = document.uri.path.slice(0, document.uri.path.lastIndexOf("/") + 1);
    return uri.path.startsWith(folder) && !uri.path.split("/").includes("..");
  });
}
