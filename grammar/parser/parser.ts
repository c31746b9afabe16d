import { EOF, type IToken, type ParserMethod } from "chevrotain";
import { nearest } from "../nearest";
import { Any, Dot, endOf, From, LCurly, Name, RCurly, Semicolon } from "../tokens";
import type { BlockNode, BodyNode, EntryNode, FileNode, LetNode, NameNode, PathNode, StatementNode, StringNode, SyntaxIssue,
  WaiveNode } from "../tree";
import { kinds } from "../vocabulary/index";
import { edit, equalsLike, spanOf, statementWords } from "./context";
import { balanceOf, belongsOutside, closesOuter, closingEdit, type Balance, type Open } from "./recovery";
import { Statements } from "./statements";

type Item = EntryNode | BlockNode | WaiveNode;
const statementNames = ["use", "let", "require", "waive"];

/** The language's grammar. Every rule is total: any row of tokens gives a tree, and issues for what it lacks. */
export class AirframeParser extends Statements {
  private opens: Open[] = [];
  private indents: number[] = [];
  private hoisted: StatementNode[] = [];
  private balance: Balance = { opened: new Set(), closed: new Set() };
  /** Blocks closed for want of a `}`: as many stray ones further on are the same mistake. */
  private lent = 0;
  private braces = 0;
  private lineIndent = 1;

  constructor(skipValidations = true) {
    super(skipValidations);
    this.performSelfAnalysis();
    this.recording = false;
  }

  /** Never throws, whatever the tokens. */
  read(text: string, tokens: IToken[]): { readonly tree: FileNode; readonly issues: SyntaxIssue[] } {
    this.begin(text, tokens);
    this.opens = [];
    this.indents = [];
    this.hoisted = [];
    this.balance = balanceOf(tokens);
    this.lent = 0;
    const tree = this.file();
    for (const error of this.errors) this.issues.push({ ...spanOf(error.token), message: error.message });
    return { tree, issues: this.issues };
  }

  private readonly beginItem = (): void => {
    this.faulted = false;
    if (this.beginsLine()) this.lineIndent = this.next.startColumn ?? 1;
  };

  private beginsLine(): boolean {
    return !this.sameLine();
  }

  private readonly isBlock = (): boolean => this.opens.length < 64 && (this.blockAhead() || this.headAhead());

  /** `wing main`, `wing "Main"` with nothing after it that could make an entry: a block without its brace. */
  private headAhead(): boolean {
    if (!this.isName(1) || this.LA(2).startLine !== this.next.startLine || equalsLike.has(this.LA(2).tokenType)) return false;
    if (!Object.hasOwn(kinds, this.next.image) || !this.isName(2)) return false;
    const third = this.LA(3);
    return third.startLine !== this.next.startLine || third.tokenType === Semicolon || third.tokenType === RCurly;
  }

  private readonly isAssignment = (): boolean => this.assignmentAhead();

  private readonly file: ParserMethod<[], FileNode> = this.RULE("file", () => {
    const items: StatementNode[] = [];
    this.MANY(() => {
      this.ACTION(this.beginItem);
      const item = this.OR<StatementNode | undefined>({ IGNORE_AMBIGUITIES: true, DEF: [
        { ALT: () => {
          this.CONSUME(Semicolon);
          return undefined;
        } },
        { GATE: this.isBlock, ALT: () => this.SUBRULE(this.block) },
        { ALT: () => this.SUBRULE(this.letStatement) },
        { ALT: () => this.SUBRULE(this.requireStatement) },
        { ALT: () => this.SUBRULE(this.waiveStatement) },
        { ALT: () => this.SUBRULE(this.useStatement) },
        { GATE: this.isAssignment, ALT: () => this.SUBRULE(this.looseEntry) },
        { ALT: () => {
          this.SUBRULE(this.stray);
          return undefined;
        } },
      ] });
      this.ACTION(() => { if (item) items.push(item); });
      this.OPTION({ GATE: this.restAhead, DEF: () => this.SUBRULE(this.rest) });
    });
    return this.ACTION((): FileNode => ({ type: "file", start: 0, end: this.text.length, items: [...items, ...this.hoisted] }));
  });

