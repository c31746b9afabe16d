import { type DocumentSymbol, type SymbolInformation, SymbolKind } from "vscode-languageserver";
import type { BlockNode, Span, StatementNode } from "../../grammar/tree";
import { kinds } from "../../grammar/vocabulary";
import type { Instance } from "../model/resolve/instance";
import { pathsOf } from "./hover/blocks";
import { rangeIn, type View } from "./view";

/** The outline: blocks with their weight, named values, files, what is required. */
export function documentSymbols(view: View): DocumentSymbol[] {
  const { file } = view.analysis.model;
  return file.tree.items.flatMap((item) => symbolOf(view, item, file.root));
}

function symbolOf(view: View, item: StatementNode, root: Instance): DocumentSymbol[] {
  switch (item.type) {
    case "block":
      return [blockSymbol(view, item, root)];
    case "let":
      return item.name ? [symbol(view, item.name.text, textOf(view, item.value), SymbolKind.Constant, item, item.name)] : [];
    case "use":
      return item.name ? [symbol(view, item.name.text, item.path?.text ?? "", SymbolKind.Module, item, item.name)] : [];
    case "require":
      return item.condition ? [symbol(view, textOf(view, item.condition), "required", SymbolKind.Boolean, item, item.condition)] : [];
    case "waive":
      return [];
  }
}

const symbol = (view: View, name: string, detail: string, kind: SymbolKind, whole: Span, name_: Span, children?: DocumentSymbol[]): DocumentSymbol =>
  ({ name, detail, kind, range: rangeIn(view, whole), selectionRange: rangeIn(view, name_), ...(children?.length ? { children } : {}) });

function textOf({ parsed }: View, span: Span | undefined): string {
  return span ? parsed.text.slice(span.start, span.end).replace(/\s+/g, " ") : "";
}

function blockSymbol(view: View, node: BlockNode, parent: Instance): DocumentSymbol {
  const found = parent.children.get(node.name?.text ?? node.kind.text);
  const block = found?.node === node ? found : undefined;
  const inner = (node.body?.items ?? []).filter((item): item is BlockNode => item.type === "block");
  const children = inner.map((child) => blockSymbol(view, child, block ?? parent));
  const detail = [node.name || node.title ? node.kind.text : "", block ? weightOf(view, block) : ""].filter(Boolean).join(", ");
  const name = node.name?.text ?? node.title?.text ?? node.kind.text;
  return symbol(view, name || node.kind.text, detail, kindOf(node.kind.text), node, node.name ?? node.kind, children);
}

function weightOf(view: View, block: Instance): string {
  const weights = pathsOf(view.set, block).map((path) => view.set.value(`mass.${path}`));
  return weights.length === 1 && weights[0] ? view.analysis.say(weights[0]) : "";
}

const special: Readonly<Record<string, SymbolKind>> = {
  airframe: SymbolKind.Package, loading: SymbolKind.Enum, limits: SymbolKind.Enum, weighed: SymbolKind.Enum,
  material: SymbolKind.Struct, foil: SymbolKind.Struct, assembly: SymbolKind.Namespace, place: SymbolKind.Object,
};

const kindOf = (kind: string): SymbolKind => special[kind] ?? (kinds[kind]?.massive ? SymbolKind.Class : SymbolKind.Field);

/** The same without levels, for clients that know none. */
export function flatSymbols(view: View): SymbolInformation[] {
  const flatten = (symbols: readonly DocumentSymbol[], containerName?: string): SymbolInformation[] =>
    symbols.flatMap(({ name, kind, range, children }) => [
      { name, kind, containerName, location: { uri: view.uri, range } }, ...flatten(children ?? [], name),
    ]);
  return flatten(documentSymbols(view));
}
