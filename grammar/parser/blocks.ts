import { EOF, type IToken, type OrMethodOpts, type ParserMethod } from "chevrotain";
import { Dot, endOf, From, LCurly, Name, RCurly, Semicolon } from "../tokens";
import type { BlockNode, BodyNode, EntryNode, NameNode, PathNode, StatementNode, StringNode, WaiveNode } from "../tree";
import { deepest, edit, equalsLike, spanOf } from "./context";
import { balanceOf, belongsOutside, closesOuter, closingEdit, isKind, type Balance, type Open } from "./recovery";
import { Statements } from "./statements";

type Item = EntryNode | BlockNode | WaiveNode;

/** Entries, and the blocks that hold them. */
export abstract class Blocks extends Statements {
  protected abstract readonly stray: ParserMethod<[], void>;
  protected abstract readonly rest: ParserMethod<[], void>;
  private opens: Open[] = [];
  /** Statements met inside a block, which belong to the file. */
  protected hoisted: StatementNode[] = [];
  protected balance: Balance = { opened: new Set(), closed: new Set() };
  /** Blocks closed for want of a `}`: as many stray ones further on are the same mistake. */
  protected lent = 0;
  private lineIndent = 1;

  protected override begin(text: string, tokens: IToken[]): void {
    super.begin(text, tokens);
    this.opens = [];
    this.hoisted = [];
    this.balance = balanceOf(tokens);
    this.lent = 0;
  }

  protected readonly beginItem = (): void => {
    this.faulted = false;
    if (!this.sameLine()) this.lineIndent = this.next.startColumn ?? 1;
  };

  protected get outside(): boolean {
    return this.opens.length === 0;
  }

  protected readonly isBlock = (): boolean =>
    this.opens.length < deepest && (this.blockAhead() || (isKind(this.next.image) && (this.headAhead() || this.wrongHeadAhead())));

  /** `wing main` and nothing after it that could make an entry: a block without its brace. */
  private headAhead(): boolean {
    const [kind, name, after] = [this.LA(1), this.LA(2), this.LA(3)];
    if (name.tokenType !== Name || name.startLine !== kind.startLine) return false;
    return after.startLine !== kind.startLine || after.tokenType === Semicolon || after.tokenType === RCurly;
  }

  /** `wing tail-main {`: something that is no name, but a brace. */
  private wrongHeadAhead(): boolean {
    for (let k = 2; k < 12; k++) {
      const { tokenType, startLine } = this.LA(k);
      if (startLine !== this.next.startLine || equalsLike.has(tokenType) || tokenType === Semicolon || tokenType === RCurly) return false;
      if (tokenType === LCurly) return true;
    }
    return false;
  }

  protected readonly entry: ParserMethod<[], EntryNode> = this.RULE("entry", () => {
    const path = this.SUBRULE(this.path);
    const broken = this.last.tokenType === Dot;
    const assigned = this.SUBRULE(this.assigned, { ARGS: [this.text.slice(path.start, path.end), path.start] });
    return this.ACTION((): EntryNode => {
      const { start } = path;
      const { end } = this.here;
      if (!assigned) this.sayAlone(path);
      if (!assigned || broken) return { type: "entry", start, end, path };
      const equals = assigned.equals ? spanOf(assigned.equals) : { start: path.end, end: path.end };
      return { type: "entry", start, end, path, equals, value: assigned.value };
    });
  });

  private sayAlone({ start, end }: PathNode): void {
    const typed = this.text.slice(start, end);
    const said = isKind(typed) ? `write { } after it, or ${typed} = value` : `write ${typed} = value`;
    this.fault({ start, end }, `${typed} stands alone; ${said}`);
  }

  protected readonly block: ParserMethod<[], BlockNode> = this.RULE("block", () => {
    const regular = this.recording || this.blockAhead() || this.headAhead();
    const kind = this.CONSUME(Name);
    const indent = this.lineIndent;
    const wrong = this.OPTION({ GATE: () => !regular, DEF: () => this.SUBRULE(this.wrongName) });
    const name = this.OPTION2({ GATE: this.nameFollows, DEF: () => this.SUBRULE(this.name) }) ?? wrong;
    const title = this.OPTION3({ GATE: this.sameLine, DEF: () => this.SUBRULE(this.string) });
    const from = this.OPTION4({ GATE: this.sameLine, DEF: () => {
      this.CONSUME(From);
      const path = this.OPTION5({ GATE: this.sameLine, DEF: () => this.SUBRULE(this.path) });
      this.ACTION(() => { if (!path) this.fault(this.here, "a name is missing after from; write the block to copy"); });
      return path;
    } });
    const copied = from !== undefined || this.last.tokenType === From;
    const body = this.OPTION6({ GATE: this.bodyAhead, DEF: () => this.SUBRULE(this.body, { ARGS: [kind, indent] }) });
    return this.ACTION(() => {
      if (!body && !copied) this.sayNoBody(kind.startOffset, this.here.end);
      return this.blockNode(kind, name, title, from, body);
    });
  });

  private readonly nameFollows = (): boolean => this.sameLine() && this.next.tokenType !== From;
  private readonly bodyAhead = (): boolean => this.next.tokenType === LCurly || this.bracelessAhead();

