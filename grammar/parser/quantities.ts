import type { IOrAlt, IToken, ParserMethod } from "chevrotain";
import { Comma, endOf, Equals, Name, NumberToken, PointNumber, SizeToken } from "../tokens";
import type { QuantityNode, UnitNode, ValueNode } from "../tree";
import { findUnit } from "../units/units";
import { edit } from "./context";
import { plainSymbol, stepsDown } from "./unit-words";
import { Units } from "./units";

/** Numbers and their units, and the ways people write them that the language does not. */
export abstract class Quantities extends Units {
  /** Where the value's entry begins and what it is called, for fixes that rewrite it. */
  protected subject: { readonly start: number; readonly name: string } | undefined;

  /** `12,5`: digits on both sides with nothing between. Inside brackets a comma parts values. */
  private readonly decimalComma = (): boolean => this.next.tokenType === Comma && this.depth === 0 &&
    this.LA(2).tokenType === NumberToken && endOf(this.last) === this.next.startOffset && this.LA(2).startOffset === endOf(this.next);

  private readonly cellsFollow = (): boolean => this.sameLine() && /^S(\d+P)?$/.test(this.next.image);

  private cellsAhead(): boolean {
    return this.ahead(Name) && (this.recording || this.next.image.startsWith("S"));
  }

  private readonly numbers: IOrAlt<IToken>[] = [{ ALT: () => this.CONSUME(NumberToken) }, { ALT: () => this.CONSUME(PointNumber) }];

  private readonly itsUnit = { GATE: () => this.unitFollows(), DEF: () => this.SUBRULE(this.unit) };

  protected readonly quantity: ParserMethod<[], QuantityNode> = this.RULE("quantity", () => {
    const number = this.OR(this.numbers);
    const fraction = !this.ahead(Comma) ? undefined : this.OPTION({ GATE: this.decimalComma, DEF: () => {
      this.CONSUME(Comma);
      return this.CONSUME2(NumberToken);
    } });
    const text = number.tokenType === NumberToken && !fraction ? number.image : this.ACTION(() => this.numberText(number, fraction));
    const { end } = this.here;
    const cells = !this.cellsAhead() ? undefined : this.OPTION2({ GATE: this.cellsFollow, DEF: () => {
      const label = this.CONSUME(Name);
      return this.ACTION(() => this.cellCount(number, label));
    } });
    const unit = this.OPTION3(this.itsUnit);
    return cells ?? this.ACTION(() => plain(number, text, end, unit));
  });

  /** The number in the language's own writing; says so where it was typed in another. */
  private numberText(number: IToken, fraction: IToken | undefined): string {
    let text = number.image;
    const typed = fraction ? `${text},${fraction.image}` : text;
    // In 1,234.5 and 1.234,5 the other sign groups thousands.
    if (fraction) text = fraction.image.includes(".") ? text + fraction.image : `${text.replace(".", "")}.${fraction.image}`;
    text = text.replace(/^\./, "0.").replace(/\.$/, "");
    if (typed !== text) {
      const span = { start: number.startOffset, end: number.startOffset + typed.length };
      this.mend(span, `${typed} is written ${text}`, `Write ${text}`, edit(span.start, span.end, text));
    }
    return text;
  }

  /** `4S`, `3S2P`: the label of a battery. */
  private cellCount(number: IToken, label: IToken): QuantityNode {
    const span = { start: number.startOffset, end: endOf(label) };
    const typed = this.text.slice(span.start, span.end);
    const parallel = /S(\d+)P/.exec(label.image)?.[1];
    const own = this.subject?.name === "cells";
    const written = `${own ? "" : "cells = "}${number.image}${parallel === undefined ? "" : ` ; parallel = ${parallel}`}`;
    const start = own ? span.start : this.subject?.start;
    const message = `${typed} is written ${written}`;
    if (start === undefined) this.mend(span, message);
    else this.mend(span, message, `Write ${written}`, edit(start, span.end, written));
    return plain(number, number.image, span.end);
  }

  private readonly stepFollows = (): boolean => this.next.tokenType === NumberToken && this.sameLine() &&
    stepsDown(plainSymbol(this.last.image), plainSymbol(this.LA(2).image));

  /** A quantity, and with it what people write as several: `5 ft 3 in`. */
  protected measure(): ValueNode {
    const before = this.last;
    const first = this.SUBRULE(this.quantity);
    if (!this.ahead(NumberToken)) return first;
    const steps = [first];
    const issues = this.issues.length;
    this.MANY({ GATE: this.stepFollows, DEF: () => {
      const step = this.SUBRULE2(this.quantity);
      this.ACTION(() => steps.push(step));
    } });
    return steps.length > 1 ? this.summed(before, steps, issues) : first;
  }

  private summed(before: IToken, steps: readonly QuantityNode[], issues: number): ValueNode {
    const { start } = steps[0];
    const { end } = steps[steps.length - 1];
    // 5'3" is one mistake, not three.
    this.issues.length = Math.min(this.issues.length, issues);
    while (this.issues.length > 0 && this.issues[this.issues.length - 1].start >= start) this.issues.pop();
    const typed = this.text.slice(start, end);
    const sum = steps.map((step) => `${step.number.text} ${step.unit?.terms[0].symbol}`).join(" + ");
    const alone = before.tokenType === Equals && (!this.sameLine() || !/^[*/^]/.test(this.next.image));
    const written = alone ? sum : `(${sum})`;
    this.mend({ start, end }, `${typed} is written ${written}`, `Write ${written}`, edit(start, end, written));
    return steps.reduce<ValueNode>((left, right) => ({
      type: "binary", operator: "+", start, end: right.end, at: { start: left.end, end: right.start }, left, right,
    }), steps[0]);
  }

  /** `12x6`: two sizes in one, as propellers are labelled; three are a box. */
  protected readonly size: ParserMethod<[], ValueNode> = this.RULE("size", () => {
    const before = this.last;
    const token = this.CONSUME(SizeToken);
    const unit = this.OPTION({ GATE: this.unitFollows, DEF: () => this.CONSUME(Name) });
    return this.ACTION(() => this.sizeMeant(before, token, unit));
  });

  private sizeMeant(before: IToken, token: IToken, unit: IToken | undefined): ValueNode {
    const known = unit && findUnit(unit.image) ? unit : undefined;
    const span = { start: token.startOffset, end: endOf(known ?? token) };
    const numbers = token.image.split(/[ \t]*[xX×][ \t]*/);
    const symbol = known?.image ?? (numbers.length === 2 ? "in" : "mm");
    const sizes = numbers.map((number) => `${number} ${symbol}`);
    const typed = this.text.slice(span.start, span.end);
    if (this.subject && before.tokenType === Equals && sizes.length <= 3) {
      const two = sizes.length === 2;
      const written = two ? `diameter = ${sizes[0]} ; pitch = ${sizes[1]}` : `(${sizes.join(", ")})`;
      this.fault(span, `${typed} is written ${written}`, `Write ${written}`,
        edit(two ? this.subject.start : span.start, endOf(unit ?? token), written));
    } else {
      this.fault(span, `${typed} is ${sizes.length} sizes; write each as a value of its own`);
    }
    return { type: "missing", ...span };
  }
}

function plain(number: IToken, text: string, end: number, unit?: UnitNode): QuantityNode {
  const start = number.startOffset;
  const digits = { start, end, value: Number(text), text };
  return unit ? { type: "quantity", start, end: unit.end, number: digits, unit } : { type: "quantity", start, end, number: digits };
}
