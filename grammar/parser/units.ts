import type { IOrAlt, IToken, ParserMethod } from "chevrotain";
import { Caret, Degree, Dot, endOf, LParen, Mark, Minus, Name, NumberToken, Percent, Slash, Star, Superscript } from "../tokens";
import type { UnitNode, UnitTerm } from "../tree";
import { findUnit, unitSymbols } from "../units/units";
import { Context, edit, equalsLike, spanOf } from "./context";
import { likelyUnit, plainSymbol } from "./unit-words";

/** Units, which are words by place: after a number, on its line. */
export abstract class Units extends Context {
  protected readonly unitFollows = (): boolean => {
    if (!this.sameLine()) return false;
    const { tokenType, image } = this.next;
    if (tokenType === Percent || tokenType === Degree || tokenType === Mark) return true;
    if (tokenType === Slash) return this.symbolAt(2);
    if (tokenType !== Name || equalsLike.has(this.LA(2).tokenType)) return false;
    return findUnit(image) !== undefined || !(this.assignmentAhead() || this.blockAhead());
  };

  /** A unit symbol that goes on a unit: known, on the line, and no call or path. */
  private symbolAt(k: number): boolean {
    const { tokenType, image, startLine } = this.LA(k);
    if (startLine !== this.last.startLine) return false;
    if (tokenType === Degree) return true;
    const after = this.LA(k + 1).tokenType;
    return tokenType === Name && findUnit(image) !== undefined && after !== LParen && after !== Dot;
  }

  private readonly unitGoesOn = (): boolean =>
    (this.next.tokenType === Slash || this.next.tokenType === Star) && this.sameLine() && this.symbolAt(2);

  /** The whole number after `^`, as typed there. */
  protected readonly exponent: ParserMethod<[], number> = this.RULE("exponent", () => this.OR([
    { ALT: () => {
      const { image } = this.CONSUME(Superscript);
      return image === "²" ? 2 : 3;
    } },
    { ALT: () => {
      this.CONSUME(Caret);
      const minus = this.OPTION({ GATE: this.sameLine, DEF: () => this.CONSUME(Minus) });
      const digits = this.OPTION2({ GATE: this.sameLine, DEF: () => this.CONSUME(NumberToken) });
      return this.ACTION(() => this.wholeExponent(minus !== undefined, digits));
    } },
  ]));

  private wholeExponent(negative: boolean, digits: IToken | undefined): number {
    if (!digits) {
      this.fault(this.here, "the exponent after ^ is missing; write a whole number, such as ^2");
      return 1;
    }
    if (!/^\d{1,3}$/.test(digits.image)) {
      this.fault(spanOf(digits), `an exponent is a whole number, not ${digits.image}; a root is sqrt(…)`);
    }
    return (negative ? -1 : 1) * Number(digits.image);
  }

  private readonly symbols: IOrAlt<IToken>[] = [
    { ALT: () => this.CONSUME(Name) },
    { ALT: () => this.CONSUME(Degree) },
    { ALT: () => this.CONSUME(Mark) },
  ];

  private readonly term: ParserMethod<[divided?: boolean], UnitTerm> = this.RULE("term", (divided?: boolean) => {
    const token = this.OR(this.symbols);
    const exponent = this.ahead(Caret, Superscript)
      ? this.OPTION({ GATE: this.sameLine, DEF: () => this.SUBRULE(this.exponent) }) ?? 1 : 1;
    return this.ACTION(() => {
      const symbol = plainSymbol(token.image);
      if (!unitSymbols.has(symbol)) this.sayUnknown(token);
      if (token.tokenType === Mark) this.sayMark(token, symbol);
      return { start: token.startOffset, end: endOf(this.last), symbol, exponent: divided ? -exponent : exponent };
    });
  });

  protected readonly unit: ParserMethod<[], UnitNode> = this.RULE("unit", (): UnitNode => {
    const start = this.next.startOffset;
    const terms = this.OR(this.forms);
    const { end } = this.here;
    const typed = this.text.slice(start, end);
    return { type: "unit", start, end, text: terms.length > 1 ? typed.replace(/\s/g, "") : typed, terms };
  });

  private readonly forms: IOrAlt<UnitTerm[]>[] = [
    { ALT: () => {
      const { startOffset: start } = this.CONSUME(Percent);
      return [{ start, end: start + 1, symbol: "%", exponent: 1 }];
    } },
    { ALT: () => {
      const over = this.ahead(Slash) ? this.OPTION(() => this.CONSUME(Slash)) : undefined;
      const terms = [this.SUBRULE(this.term, over && { ARGS: [true] })];
      if (this.ahead(Slash, Star)) this.MANY({ GATE: this.unitGoesOn, DEF: () => {
        const operator = this.OR2([{ ALT: () => this.CONSUME(Star) }, { ALT: () => this.CONSUME2(Slash) }]);
        terms.push(this.SUBRULE2(this.term, { ARGS: [operator.tokenType === Slash] }));
      } });
      return terms;
    } },
  ];

  private sayUnknown(token: IToken): void {
    const { image } = token;
    const span = spanOf(token);
    const meant = likelyUnit(image);
    const spaced = /\d/.test(this.text[span.start - 1] ?? "") ? " " : "";
    if (meant === undefined) this.mend(span, `no unit "${image}"; after a number comes a unit such as mm or g, or nothing`);
    else this.mend(span, `no unit "${image}"; did you mean ${meant}?`, `Write ${meant}`, edit(span.start, span.end, spaced + meant));
    this.faulted = true;
  }

  private sayMark(token: IToken, symbol: string): void {
    const { end } = spanOf(token);
    const digits = /[\d.]*$/.exec(this.text.slice(0, token.startOffset))?.[0] ?? "";
    const start = token.startOffset - digits.length;
    const written = `${digits} ${symbol}`;
    this.mend({ start, end }, `${digits}${token.image} is written ${written}`, `Write ${written}`, edit(start, end, written));
  }
}
