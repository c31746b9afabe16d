import { type TextDocument, type TextEditor, window, workspace } from "vscode";
import type { DocumentSelector } from "vscode-languageclient";

export const language = "airframe";

/**
 * Files, new files, and whatever the workspace is made of. Old revisions in a comparison are left out: their findings
 * would stand in Problems beside those of the file itself.
 */
export function documentSelector(): DocumentSelector {
  const schemes = new Set(["file", "untitled", ...(workspace.workspaceFolders ?? []).map((folder) => folder.uri.scheme)]);
  return [...schemes].map((scheme) => ({ scheme, language }));
}

export const isDesign = (document: TextDocument): boolean => document.languageId === language;

export function activeDesign(): TextEditor | undefined {
  const editor = window.activeTextEditor;
  return editor && isDesign(editor.document) ? editor : undefined;
}
