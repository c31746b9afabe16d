import { findProperty, kinds, kindsWithin, statements } from "../../../grammar/vocabulary";
import type { Kind, Property } from "../../../grammar/vocabulary/schema";
import snippets from "../../../grammar/generated/snippets.json";
import type { View } from "../view";
import { figureItems, limitItems } from "./figures";
import type { Item } from "./item";
import type { Cursor, Scope } from "./scope";
import { visibleBlocks, blockOf } from "./visible";

/** What may begin an entry at the cursor: properties not yet written, blocks, statements. */
export function entryItems(view: View, cursor: Cursor): Item[] {
  const { scope } = cursor;
  const blocks = [...changedParts(view, scope), ...kindItems(scope)];
  if (scope.kind === "file") return [...blocks, ...Object.keys(statements).map(statementItem)];
  const written = writtenIn(scope, cursor);
  const named = scope.kind === "limits" ? limitItems(written) : scope.kind === "weighed" ? measured(view, written) : [];
  return [...propertyItems(cursor, written), ...named, ...blocks, statementItem("waive")];
}

/** Properties written in other entries than the one at the cursor. */
function writtenIn({ properties }: Scope, { before, word }: Cursor): ReadonlySet<string> {
  const own = before[0]?.start ?? word.start;
  return new Set([...properties].filter(([, start]) => start !== own).map(([name]) => name));
}

function propertyItems({ scope, next }: Cursor, written: ReadonlySet<string>): Item[] {
  const kind = kinds[scope.kind];
  const all = kind ? Object.values(kind.properties) : [];
  const copied = scope.from === undefined ? undefined : findProperty(scope.kind, "drop");
  const clashes = (property: Property) => kind?.exclusive.some((group) => group.includes(property.name) && group.some((name) => written.has(name))) === true;
  const children = new Set(scope.children.map((child) => child.kind));
  const missing = ({ needed, unless }: Property) => needed && scope.from === undefined && !unless.some((name) => written.has(name) || children.has(name));
  return [...all, ...(copied ? [copied] : [])]
    .filter((property) => !written.has(property.name) && !clashes(property))
    .map((property): Item => ({
      label: property.name, sort: "property", rank: missing(property) ? 0 : property.later ? 2 : 1, detail: missing(property) ? "needed" : undefined,
      ...(next?.text === "=" ? {} : { text: `${property.name} = `, snippet: `${property.name} = ${placeholder(property)}` }),
      topic: { about: "property", name: property.name, of: scope.kind },
    }));
}

const escaped = (text: string): string => text.replace(/[\\$}]/g, "\\$&");

/** The example as a tab stop; of a number with a unit only the number, so that the unit stays. */
export function placeholder({ form, example }: Property): string {
  if (form.form === "word") return choice(form.words, example);
  if (form.form === "flag") return choice(["yes", "no"], example);
  const measured = /^(-?[\d.]+) (\S+)$/.exec(example);
  return measured ? `\${1:${measured[1]}} ${escaped(measured[2])}` : `\${1:${escaped(example)}}`;
}

const choice = (words: readonly string[], first: string): string =>
  `\${1|${[first, ...words.filter((word) => word !== first)].join(",")}|}`;

function kindItems(scope: Scope): Item[] {
  const around = scope.kind === "place" ? "assembly" : scope.kind;
  const once = new Set(["airframe", "air", "limits"]);
  return kindsWithin(around)
    .filter((kind) => !(once.has(kind.name) && scope.children.some((child) => child.kind === kind.name)))
    .map((kind) => kindItem(kind));
}

type Snippets = Readonly<Record<string, { readonly body: readonly string[] } | undefined>>;

const bodyOf = (name: string): string | undefined => (snippets as Snippets)[name]?.body.join("\n").replace(/\t/g, "  ");

const kindItem = (kind: Kind): Item =>
  ({ label: kind.name, sort: "kind", rank: kind.later ? 4 : 3, snippet: bodyOf(kind.name), topic: { about: "kind", name: kind.name } });

const statementItem = (name: string): Item =>
  ({ label: name, sort: "statement", rank: 5, text: `${name} `, snippet: bodyOf(name), topic: { about: "statement", name } });

/** In a loading: the parts that it may change. */
function changedParts(view: View, scope: Scope): Item[] {
  if (scope.kind !== "loading") return [];
  const own = blockOf(view, scope);
  const there = new Set(scope.children.map((child) => child.name));
  return [...visibleBlocks(view.analysis.model.file.root)]
    .filter(([name, block]) => block !== own && !there.has(name) && kinds[block.kind]?.within.includes("loading"))
    .map(([name, block]): Item => {
      const head = block.named ? `${block.kind} ${name}` : block.kind;
      return { label: head, sort: "block", rank: 2, text: `${head} {  }`, snippet: `${head} { $0 }`, detail: "changed in this loading", topic: { about: "block", name } };
    });
}

const measured = (view: View, written: ReadonlySet<string>): Item[] =>
  figureItems(view).filter((item) => !written.has(item.label)).map((item) => ({ ...item, text: `${item.label} = ` }));
