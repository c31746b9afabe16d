import type { IOrAlt, IToken, ParserMethod } from "chevrotain";
import { Caret, Comma, Degree, Dot, endOf, Equals, LParen, Minus, Name, NumberToken, Percent, PointNumber, Slash, SizeToken,
  Star, Superscript } from "../tokens";
import type { QuantityNode, UnitNode, UnitTerm, ValueNode } from "../tree";
import { findUnit, unitSymbols } from "../units/units";
import { Context, edit, equalsLike, spanOf } from "./context";
import { likelyUnit, plainSymbol, stepsDown } from "./unit-words";

/** Numbers and their units, and the ways people write them that the language does not. */
export abstract class Quantities extends Context {
  /** Where the value's entry begins and what it is called, for fixes that rewrite it. */
  protected subject: { readonly start: number; readonly name: string } | undefined;

  private readonly unitFollows = (): boolean => {
    if (!this.sameLine()) return false;
    const { tokenType, image } = this.next;
    if (tokenType === Percent || tokenType === Degree) return true;
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
    return tokenType === Name && findUnit(image) !== undefined && image !== "%" && after !== LParen && after !== Dot;
  }

  private readonly unitGoesOn = (): boolean =>
    (this.next.tokenType === Slash || this.next.tokenType === Star) && this.sameLine() && this.symbolAt(2);

  /** `12,5`: digits on both sides with nothing between. Inside brackets a comma parts values. */
  private readonly decimalComma = (): boolean => this.next.tokenType === Comma && this.depth === 0 &&
    this.LA(2).tokenType === NumberToken && endOf(this.last) === this.next.startOffset && this.LA(2).startOffset === endOf(this.next);

  /** The whole number after `^`, as typed there. */
  protected readonly exponent: ParserMethod<[], number> = this.RULE("exponent", () => {
    let value = 1;
    this.OR([
      { ALT: () => {
        const { image } = this.CONSUME(Superscript);
        value = image === "²" ? 2 : 3;
      } },
      { ALT: () => {
        this.CONSUME(Caret);
        const minus = this.OPTION({ GATE: this.sameLine, DEF: () => this.CONSUME(Minus) });
        const digits = this.OPTION2({ GATE: this.sameLine, DEF: () => this.CONSUME(NumberToken) });
        value = this.ACTION(() => this.wholeExponent(minus !== undefined, digits));
      } },
    ]);
    return value;
  });

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

  private readonly term: ParserMethod<[divided?: boolean], UnitTerm> = this.RULE("term", (divided?: boolean) => {
    const token = this.OR(this.symbols);
    const exponent = this.ahead(Caret, Superscript)
      ? this.OPTION({ GATE: this.sameLine, DEF: () => this.SUBRULE(this.exponent) }) ?? 1 : 1;
    return this.ACTION(() => ({
      start: token.startOffset, end: endOf(this.last), symbol: plainSymbol(token.image),
      exponent: divided ? -exponent : exponent,
    }));
  });

  private readonly symbols: IOrAlt<IToken>[] = [{ ALT: () => this.CONSUME(Name) }, { ALT: () => this.CONSUME(Degree) }];

  private readonly unit: ParserMethod<[], UnitNode> = this.RULE("unit", () => {
    const terms: UnitTerm[] = [];
    const start = this.ACTION(() => this.next.startOffset);
    this.OR([
      { ALT: () => {
        const sign = this.CONSUME(Percent);
        this.ACTION(() => terms.push({ ...spanOf(sign), symbol: "%", exponent: 1 }));
      } },
      { ALT: () => {
        const over = this.ahead(Slash) ? this.OPTION(() => this.CONSUME(Slash)) : undefined;
        const first = this.SUBRULE(this.term, { ARGS: [over !== undefined] });
        this.ACTION(() => this.addTerm(terms, first));
        if (this.ahead(Slash, Star)) this.MANY({ GATE: this.unitGoesOn, DEF: () => {
          const operator = this.OR2([{ ALT: () => this.CONSUME(Star) }, { ALT: () => this.CONSUME2(Slash) }]);
          const term = this.SUBRULE2(this.term, { ARGS: [operator.tokenType === Slash] });
          this.ACTION(() => this.addTerm(terms, term));
        } });
      } },
    ]);
    return this.ACTION((): UnitNode => {
      const { end } = this.here;
      return { type: "unit", start, end, text: this.text.slice(start, end).replace(/\s/g, ""), terms };
    });
  });

  private addTerm(terms: UnitTerm[], term: UnitTerm): void {
    terms.push(term);
    if (unitSymbols.has(term.symbol)) return;
    const typed = this.text.slice(term.start, term.end).replace(/\s*[\^²³][^]*/, "");
    const end = term.start + typed.length;
    const meant = likelyUnit(typed);
    const digits = this.text.slice(0, term.start).match(/\d$/) !== null;
    if (meant === undefined) this.mend({ start: term.start, end }, `no unit "${typed}"`);
    else this.mend({ start: term.start, end }, `no unit "${typed}"; did you mean ${meant}?`, `Write ${meant}`,
      edit(term.start, end, digits ? ` ${meant}` : meant));
    this.faulted = true;
  }

  /** `4S`, `3S2P`: the label of a battery. */
  private cellCount(number: IToken): QuantityNode | undefined {
    const { image, startOffset } = this.next;
    const parallel = /^S(?:(\d+)P)?$/.exec(image);
    if (!parallel || !/^\d+$/.test(number.image)) return undefined;
    const label = this.text.slice(number.startOffset, startOffset + image.length);
    const written = parallel[1] === undefined ? number.image : `${number.image} ; parallel = ${parallel[1]}`;
    this.mend({ start: number.startOffset, end: startOffset + image.length },
      `${label} is written ${this.subject?.name === "cells" ? "" : "cells = "}${written}`, `Write ${written}`,
      edit(number.startOffset, startOffset + image.length, written));
    return this.plain(number, number.image, startOffset + image.length);
  }

