import { withArticle } from "./words";

/** Kinds of which a block, or the file, holds one: a second one would say something else of the same thing. */
export const single: ReadonlySet<string> = new Set(["airframe", "air", "loads", "limits", "printer", "skin", "motor", "propeller", "fan", "esc"]);

/** What is said of a second one beside the first. */
export const already = (kind: string, first = ""): string => `there is ${withArticle(kind)} already${first && `, ${first}`}; only one can stand here`;
