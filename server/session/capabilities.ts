import { type ClientCapabilities, CodeActionKind, type ServerCapabilities, TextDocumentSyncKind } from "vscode-languageserver";
import { semanticLegend } from "../editor/semantic-tokens";

/** What of the client matters to us. */
export interface Client {
  readonly configuration: boolean;
  readonly watch: boolean;
  readonly folders: boolean;
  readonly markdown: boolean;
  readonly docMarkdown: boolean;
  readonly snippets: boolean;
  readonly outline: boolean;
  readonly related: boolean;
  readonly versionedEdits: boolean;
  readonly refreshHints: boolean;
}

export function clientOf({ workspace, textDocument }: ClientCapabilities): Client {
  const { hover, completion, documentSymbol, publishDiagnostics } = textDocument ?? {};
  const item = completion?.completionItem;
  const takesMarkdown = (formats: readonly string[] | undefined) => formats?.includes("markdown") === true;
  return {
    configuration: workspace?.configuration === true,
    watch: workspace?.didChangeWatchedFiles?.dynamicRegistration === true,
    folders: workspace?.workspaceFolders === true,
    markdown: takesMarkdown(hover?.contentFormat),
    docMarkdown: takesMarkdown(item?.documentationFormat),
    snippets: item?.snippetSupport === true,
    outline: documentSymbol?.hierarchicalDocumentSymbolSupport === true,
    related: publishDiagnostics?.relatedInformation === true,
    versionedEdits: workspace?.workspaceEdit?.documentChanges === true,
    refreshHints: workspace?.inlayHint?.refreshSupport === true,
  };
}

export const capabilities: ServerCapabilities = {
  workspace: { workspaceFolders: { supported: true, changeNotifications: true } },
  textDocumentSync: { openClose: true, change: TextDocumentSyncKind.Incremental },
  hoverProvider: true,
  completionProvider: { triggerCharacters: [".", " ", "=", "[", "(", ","], resolveProvider: true },
  definitionProvider: true,
  referencesProvider: true,
  documentHighlightProvider: true,
  documentSymbolProvider: true,
  documentLinkProvider: { resolveProvider: false },
  foldingRangeProvider: true,
  renameProvider: { prepareProvider: true },
  codeActionProvider: { codeActionKinds: [CodeActionKind.QuickFix] },
  documentFormattingProvider: true,
  documentRangeFormattingProvider: true,
  inlayHintProvider: true,
  semanticTokensProvider: { legend: semanticLegend, full: true },
};