  /** A property outside all blocks, read as the `let` it may have been meant to be. */
  private readonly looseEntry: ParserMethod<[], LetNode | undefined> = this.RULE("looseEntry", () => {
    const entry = this.SUBRULE(this.entry);
    return this.ACTION((): LetNode | undefined => {
      const { names, start, end } = entry.path;
      const typed = this.text.slice(start, end);
      this.faulted = false;
      this.fault({ start, end }, `${typed} stands in no block; a value for the whole file is written let ${typed} = …`, "Add let",
        edit(start, start, "let "));
      if (names.length !== 1 || !entry.value) return undefined;
      return { type: "let", start, end: entry.end, name: names[0], value: entry.value };
    });
  });

  /** What can begin no statement. */
  private readonly stray: ParserMethod<[], void> = this.RULE("stray", () => {
    const token = this.SUBRULE(this.any);
    this.ACTION(() => this.sayStray(token));
  });

  private sayStray(token: IToken): void {
    const { image, tokenType } = token;
    const span = spanOf(token);
    if (tokenType === RCurly) {
      if (this.lent > 0) {
        this.lent--;
        this.faulted = true;
      } else this.fault(span, "`}` closes nothing; remove it", "Remove }", edit(span.start, span.end, ""));
    } else if (tokenType === Name) {
      const meant = nearest(image, [...statementNames, ...Object.keys(kinds)]);
      const alone = Object.hasOwn(kinds, image);
      if (alone) this.fault({ start: span.end, end: span.end }, `${image} has no body; write { } after it`, "Add { }", edit(span.end, span.end, " { }"));
      else if (meant) this.fault(span, `${image} is no statement; did you mean ${meant}?`, `Write ${meant}`, edit(span.start, span.end, meant));
      else this.fault(span, `${image} is no statement; one is use, let, require, waive or a block with { }`);
    } else this.unexpected(token);
  }

  protected readonly any: ParserMethod<[], IToken> = this.RULE("any", () => this.CONSUME(Any));

  /** After an entry, the rest of its line: another entry without its `;`, or what has no place there. */
  private readonly rest: ParserMethod<[], void> = this.RULE("rest", () => {
    this.ACTION(() => {
      this.braces = 0;
      if (this.anotherAhead()) this.missingSemicolon();
      else this.unexpected(this.next);
    });
    this.MANY({ GATE: this.junkAhead, DEF: () => {
      const token = this.SUBRULE(this.any);
      this.ACTION(() => this.countBraces(token));
    } });
  });

  private anotherAhead(): boolean {
    return statementWords.has(this.next.tokenType) || this.assignmentAhead() || this.isBlock();
  }

  private missingSemicolon(): void {
    const { start, end } = this.here;
    this.fault({ start, end }, `a ; is missing before ${this.next.image}; it parts entries on one line`, "Add ;", edit(start, end, " ;"));
  }

  private countBraces({ tokenType, startOffset }: IToken): void {
    if (tokenType === LCurly && !this.balance.opened.has(startOffset)) this.braces++;
    else if (tokenType === RCurly) this.braces--;
  }

  private readonly junkAhead = (): boolean => (this.braces > 0 ? this.next.tokenType !== EOF : this.restAhead() && !this.anotherAhead());

  protected readonly entry: ParserMethod<[], EntryNode> = this.RULE("entry", () => {
    const path = this.SUBRULE(this.path);
    const broken = this.last.tokenType === Dot;
    const assigned = this.SUBRULE(this.assigned, { ARGS: [this.textOf(path), path.start] });
    return this.ACTION((): EntryNode => {
      const { start } = path;
      const { end } = this.here;
      if (!assigned) this.sayAlone(path);
      if (!assigned || broken) return { type: "entry", start, end, path };
      const equals = assigned.equals ? spanOf(assigned.equals) : { start: path.end, end: path.end };
      return { type: "entry", start, end, path, equals, value: assigned.value };
    });
  });

  private textOf(path: PathNode): string {
    return this.text.slice(path.start, path.end);
  }

  private sayAlone(path: PathNode): void {
    const typed = this.textOf(path);
    this.fault({ start: path.start, end: path.end }, `${typed} stands alone; write ${typed} = value, or { } after a block's name`);
  }

