import { EmbeddedActionsParser, EOF, type IToken, type TokenType } from "chevrotain";
import { Any, DotDot, endOf, Keyword, LBracket, LCurly, LParen, Name, StringToken, Unknown, From, Equals, Dot, Semicolon,
  RCurly, RParen, RBracket, Comma, To, Within, Plus, Minus, Star, Slash, PlusMinus, Less, LessEqual, Greater,
  GreaterEqual, UnclosedString, For, Because, As, NumberToken, PointNumber, SizeToken, ForeignString, Yes, No, Let, Use, Require, Waive,
  DoubleEquals, Colon } from "../tokens";
import type { Span, SyntaxIssue, TextEdit } from "../tree";

const set = (...types: TokenType[]): ReadonlySet<TokenType> => new Set(types);

/** A value goes on over a line end after these. */
export const continuing = set(Plus, Minus, Star, Slash, PlusMinus, Comma, To, DotDot, Within, Less, LessEqual, Greater,
  GreaterEqual, LParen, LBracket);
/** What a value may begin with, names aside. */
export const plainStarts = set(NumberToken, PointNumber, SizeToken, StringToken, UnclosedString, ForeignString, LParen,
  LBracket, Minus, Yes, No);
/** Words that only ever stand between others. */
const joining = set(To, Within, For, Because, As);
export const closers = set(RParen, RBracket);
export const statementWords = set(Let, Use, Require, Waive);
export const equalsLike = set(Equals, DoubleEquals, Colon);

