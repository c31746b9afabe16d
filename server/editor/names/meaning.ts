import type { Span } from "../../../grammar/tree";
import type { Property } from "../../../grammar/vocabulary/schema";
import type { Instance, SourceFile } from "../../model/resolve/instance";

/** What a word of the text stands for. */
export type Meaning =
  | { readonly type: "kind"; readonly kind: string }
  | { readonly type: "property"; readonly property: Property; readonly block: Instance }
  /** A block by its name, where it is declared or meant. */
  | { readonly type: "block"; readonly block: Instance }
  /** `right` or `left` of a mirrored block. */
  | { readonly type: "side"; readonly block: Instance; readonly side: string }
  | { readonly type: "let"; readonly file: SourceFile; readonly name: string }
  /** The name a `use` gives a file; `used` is that file where it can be read. */
  | { readonly type: "alias"; readonly file: SourceFile; readonly name: string; readonly used?: SourceFile }
  /** The file name of a `use`. */
  | { readonly type: "file"; readonly file: SourceFile }
  /** A value that follows from a block, `main.span`. */
  | { readonly type: "derived"; readonly block: Instance; readonly name: string }
  | { readonly type: "word"; readonly property: Property; readonly block: Instance; readonly word: string }
  | { readonly type: "function"; readonly name: string }
  | { readonly type: "figure"; readonly name: string; readonly loading?: string }
  | { readonly type: "check"; readonly code: string };

/** One place where something is named. Places may lie in one another: a part within the name of its figure. */
export interface Occurrence extends Span {
  readonly meaning: Meaning;
  /** Is this where it gets its name? */
  readonly declares: boolean;
}
