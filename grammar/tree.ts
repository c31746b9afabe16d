/**
 * The tree a text parses to. Every node knows its offsets (UTF-16, end exclusive); the tokens beside the tree keep
 * every character, so the text can be given back from them.
 */
export interface Span {
  readonly start: number;
  readonly end: number;
}

export interface NameNode extends Span {
  readonly type: "name";
  readonly text: string;
}

export interface PathNode extends Span {
  readonly type: "path";
  readonly names: readonly NameNode[];
}

export interface StringNode extends Span {
  readonly type: "string";
  /** The text between the quotes with `\"` and `\\` resolved. */
  readonly text: string;
}

/** One unit symbol of a quantity, `dm^2` of `75 g/dm^2` being { symbol: "dm", exponent: -2 }. */
export interface UnitTerm extends Span {
  readonly symbol: string;
  readonly exponent: number;
}

export interface UnitNode extends Span {
  readonly type: "unit";
  /** As typed, without spaces. */
  readonly text: string;
  readonly terms: readonly UnitTerm[];
}

export interface QuantityNode extends Span {
  readonly type: "quantity";
  readonly number: Span & { readonly value: number; readonly text: string };
  readonly unit?: UnitNode;
}

export interface FlagNode extends Span {
  readonly type: "flag";
  readonly yes: boolean;
}

/** A reference, a word, a figure, or (with `args`) a call: the resolver tells which. */
export interface NamedNode extends Span {
  readonly type: "named";
  readonly path: PathNode;
  readonly args?: readonly ValueNode[];
}

export interface PointNode extends Span {
  readonly type: "point";
  readonly items: readonly [ValueNode, ValueNode, ValueNode];
}

export interface GroupNode extends Span {
  readonly type: "group";
  readonly inner: ValueNode;
}

export interface ListNode extends Span {
  readonly type: "list";
  readonly items: readonly ValueNode[];
}

export interface NegateNode extends Span {
  readonly type: "negate";
  readonly inner: ValueNode;
}

export interface PowerNode extends Span {
  readonly type: "power";
  readonly base: ValueNode;
  readonly exponent: number;
}

export interface BinaryNode extends Span {
  readonly type: "binary";
  readonly operator: "+" | "-" | "*" | "/" | "±";
  /** Where the operator itself stands: dimension errors are shown here. */
  readonly at: Span;
  readonly left: ValueNode;
  readonly right: ValueNode;
}

/** `a to b`, from root to tip or start to end; `a .. b`, a range. */
export interface PairNode extends Span {
  readonly type: "pair";
  readonly operator: "to" | "..";
  readonly left: ValueNode;
  readonly right: ValueNode;
}

/** Stands where the parser had to go on without a value; an issue has said so already. */
export interface MissingNode extends Span {
  readonly type: "missing";
}

export type ValueNode =
  | QuantityNode
  | StringNode
  | FlagNode
  | NamedNode
  | PointNode
  | GroupNode
  | ListNode
  | NegateNode
  | PowerNode
  | BinaryNode
  | PairNode
  | MissingNode;

export interface EntryNode extends Span {
  readonly type: "entry";
  readonly path: PathNode;
  /** Absent when a word stood alone. */
  readonly equals?: Span;
  readonly value?: ValueNode;
}

export interface BodyNode extends Span {
  readonly type: "body";
  readonly open: Span;
  /** Absent when the brace was never closed. */
  readonly close?: Span;
  readonly items: readonly (EntryNode | BlockNode | WaiveNode)[];
}

export interface BlockNode extends Span {
  readonly type: "block";
  readonly kind: NameNode;
  readonly name?: NameNode;
  readonly title?: StringNode;
  readonly from?: PathNode;
  readonly body?: BodyNode;
}

export interface UseNode extends Span {
  readonly type: "use";
  readonly path?: StringNode;
  readonly name?: NameNode;
}

export interface LetNode extends Span {
  readonly type: "let";
  readonly name?: NameNode;
  readonly value?: ValueNode;
}

export interface ConditionNode extends Span {
  readonly type: "condition";
  readonly left: ValueNode;
  readonly operator: "<" | "<=" | ">" | ">=" | "within";
  readonly at: Span;
  /** The limit, or the lower one of `within`. */
  readonly right: ValueNode;
  /** The upper limit of `within`. */
  readonly upper?: ValueNode;
}

export interface RequireNode extends Span {
  readonly type: "require";
  readonly condition?: ConditionNode;
  readonly loadings: readonly NameNode[];
  readonly because?: StringNode;
}

export interface WaiveNode extends Span {
  readonly type: "waive";
  readonly check?: NameNode;
  readonly because?: StringNode;
}

export type StatementNode = UseNode | LetNode | RequireNode | WaiveNode | BlockNode;

export interface FileNode extends Span {
  readonly type: "file";
  readonly items: readonly StatementNode[];
}

/** A lexed piece of the text. All pieces in order, joined, are the text. */
export interface Piece extends Span {
  readonly kind: "name" | "keyword" | "number" | "string" | "symbol" | "comment" | "space" | "newline" | "unknown";
  readonly text: string;
}

/** A replacement of a stretch of the same text. */
export interface TextEdit extends Span {
  readonly text: string;
}

/** One thing wrong with the text itself: at the smallest place that shows it, with the edit that mends it if there is one. */
export interface SyntaxIssue extends Span {
  readonly message: string;
  readonly fix?: { readonly title: string; readonly edits: readonly TextEdit[] };
}

export interface ParsedFile {
  readonly text: string;
  readonly tree: FileNode;
  readonly pieces: readonly Piece[];
  readonly issues: readonly SyntaxIssue[];
}
