import { EOF, type IToken, type OrMethodOpts, type ParserMethod } from "chevrotain";
import { nearest } from "../nearest";
import { Any, endOf, LBracket, LCurly, LParen, Name, RCurly, Semicolon } from "../tokens";
import type { FileNode, LetNode, StatementNode, SyntaxIssue } from "../tree";
import { kinds } from "../vocabulary/index";
import { Blocks } from "./blocks";
import { closers, edit, spanOf, statementWords } from "./context";
import { isKind } from "./recovery";

/** Statements of other languages, and the one meant. */
const foreignWords: Readonly<Record<string, string>> = {
  import: "use", include: "use", using: "use", const: "let", var: "let", def: "let", set: "let", define: "let",
  assert: "require", ensure: "require", check: "require", ignore: "waive", suppress: "waive", allow: "waive",
};
const beginnings = ["use", "let", "require", "waive", ...Object.keys(kinds)];

/** The language's grammar. Every rule is total: any row of tokens gives a tree, and issues for what it lacks. */
export class AirframeParser extends Blocks {
  private braces = 0;
  private parentheses = 0;

  /** `skipValidations` leaves out chevrotain's check of the grammar itself, which a test runs. */
  constructor(skipValidations = true) {
    super(skipValidations);
    this.performSelfAnalysis();
    this.recording = false;
  }

  /** Never throws, whatever the tokens. */
  read(text: string, tokens: IToken[]): { readonly tree: FileNode; readonly issues: SyntaxIssue[] } {
    this.begin(text, tokens);
    const tree = this.file();
    for (const error of this.errors) this.issues.push({ ...spanOf(error.token), message: error.message });
    return { tree, issues: this.issues };
  }

  private readonly inFile: OrMethodOpts<StatementNode | undefined> = { IGNORE_AMBIGUITIES: true, DEF: [
    { ALT: () => void this.CONSUME(Semicolon) },
    { GATE: () => this.isBlock(), ALT: () => this.SUBRULE(this.block) },
    { ALT: () => this.SUBRULE(this.letStatement) },
    { ALT: () => this.SUBRULE(this.requireStatement) },
    { ALT: () => this.SUBRULE(this.waiveStatement) },
    { ALT: () => this.SUBRULE(this.useStatement) },
    { GATE: () => this.assignmentAhead(), ALT: () => this.SUBRULE(this.looseEntry) },
    { ALT: () => void this.SUBRULE(this.stray) },
  ] };

  private readonly file: ParserMethod<[], FileNode> = this.RULE("file", () => {
    const items: StatementNode[] = [];
    this.MANY(() => {
      this.ACTION(this.beginItem);
      const item = this.OR(this.inFile);
      if (item) items.push(item);
      this.OPTION(this.restOfLine);
    });
    return this.ACTION((): FileNode => ({ type: "file", start: 0, end: this.text.length, items: [...items, ...this.hoisted] }));
  });

  /** A property outside all blocks, read as the `let` it may have been meant to be. */
  private readonly looseEntry: ParserMethod<[], LetNode | undefined> = this.RULE("looseEntry", () => {
    const faulty = this.issues.length;
    const entry = this.SUBRULE(this.entry);
    return this.ACTION((): LetNode | undefined => {
      const { names, start, end } = entry.path;
      const typed = this.text.slice(start, end);
      if (this.issues.length === faulty) {
        this.fault({ start, end }, `${typed} stands in no block; a value for the whole file is written let ${typed} = …`, "Add let",
          edit(start, start, "let "));
      }
      if (names.length !== 1 || !entry.value) return undefined;
      return { type: "let", start, end: entry.end, name: names[0], value: entry.value };
    });
  });

  /** What can begin no statement. */
  protected readonly stray: ParserMethod<[], void> = this.RULE("stray", () => {
    const token = this.SUBRULE(this.any);
    this.ACTION(() => this.sayStray(token));
  });

  private sayStray(token: IToken): void {
    const { image, tokenType, startOffset: start } = token;
    const { end } = spanOf(token);
    if (tokenType === RCurly) return this.sayStrayBrace(token);
    if (/^[\p{L}\p{N}_-]+[ \t]*=/u.test(this.text.slice(start, start + 200))) return void this.sayWrongName(start);
    if (tokenType !== Name) return this.unexpected(token);
    if (isKind(image)) return this.sayBodyless(token);
    const meant = Object.hasOwn(foreignWords, image) ? foreignWords[image] : nearest(image, beginnings);
    if (meant) this.fault({ start, end }, `${image} is no statement; did you mean ${meant}?`, `Write ${meant}`, edit(start, end, meant));
    else this.fault({ start, end }, `${image} is no statement; one is use, let, require, waive or a block with { }`);
  }

  /** A kind, perhaps a name, and no `{`. */
  private sayBodyless(kind: IToken): void {
    const named = this.sameLine() && this.isName(1);
    const after = this.LA(named ? 2 : 1);
    if (after.startLine === kind.startLine && (after.tokenType === LParen || after.tokenType === LBracket)) {
      return this.fault(spanOf(after), `"${after.image}" stands where { should; a body is written in { }`);
    }
    this.sayNoBody(kind.startOffset, endOf(named ? this.next : kind));
  }

  private sayStrayBrace(token: IToken): void {
    const { start, end } = spanOf(token);
    if (this.lent > 0) {
      this.lent--;
      this.faulted = true;
    } else this.fault({ start, end }, '"}" closes nothing; remove it', "Remove }", edit(start, end, ""));
  }

  protected readonly any: ParserMethod<[], IToken> = this.RULE("any", () => this.CONSUME(Any));

  /** After an entry, the rest of its line: another entry without its `;`, or what has no place there. */
  protected readonly rest: ParserMethod<[], void> = this.RULE("rest", () => {
    this.braces = 0;
    this.parentheses = 0;
    this.ACTION(() => (this.anotherAhead() ? this.sayNoSemicolon() : this.unexpected(this.next)));
    this.MANY({ GATE: this.junkAhead, DEF: () => {
      const token = this.SUBRULE(this.any);
      this.ACTION(() => this.count(token));
    } });
  });

  private anotherAhead(): boolean {
    if (statementWords.has(this.next.tokenType)) return true;
    if (this.assignmentAhead() && !(this.faulted && this.outside)) return true;
    return (!this.faulted || isKind(this.next.image)) && this.isBlock();
  }

  private sayNoSemicolon(): void {
    const { start, end } = this.here;
    this.fault({ start, end }, `a ; is missing before ${this.next.image}; it parts entries on one line`, "Add ;", edit(start, end, " ;"));
  }

  private count({ tokenType, startOffset }: IToken): void {
    if (tokenType === LCurly && !this.balance.opened.has(startOffset)) this.braces++;
    else if (tokenType === RCurly) this.braces--;
    else if (tokenType === LParen || tokenType === LBracket) this.parentheses++;
    else if (closers.has(tokenType)) this.parentheses--;
  }

  /** What is out of place goes to the end of its line, or to where the brackets opened in it close. */
  private readonly junkAhead = (): boolean => {
    if (this.braces > 0) return this.next.tokenType !== EOF;
    if (this.parentheses > 0 && this.sameLine() && this.next.tokenType !== RCurly) return true;
    return this.restAhead() && !this.anotherAhead();
  };
}
