import type { Piece } from "../../../grammar/tree";
import { findProperty, kinds } from "../../../grammar/vocabulary";
import { findUnit } from "../../../grammar/units/units";
import type { Property } from "../../../grammar/vocabulary/schema";
import type { Cursor } from "./scope";

/** What may stand at the cursor. */
export type Place =
  | { readonly type: "entry" }
  /** One of these keywords goes on. */
  | { readonly type: "words"; readonly words: readonly string[] }
  /** What is copied, after `from`. */
  | { readonly type: "origin"; readonly kind: string }
  | { readonly type: "check" }
  | { readonly type: "loading" }
  | ValuePlace;

export interface ValuePlace {
  readonly type: "value";
  /** What is given the value: a property, or in `limits` and `weighed` any name. */
  readonly property?: Property;
  readonly name: string;
  /** `require`, `limits`, `weighed`: figures may be read. */
  readonly figures: boolean;
  /** The value as far as it stands before the word. */
  readonly tokens: readonly Piece[];
  readonly statement: "let" | "require" | "entry";
}

const isWord = (piece: Piece, word: string) => piece.kind === "keyword" && piece.text === word;

export function placeOf(cursor: Cursor): Place | undefined {
  const { before } = cursor;
  const [first] = before;
  if (!first) return { type: "entry" };
  if (first.kind === "keyword") return afterKeyword(first.text, before);
  const equals = before.findIndex((piece) => piece.text === "=");
  if (equals > 0) return entryValue(cursor, equals);
  const from = before.findIndex((piece) => isWord(piece, "from"));
  if (from > 0) return before.length === from + 1 || before.at(-1)!.text === "." ? { type: "origin", kind: first.text } : undefined;
  const head = before.length <= 2 && before.every((piece) => piece.kind === "name") && kinds[first.text] !== undefined;
  return head ? { type: "words", words: ["from"] } : undefined;
}

function entryValue({ before, scope }: Cursor, equals: number): ValuePlace {
  const name = before.slice(0, equals).map((piece) => piece.text).join("");
  const open = kinds[scope.kind]?.open === true;
  return { type: "value", property: findProperty(scope.kind, name), name, figures: open, tokens: before.slice(equals + 1), statement: "entry" };
}

function afterKeyword(word: string, before: readonly Piece[]): Place | undefined {
  const rest = before.slice(1);
  if (word === "waive") return rest.length === 0 ? { type: "check" } : rest.length === 1 ? { type: "words", words: ["because"] } : undefined;
  if (word === "use") return rest.length === 1 && rest[0].kind === "string" ? { type: "words", words: ["as"] } : undefined;
  if (word === "let") {
    const equals = rest.findIndex((piece) => piece.text === "=");
    return equals < 0 ? undefined : { type: "value", name: rest[0].text, figures: false, tokens: rest.slice(equals + 1), statement: "let" };
  }
  if (word !== "require" || rest.some((piece) => isWord(piece, "because"))) return undefined;
  const loadings = rest.findIndex((piece) => isWord(piece, "for"));
  if (loadings < 0) return { type: "value", name: "", figures: true, tokens: rest, statement: "require" };
  const last = rest.at(-1)!;
  return isWord(last, "for") || last.text === "," ? { type: "loading" } : { type: "words", words: ["because"] };
}

const operators = new Set(["+", "-", "−", "*", "/", "±", "+-", ",", "to", "..", "(", "[", "<", "<=", ">", ">=", "=", "within", "^"]);

/** What the word at the cursor would be in the value. */
export type Slot =
  | { readonly type: "operand" }
  /** After a number: its unit, `written` being what of a compound unit stands already. */
  | { readonly type: "unit"; readonly written: readonly Piece[] }
  /** After a dot: `names` stand before it. */
  | { readonly type: "member"; readonly names: readonly Piece[] }
  | { readonly type: "after" };

export function slotOf(tokens: readonly Piece[]): Slot {
  const last = tokens.at(-1);
  if (!last) return { type: "operand" };
  if (last.text === "." && last.kind === "symbol") return { type: "member", names: pathBefore(tokens) };
  if (last.kind === "number") return { type: "unit", written: [] };
  if (last.text === "/" || last.text === "*") {
    const written = unitBefore(tokens);
    if (written) return { type: "unit", written };
  }
  return operators.has(last.text) ? { type: "operand" } : { type: "after" };
}

/** The names of a path that ends with a dot. */
function pathBefore(tokens: readonly Piece[]): Piece[] {
  const names: Piece[] = [];
  for (let i = tokens.length - 1; i > 0 && tokens[i].text === "." && wordy(tokens[i - 1]); i -= 2) names.unshift(tokens[i - 1]);
  return names;
}

const wordy = (piece: Piece) => piece.kind === "name" || piece.kind === "keyword";

/** The pieces of a unit that goes on after `/` or `*`; undefined where that divides or multiplies values. */
function unitBefore(tokens: readonly Piece[]): Piece[] | undefined {
  let start = tokens.length - 1;
  while (start > 0 && tokens[start - 1].kind !== "number") start--;
  const written = tokens.slice(start);
  // `dm^2` holds a number of its own.
  if (start > 1 && tokens[start - 2]?.text === "^") return unitBefore([...tokens.slice(0, start - 2), tokens.at(-1)!]) && written;
  const fits = written.every((piece) => findUnit(piece.text) !== undefined || piece.text === "/" || piece.text === "*");
  return start > 0 && written.length > 1 && fits ? written : undefined;
}