  protected readonly block: ParserMethod<[], BlockNode> = this.RULE("block", () => {
    const kind = this.CONSUME(Name);
    const indent = this.lineIndent;
    const name = this.OPTION({ GATE: this.nameFollows, DEF: () => this.SUBRULE(this.name) });
    const title = this.OPTION2({ GATE: this.sameLine, DEF: () => this.SUBRULE(this.string) });
    const from = this.OPTION3({ GATE: this.sameLine, DEF: () => {
      this.CONSUME(From);
      const path = this.OPTION4({ GATE: this.sameLine, DEF: () => this.SUBRULE(this.path) });
      this.ACTION(() => { if (!path) this.fault(this.here, "a name is missing after from"); });
      return path;
    } });
    const copied = this.ACTION(() => from !== undefined || this.last.tokenType === From);
    const body = this.OPTION5({ GATE: this.bodyAhead, DEF: () => this.SUBRULE(this.body, { ARGS: [kind, indent] }) });
    return this.ACTION(() => {
      if (!body && !copied) this.missingBody(kind);
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

  private missingBody(kind: IToken): void {
    const { end } = this.here;
    const head = this.text.slice(kind.startOffset, end);
    this.fault({ start: end, end }, `${head} has no body; write { } after it`, "Add { }", edit(end, end, " { }"));
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
      const item = this.OR<Item | undefined>({ IGNORE_AMBIGUITIES: true, DEF: [
        { ALT: () => {
          this.CONSUME(Semicolon);
          return undefined;
        } },
        { GATE: this.isBlock, ALT: () => this.SUBRULE(this.block) },
        { GATE: this.isEntry, ALT: () => this.SUBRULE(this.entry) },
        { ALT: () => this.SUBRULE(this.waiveStatement) },
        { ALT: () => {
          this.SUBRULE(this.misplaced);
          return undefined;
        } },
        { ALT: () => {
          this.SUBRULE(this.stray);
          return undefined;
        } },
      ] });
      this.ACTION(() => { if (item) items.push(item); });
      this.OPTION2({ GATE: this.restAhead, DEF: () => this.SUBRULE(this.rest) });
    } });
    const close = this.OPTION3({ GATE: this.closesOwn, DEF: () => this.CONSUME(RCurly) });
    return this.ACTION(() => this.closeBody(items, close));
  });

  /** Statements of the file inside a block: said, and read as if they stood outside. */
  private readonly misplaced: ParserMethod<[], void> = this.RULE("misplaced", () => {
    const word = this.ACTION(() => this.next);
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

  private readonly isEntry = (): boolean => this.isName(1) || this.assignmentAhead();

  private openBody(kind: IToken, indent: number, brace: IToken | undefined): void {
    const { end } = brace ? spanOf(kind) : this.here;
    const headEnd = brace ? brace.startOffset : end;
    const head = this.text.slice(kind.startOffset, headEnd).trim();
    const span = brace ? spanOf(brace) : { start: end, end };
    if (!brace) this.fault(span, `${head} has no {; write it here`, "Add {", edit(end, end, " {"));
    this.opens.push({ kind: kind.image, head, line: kind.startLine ?? 0, indent, brace: span });
    this.indents.push(this.beginsLine() ? (this.next.startColumn ?? 0) : 0);
  }

  private closeBody(items: readonly Item[], close: IToken | undefined): BodyNode {
    const own = this.opens.pop();
    this.indents.pop();
    const open = own?.brace ?? this.here;
    const body: BodyNode = { type: "body", start: open.start, end: this.here.end, open, items };
    if (close) return { ...body, close: spanOf(close) };
    if (own) {
      const { at, text } = closingEdit(own, this.last);
      this.lent++;
      this.faulted = false;
      this.fault(open, `\`{\` is never closed; write } at the end of ${own.head}`, "Add }", edit(at, at, text));
    }
    return body;
  }

  /** Does the innermost block go on here? */
  private readonly inside = (): boolean => {
    const { next } = this;
    if (next.tokenType === RCurly) return this.strayBrace();
    if (next.tokenType === EOF) return false;
    if (!this.beginsLine()) return true;
    const own = this.opens[this.opens.length - 1];
    const first = this.indents[this.indents.length - 1];
    return !belongsOutside(this.opens, next, this.isBlock(), first > own.indent, this.balance.opened.size > 0);
  };

  private readonly closesOwn = (): boolean =>
    this.balance.opened.size === 0 || !closesOuter(this.opens, this.next, this.beginsLine());

  /** A `}` too many, told from the block's own by where it stands. */
  private strayBrace(): boolean {
    if (this.balance.closed.size === 0) return false;
    const own = this.opens[this.opens.length - 1];
    const { startColumn = 0, startLine } = this.next;
    if (this.beginsLine()) return startColumn > own.indent && !this.opens.some((open) => open.indent === startColumn);
    return own.line !== startLine && this.last.tokenType === RCurly && endOf(this.last) > own.brace.end;
  }
}
