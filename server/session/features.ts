import {
  type CancellationToken, type CodeAction, CodeActionKind, type CompletionItem, CompletionTriggerKind, type Connection, LSPErrorCodes, MarkupKind,
  type Position, type Range, ResponseError, type TextEdit, type WorkspaceEdit,
} from "vscode-languageserver";
import type { FixEdit } from "../../shared/finding";
import { type FiguresTextParams, figuresTextRequest, type FileText } from "../../shared/protocol";
import { complete } from "../editor/completion/complete";
import { describe } from "../editor/completion/describe";
import { completionItems, type ItemData } from "../editor/completion/to-lsp";
import { definition } from "../editor/definition";
import { diagnosticsOf } from "../editor/diagnostics";
import { fixesIn } from "../editor/fixes";
import { formatEdits } from "../editor/format";
import { foldingRanges } from "../editor/folding";
import { inlayHints } from "../editor/hints";
import { hover } from "../editor/hover/hover";
import { documentLinks } from "../editor/links";
import { highlights, references } from "../editor/references";
import { renameable, RenameRefusal, renamed } from "../editor/rename";
import { semanticTokens } from "../editor/semantic-tokens";
import { documentSymbols, flatSymbols } from "../editor/symbols";
import type { View } from "../editor/view";
import { rangeOf } from "../lines";
import { type Card, markdown, plain } from "../report/card";
import { figuresText } from "../report/figures-text";
import type { Session } from "./session";

interface Placed {
  readonly textDocument: { readonly uri: string };
}

type At = Placed & { readonly position: Position };

/** Answers a client's requests about its open texts. */
export function answerFeatures(connection: Connection, session: Session): void {
  const logged = (error: unknown): void => connection.console.error(error instanceof Error ? error.stack ?? error.message : String(error));

  /** The answer of a feature; null without a text, or where the feature fails, which is logged. */
  const about = <P extends Placed, R>(work: (view: View, params: P) => R | undefined) => (params: P, token: CancellationToken): R | null | ResponseError => {
    if (token.isCancellationRequested) return new ResponseError(LSPErrorCodes.RequestCancelled, "called off");
    try {
      const view = session.view(params.textDocument.uri);
      return (view && work(view, params)) ?? null;
    } catch (error) {
      if (error instanceof RenameRefusal) return new ResponseError(LSPErrorCodes.RequestFailed, error.message);
      logged(error);
      return null;
    }
  };

  const content = (card: Card, asMarkdown: boolean) =>
    asMarkdown ? { kind: MarkupKind.Markdown, value: markdown(card) } : { kind: MarkupKind.PlainText, value: plain(card) };

  connection.onHover(about((view, { position }: At) => {
    const told = hover(view, position);
    return told && { contents: content(told.card, session.client.markdown), range: told.range };
  }));
  connection.onDefinition(about((view, { position }: At) => definition(view, position)));
  connection.onReferences(about((view, { position, context }: At & { readonly context: { readonly includeDeclaration: boolean } }) =>
    references(view, position, context.includeDeclaration, session.designs())));
  connection.onDocumentHighlight(about((view, { position }: At) => highlights(view, position)));
  connection.onDocumentSymbol(about((view) => (session.client.outline ? documentSymbols(view) : flatSymbols(view))));
  connection.onDocumentLinks(about((view) => documentLinks(view)));
  connection.onFoldingRanges(about((view) => foldingRanges(view)));
  connection.onDocumentFormatting(about((view) => formatEdits(view)));
  connection.onDocumentRangeFormatting(about((view, { range }: Placed & { readonly range: Range }) => formatEdits(view, range)));
  connection.languages.inlayHint.on(about((view, { range }) => inlayHints(view, range)));
  connection.languages.semanticTokens.on(about((view) => semanticTokens(view)) as never);

  connection.onCompletion(about((view, params: At & { readonly context?: { readonly triggerKind: CompletionTriggerKind; readonly triggerCharacter?: string } }) => {
    const byTrigger = params.context?.triggerKind === CompletionTriggerKind.TriggerCharacter;
    const completion = complete(view, params.position, byTrigger ? params.context?.triggerCharacter : undefined);
    return completion && completionItems(view, completion, session.client.snippets);
  }));
  connection.onCompletionResolve((item: CompletionItem): CompletionItem => {
    try {
      const { uri, topic } = (item.data ?? {}) as Partial<ItemData>;
      const view = uri === undefined ? undefined : session.view(uri);
      const card = view && topic ? describe(view, topic) : undefined;
      return card ? { ...item, documentation: content(card, session.client.docMarkdown) } : item;
    } catch (error) {
      logged(error);
      return item;
    }
  });

  connection.onPrepareRename(about((view, { position }: At) => renameable(view, position)));
  connection.onRenameRequest(about((view, { position, newName }: At & { readonly newName: string }) => {
    const edits = renamed(view, position, newName, session.designs())
      .map(({ file, span }) => [file.uri, { range: rangeOf(file.parsed, span), newText: newName }] as const);
    return workspaceEdit(session, edits);
  }));

  connection.onCodeAction(about((view, { range, context }: Placed & { readonly range: Range; readonly context: { readonly only?: readonly string[] } }) => {
    if (context.only?.every((kind) => kind !== "" && kind !== CodeActionKind.QuickFix) === true) return [];
    return fixesIn(view, range).map(({ finding, fix, only }): CodeAction => ({
      title: fix.title, kind: CodeActionKind.QuickFix, diagnostics: diagnosticsOf(view, [finding], false), isPreferred: only,
      edit: workspaceEdit(session, fix.edits.flatMap((edit) => editOf(view, edit))),
    }));
  }));

  connection.onRequest(figuresTextRequest, async ({ uri }: FiguresTextParams, token: CancellationToken): Promise<FileText | null | ResponseError> => {
    await session.settled(uri);
    if (token.isCancellationRequested) return new ResponseError(LSPErrorCodes.RequestCancelled, "called off");
    const view = session.view(uri);
    return view ? { text: figuresText(view.analysis, [view.set]) } : null;
  });
}

function editOf(view: View, edit: FixEdit): (readonly [string, TextEdit])[] {
  const parsed = edit.file === view.uri ? view.parsed : view.service.parsed(edit.file);
  return parsed ? [[edit.file, { range: rangeOf(parsed, edit), newText: edit.text }]] : [];
}

/** Edits by file, stamped with the versions of the texts they are of where the client heeds that. */
function workspaceEdit(session: Session, edits: readonly (readonly [string, TextEdit])[]): WorkspaceEdit {
  const changes: Record<string, TextEdit[]> = {};
  for (const [uri, edit] of edits) (changes[uri] ??= []).push(edit);
  if (!session.client.versionedEdits) return { changes };
  return {
    documentChanges: Object.entries(changes).map(([uri, each]) => ({ textDocument: { uri, version: session.version(uri) ?? null }, edits: each })),
  };
}
