import type { DimensionName } from "../../../grammar/units/dimension";
import { functions } from "../../../grammar/vocabulary";
import type { Form } from "../../../grammar/vocabulary/schema";
import type { Piece } from "../../../grammar/tree";
import type { Cursor } from "./scope";

/** The function whose arguments the cursor stands among, and which of them. */
export interface Called {
  readonly name: string;
  readonly argument: number;
}

export function calledFunction({ before, brackets }: Cursor): Called | undefined {
  const open = brackets.at(-1);
  if (open?.text !== "(") return undefined;
  const at = before.indexOf(open);
  const name = before[at - 1]?.kind === "name" ? before[at - 1].text : undefined;
  if (name === undefined || !Object.hasOwn(functions, name)) return undefined;
  return { name, argument: commasIn(before.slice(at + 1)) };
}

/** Commas that are not within brackets of their own. */
function commasIn(pieces: readonly Piece[]): number {
  let depth = 0;
  let commas = 0;
  for (const { text } of pieces) {
    if (text === "(" || text === "[") depth++;
    else if (text === ")" || text === "]") depth--;
    else if (text === "," && depth === 0) commas++;
  }
  return commas;
}

/** The dimensions a number at the cursor may have; none where nothing is known. */
export function wantedDimensions(cursor: Cursor, form: Form | undefined, compared: DimensionName | undefined): readonly DimensionName[] {
  const called = calledFunction(cursor);
  if (called) return inCall(called, form);
  if (form?.form === "point") return ["length"];
  const own = form?.form === "quantity" || form?.form === "stretch" ? form.dimension : compared;
  if (own === undefined) return [];
  const tolerance = cursor.before.some((piece) => piece.text === "±" || piece.text === "+-");
  return tolerance ? [own, "ratio"] : [own];
}

function inCall({ name, argument }: Called, form: Form | undefined): readonly DimensionName[] {
  if (name === "flat" || (name === "point" && argument > 0)) return ["ratio"];
  if (["sin", "cos", "tan"].includes(name)) return ["angle"];
  const same = ["abs", "min", "max", "round"].includes(name) && (form?.form === "quantity" || form?.form === "stretch");
  return same ? [form.dimension] : [];
}