  private plain(number: IToken, text: string, end: number, unit?: UnitNode): QuantityNode {
    const start = number.startOffset;
    const digits = { start, end: unit ? start + text.length : end, value: Number(text), text };
    return unit ? { type: "quantity", start, end: unit.end, number: digits, unit } : { type: "quantity", start, end, number: digits };
  }

  private readonly cellsFollow = (): boolean => this.sameLine() && /^S(\d+P)?$/.test(this.next.image);

  private cellsAhead(): boolean {
    return this.ahead(Name) && (this.next.image.startsWith("S") || this.recording);
  }

  private readonly numbers: IOrAlt<IToken>[] = [{ ALT: () => this.CONSUME(NumberToken) }, { ALT: () => this.CONSUME(PointNumber) }];

  protected readonly quantity: ParserMethod<[], QuantityNode> = this.RULE("quantity", () => {
    const number = this.OR(this.numbers);
    const fraction = !this.ahead(Comma) ? undefined : this.OPTION({ GATE: this.decimalComma, DEF: () => {
      this.CONSUME(Comma);
      return this.CONSUME2(NumberToken);
    } });
    const text = number.tokenType === NumberToken && !fraction ? number.image : this.ACTION(() => this.numberText(number, fraction));
    const { end } = this.here;
    const cells = !this.cellsAhead() ? undefined : this.OPTION2({ GATE: this.cellsFollow, DEF: () => {
      const node = this.ACTION(() => this.cellCount(number));
      this.CONSUME(Name);
      return node;
    } });
    const unit = this.OPTION3({ GATE: this.unitFollows, DEF: () => this.SUBRULE(this.unit) });
    return cells ?? this.ACTION(() => this.plain(number, text, end, unit));
  });

  /** The number in the language's own writing; says so where it was typed in another. */
  private numberText(number: IToken, fraction: IToken | undefined): string {
    let text = number.image;
    const typed = fraction ? `${text},${fraction.image}` : text;
    // In 1,234.5 and 1.234,5 the other sign groups thousands.
    if (fraction) text = fraction.image.includes(".") ? text + fraction.image : `${text.replace(".", "")}.${fraction.image}`;
    if (text.startsWith(".")) text = `0${text}`;
    if (typed !== text) {
      const span = { start: number.startOffset, end: number.startOffset + typed.length };
      this.mend(span, `${typed} is written ${text}`, `Write ${text}`, edit(span.start, span.end, text));
    }
    return text;
  }

  private readonly stepFollows = (): boolean => this.next.tokenType === NumberToken && this.sameLine() &&
    this.last.tokenType === Name && this.LA(2).tokenType === Name && stepsDown(this.last.image, this.LA(2).image);

  /** A quantity, and with it what people write as several: `5 ft 3 in`. */
  protected measure(): ValueNode {
    const before = this.last;
    const first = this.SUBRULE(this.quantity);
    if (!this.ahead(NumberToken)) return first;
    const steps = [first];
    this.MANY({ GATE: this.stepFollows, DEF: () => {
      const step = this.SUBRULE2(this.quantity);
      this.ACTION(() => steps.push(step));
    } });
    return steps.length > 1 ? this.summed(before, steps) : first;
  }

  private summed(before: IToken, steps: readonly QuantityNode[]): ValueNode {
    const { start } = steps[0];
    const { end } = steps[steps.length - 1];
    const typed = this.text.slice(start, end);
    const sum = steps.map((step) => this.text.slice(step.start, step.end)).join(" + ");
    const alone = before.tokenType === Equals && (!this.sameLine() || !/^[*/^]/.test(this.next.image));
    const written = alone ? sum : `(${sum})`;
    this.mend({ start, end }, `${typed} is written ${written}`, `Write ${written}`, edit(start, end, written));
    return steps.reduce<ValueNode>((left, right) => ({
      type: "binary", operator: "+", start, end: right.end, at: { start: left.end, end: right.start }, left, right,
    }), steps[0]) ;
  }

  /** `12x6`: two sizes in one, as propellers are labelled; three are a box. */
  protected readonly size: ParserMethod<[], ValueNode> = this.RULE("size", () => {
    const before = this.ACTION(() => this.last);
    const token = this.CONSUME(SizeToken);
    const unit = this.OPTION({ GATE: this.unitFollows, DEF: () => this.CONSUME(Name) });
    return this.ACTION(() => this.sizeMeant(before, token, unit));
  });

  private sizeMeant(before: IToken, token: IToken, unit: IToken | undefined): ValueNode {
    const span = { start: token.startOffset, end: endOf(unit && findUnit(unit.image) ? unit : token) };
    const sizes = token.image.split(/[ \t]*[xX×][ \t]*/);
    const symbol = unit && findUnit(unit.image) ? unit.image : sizes.length === 2 ? "in" : "mm";
    const [a, b] = sizes.map((size) => `${size} ${symbol}`);
    const typed = this.text.slice(span.start, span.end);
    const box = `(${sizes.map((size) => `${size} ${symbol}`).join(", ")})`;
    const written = sizes.length === 2 ? `diameter = ${a} ; pitch = ${b}` : box;
    if (this.subject && before.tokenType === Equals && sizes.length <= 3) {
      const start = sizes.length === 2 ? this.subject.start : span.start;
      this.fault(span, `${typed} is written ${written}`, `Write ${written}`, edit(start, endOf(unit ?? token), written));
    } else {
      this.fault(span, `${typed} is ${sizes.length} sizes; write each as a value of its own`);
    }
    return { type: "missing", ...span };
  }
}
