import { CompletionItemKind, InsertTextFormat, type CompletionItem } from "vscode-languageserver";
import { rangeIn, type View } from "../view";
import type { Completion } from "./complete";
import type { Item, Sort, Topic } from "./item";

const kinds: Readonly<Record<Sort, CompletionItemKind>> = {
  kind: CompletionItemKind.Class, property: CompletionItemKind.Property, statement: CompletionItemKind.Keyword, word: CompletionItemKind.EnumMember,
  unit: CompletionItemKind.Unit, block: CompletionItemKind.Variable, let: CompletionItemKind.Constant, function: CompletionItemKind.Function,
  figure: CompletionItemKind.Value, check: CompletionItemKind.Event, file: CompletionItemKind.File, loading: CompletionItemKind.Module,
};

/** What an item carries to be resolved by. */
export interface ItemData {
  readonly uri: string;
  readonly topic: Topic;
}

/** The items as a client takes them; with tab stops if it knows snippets. */
export function completionItems(view: View, { cursor, items }: Completion, snippets: boolean): CompletionItem[] {
  const seen = new Set<string>();
  const once = items.filter(({ label }) => !seen.has(label) && seen.add(label) !== undefined);
  return once.map((item, i) => ({
    label: item.label, kind: kinds[item.sort], detail: item.detail, filterText: item.label,
    sortText: `${item.rank}${String(i).padStart(4, "0")}`,
    insertTextFormat: snippets && item.snippet !== undefined ? InsertTextFormat.Snippet : InsertTextFormat.PlainText,
    textEdit: { range: rangeIn(view, item.replace ?? cursor.word), newText: inserted(item, snippets) },
    ...(item.topic ? { data: { uri: view.uri, topic: item.topic } satisfies ItemData } : {}),
  }));
}

const inserted = ({ label, text, snippet }: Item, snippets: boolean): string => (snippets ? snippet : undefined) ?? text ?? label;