  /** Lines indented under a head without its `{`, and a `}` too many for it somewhere below. */
  private bracelessAhead(): boolean {
    return this.balance.closed.size > 0 && this.last.tokenType !== From && !this.sameLine() &&
      (this.next.startColumn ?? 0) > this.lineIndent && this.isName(1);
  }

  protected sayNoBody(start: number, end: number): void {
    this.fault({ start: end, end }, `${this.text.slice(start, end)} has no body; write { } after it`, "Add { }", edit(end, end, " { }"));
  }

  private blockNode(kind: IToken, name?: NameNode, title?: StringNode, from?: PathNode, body?: BodyNode): BlockNode {
    const start = kind.startOffset;
    const node: BlockNode = { type: "block", start, end: this.here.end, kind: { type: "name", ...spanOf(kind), text: kind.image } };
    return { ...node, ...(name && { name }), ...(title && { title }), ...(from && { from }), ...(body && { body }) };
  }

  private readonly body: ParserMethod<[kind?: IToken, indent?: number], BodyNode> = this.RULE("body", (kind?: IToken, indent?: number) => {
    const items: Item[] = [];
    const brace = this.OPTION(() => this.CONSUME(LCurly));
    this.ACTION(() => { if (kind) this.openBody(kind, indent ?? 1, brace); });
    this.MANY({ GATE: this.inside, DEF: () => {
      this.ACTION(this.beginItem);
      const item = this.OR(this.inBody);
      if (item) items.push(item);
      this.OPTION2(this.restOfLine);
    } });
    const close = this.OPTION3({ GATE: this.closesOwn, DEF: () => this.CONSUME(RCurly) });
    return this.ACTION(() => this.closeBody(items, close));
  });

  private readonly inBody: OrMethodOpts<Item | undefined> = { IGNORE_AMBIGUITIES: true, DEF: [
    { ALT: () => void this.CONSUME(Semicolon) },
    { GATE: () => this.isBlock(), ALT: () => this.SUBRULE(this.block) },
    { GATE: () => this.isEntry(), ALT: () => this.SUBRULE(this.entry) },
    { ALT: () => this.SUBRULE(this.waiveStatement) },
    { ALT: () => void this.SUBRULE(this.misplaced) },
    { ALT: () => void this.SUBRULE(this.stray) },
  ] };

  protected readonly restOfLine = { GATE: () => this.restAhead(), DEF: () => this.SUBRULE(this.rest) };

  private readonly isEntry = (): boolean => this.isName(1) || this.assignmentAhead();

  /** Statements of the file inside a block: said, and read as if they stood outside. */
  private readonly misplaced: ParserMethod<[], void> = this.RULE("misplaced", () => {
    const word = this.next;
    const statement = this.OR<StatementNode>([
      { ALT: () => this.SUBRULE(this.letStatement) },
      { ALT: () => this.SUBRULE(this.requireStatement) },
      { ALT: () => this.SUBRULE(this.useStatement) },
    ]);
    this.ACTION(() => {
      this.hoisted.push(statement);
      this.fault(spanOf(word), `${word.image} stands outside all blocks; move it there`);
    });
  });

  private openBody(kind: IToken, indent: number, brace: IToken | undefined): void {
    const { end } = this.here;
    const head = this.text.slice(kind.startOffset, brace ? brace.startOffset : end).trim();
    const span = brace ? spanOf(brace) : { start: end, end };
    if (!brace) this.fault(span, `${head} has no {; write it here`, "Add {", edit(end, end, " {"));
    const inner = this.sameLine() ? 0 : (this.next.startColumn ?? 0);
    this.opens.push({ kind: kind.image, head, line: kind.startLine ?? 0, indent, inner, brace: span });
  }

  private closeBody(items: readonly Item[], close: IToken | undefined): BodyNode {
    const own = this.opens.pop();
    const open = own?.brace ?? this.here;
    const { end } = this.here;
    if (close) return { type: "body", start: open.start, end, open, close: spanOf(close), items };
    if (own) {
      this.lent++;
      this.faulted = false;
      this.fault(open, `"{" is never closed; write } at the end of ${own.head}`, "Add }", closingEdit(own, this.last, this.text));
    }
    return { type: "body", start: open.start, end, open, items };
  }

  /** Does the innermost block go on here? */
  private readonly inside = (): boolean => {
    const { next } = this;
    if (next.tokenType === RCurly) return this.strayBrace();
    if (next.tokenType === EOF) return false;
    return this.sameLine() || !belongsOutside(this.opens, next, this.isBlock(), this.balance.opened.size > 0);
  };

  private readonly closesOwn = (): boolean =>
    this.balance.opened.size === 0 || !closesOuter(this.opens, this.next, !this.sameLine());

  /** A `}` too many, told from the block's own by where it stands. */
  private strayBrace(): boolean {
    if (this.balance.closed.size === 0) return false;
    const own = this.opens[this.opens.length - 1];
    const { startColumn = 0, startLine } = this.next;
    if (!this.sameLine()) return startColumn > own.indent && !this.opens.some((open) => open.indent === startColumn);
    return own.line !== startLine && this.last.tokenType === RCurly && endOf(this.last) > own.brace.end;
  }
}