const wordAt = /^[^\s={}();"#]+/;

export const spanOf = (token: IToken): Span => ({ start: token.startOffset, end: endOf(token) });
export const edit = (start: number, end: number, text: string): TextEdit => ({ start, end, text });

/** Trees are kept shallow enough to be walked by functions that call themselves. */
export const deepest = 64;
const mostOperators = 500;

/** What the rules share: place in the token row, gates, issues. */
export abstract class Context extends EmbeddedActionsParser {
  protected text = "";
  protected issues: SyntaxIssue[] = [];
  /** Something in this entry has been found wrong: what follows from it is not said again. */
  protected faulted = false;
  /** Open brackets around the place. */
  protected depth = 0;
  /** The rules are being recorded, not run. What is rarely there is only asked for then, or when its token is ahead. */
  protected recording = true;
  /** Operators seen in the value, so that trees stay shallow enough to walk. */
  protected operators = 0;

  constructor(skipValidations: boolean) {
    super([Any], { maxLookahead: 1, skipValidations, recoveryEnabled: false });
  }

  protected begin(text: string, tokens: IToken[]): void {
    this.text = text;
    this.issues = [];
    this.faulted = false;
    this.depth = 0;
    this.input = tokens;
  }

  /** A slip that costs nothing: the tree is as if it had been written right. */
  protected mend(span: Span, said: string, title?: string, ...edits: TextEdit[]): void {
    const { start, end } = span;
    const message = said.replace(/\s+/g, " ").replace(/\S{60,}/g, (word) => `${word.slice(0, 57)}…`);
    this.issues.push(title === undefined ? { start, end, message } : { start, end, message, fix: { title, edits } });
  }

  /** A mistake that leaves a hole. The first in an entry speaks for the entry. */
  protected fault(span: Span, message: string, title?: string, ...edits: TextEdit[]): void {
    if (this.faulted) return;
    this.faulted = true;
    this.mend(span, message, title, ...edits);
  }

  protected get next(): IToken {
    return this.LA(1);
  }

  protected get last(): IToken {
    return this.LA(0);
  }

  /** End of the token before: where a missing thing would stand. */
  protected get here(): Span {
    const last = this.LA(0);
    const at = last.tokenType === EOF ? 0 : endOf(last);
    return { start: at, end: at };
  }

  /** Is a token of that type next? While the rules are recorded, always. */
  protected ahead(type: TokenType, other = type): boolean {
    const { tokenType } = this.LA(1);
    return tokenType === type || tokenType === other || this.recording;
  }

  protected readonly sameLine = (): boolean => this.LA(1).startLine === this.LA(0).startLine;

  /** May an operator go on with the value before it? */
  protected readonly onward = (): boolean => (this.depth > 0 || this.sameLine()) && this.operators < mostOperators;

  protected isName(k: number): boolean {
    return this.LA(k).tokenType === Name;
  }

  protected isKeyword(k: number): boolean {
    return this.LA(k).tokenType.CATEGORIES?.includes(Keyword) ?? false;
  }

  private sameLineAs(k: number): boolean {
    return this.LA(k).startLine === this.LA(k - 1).startLine;
  }

  /** `name =`, `name.name =` at the k-th token on; also with a sign people write for `=`. */
  protected assignmentAhead(k = 1): boolean {
    if (!this.isName(k) && !this.isKeyword(k)) return false;
    k++;
    while (this.LA(k).tokenType === Dot && (this.isName(k + 1) || this.isKeyword(k + 1))) k += 2;
    return equalsLike.has(this.LA(k).tokenType) && this.sameLineAs(k);
  }

  /** `kind {`, `kind name "title" {`, `kind name from` at the k-th token on. */
  protected blockAhead(k = 1): boolean {
    if (!this.isName(k)) return false;
    k++;
    if (this.sameLineAs(k) && (this.isName(k) || (this.isKeyword(k) && this.LA(k).tokenType !== From))) k++;
    if (this.sameLineAs(k) && (this.LA(k).tokenType === StringToken || this.LA(k).tokenType === UnclosedString)) k++;
    const { tokenType } = this.LA(k);
    return tokenType === LCurly || (tokenType === From && this.sameLineAs(k));
  }

  /** Does something of its own begin here, so that a value before it can't go on? */
  protected entryAhead(): boolean {
    const { tokenType } = this.LA(1);
    return statementWords.has(tokenType) || this.assignmentAhead() || this.blockAhead();
  }

  /** May a value, or a part of one, begin here? */
  protected readonly valueHere = (): boolean => {
    if (joining.has(this.next.tokenType)) return false;
    if (this.sameLine()) return this.depth < deepest || !(this.next.tokenType === LParen || this.next.tokenType === LBracket);
    if (this.depth === 0 && !continuing.has(this.last.tokenType)) return false;
    return !this.entryAhead();
  };

  /** Has the entry more on its line than it should? */
  protected readonly restAhead = (): boolean => {
    const { tokenType } = this.LA(1);
    return this.sameLine() && tokenType !== Semicolon && tokenType !== RCurly && tokenType !== EOF &&
      this.last.tokenType !== Semicolon;
  };

  /** Says that a token is out of place. */
  protected unexpected(token: IToken): void {
    const { image, tokenType } = token;
    if (this.operators >= mostOperators) {
      this.fault(spanOf(token), `a value has at most ${mostOperators} operators; write a let for a part of it`);
    } else if (/^_./.test(image)) this.sayWrongName(token.startOffset);
    else if (tokenType === Unknown) this.fault(spanOf(token), `"${image}" has no meaning here; remove it`);
    else if (closers.has(tokenType)) this.fault(spanOf(token), `"${image}" closes nothing; remove it`);
    else if (tokenType === Comma) this.fault(spanOf(token), '"," parts values only inside ( ) or [ ]; write the brackets too');
    else this.fault(spanOf(token), `${image} is not expected here; begin a new line or put ; before a new entry`);
  }

  /** Says that what stands at `start` is no name, and gives what would be one. */
  protected sayWrongName(start: number): string {
    const typed = wordAt.exec(this.text.slice(start, start + 200))?.[0] ?? "";
    const plain = typed.replace(/[^\p{L}\p{N}_]+/gu, "_").replace(/^_+|_+$/g, "");
    const written = /^\p{L}/u.test(plain) ? plain : `n${plain}`;
    const end = start + typed.length;
    this.fault({ start, end }, `"${typed}" can't be a name: one is a letter, then letters, digits and _`, `Write ${written}`,
      edit(start, end, written));
    return written;
  }
}
