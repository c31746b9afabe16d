import type { IOrAlt, IToken, OrMethodOpts, ParserMethod } from "chevrotain";
import { Caret, DotDot, endOf, LBracket, LParen, Minus, Name, No, Plus, PlusMinus, Require, Slash, Star, Superscript, To, Unknown,
  Yes } from "../tokens";
import type { BinaryNode, FlagNode, QuantityNode, ValueNode } from "../tree";
import { Brackets } from "./brackets";
import { deepest, edit, equalsLike, plainStarts, spanOf } from "./context";

/** Everything that may stand after `=`. */
export abstract class Values extends Brackets {
  protected readonly value: ParserMethod<[], ValueNode> = this.RULE("value", () => {
    this.operators = 0;
    if (!this.recording && !this.sameLine()) this.sayLateStart();
    const left = this.OPTION(this.first) ?? this.missing();
    if (!this.ahead(To, DotDot)) return left;
    const whole = this.OPTION2({ GATE: this.onward, DEF: () => {
      const operator = this.OR([{ ALT: () => this.CONSUME(To) }, { ALT: () => this.CONSUME(DotDot) }]);
      const right = this.OPTION3({ GATE: this.valueHere, DEF: () => this.SUBRULE2(this.sum) }) ?? this.missing();
      return this.ACTION((): ValueNode => ({
        type: "pair", operator: operator.tokenType === To ? "to" : "..", start: left.start, end: right.end, left, right,
      }));
    } });
    return whole ?? left;
  });

  private readonly first = { GATE: () => this.valueStarts(), DEF: () => this.SUBRULE(this.sum) };

  protected readonly sum: ParserMethod<[], ValueNode> = this.RULE("sum", () => {
    let left = this.SUBRULE(this.product);
    if (this.ahead(Plus, Minus)) this.MANY({ GATE: this.onward, DEF: () => {
      const operator = this.OR([{ ALT: () => this.CONSUME(Plus) }, { ALT: () => this.CONSUME(Minus) }]);
      const right = this.OPTION({ GATE: this.valueHere, DEF: () => this.SUBRULE2(this.product) }) ?? this.missing();
      left = this.ACTION(() => this.binary(operator, left, right));
    } });
    if (this.ahead(PlusMinus)) this.OPTION2({ GATE: this.onward, DEF: () => {
      const operator = this.CONSUME(PlusMinus);
      const right = this.OPTION3({ GATE: this.valueHere, DEF: () => this.SUBRULE3(this.product) }) ?? this.missing();
      left = this.ACTION(() => this.binary(operator, left, right));
    } });
    return left;
  });

  private readonly product: ParserMethod<[], ValueNode> = this.RULE("product", () => {
    let left = this.SUBRULE(this.unary);
    if (this.ahead(Star, Slash)) this.MANY({ GATE: this.onward, DEF: () => {
      const operator = this.OR([{ ALT: () => this.CONSUME(Star) }, { ALT: () => this.CONSUME(Slash) }]);
      const right = this.OPTION({ GATE: this.valueHere, DEF: () => this.SUBRULE2(this.unary) }) ?? this.missing();
      left = this.ACTION(() => this.binary(operator, left, right));
    } });
    return left;
  });

  private readonly unary: ParserMethod<[], ValueNode> = this.RULE("unary", () => this.OR(this.signs));

  private readonly signs: IOrAlt<ValueNode>[] = [
    { ALT: () => {
      const minus = this.CONSUME(Minus);
      const inner = this.OPTION({ GATE: this.valueHere, DEF: () => this.SUBRULE(this.power) }) ?? this.missing();
      return this.ACTION((): ValueNode => signed(minus, inner) ?? { type: "negate", start: minus.startOffset, end: inner.end, inner });
    } },
    { ALT: () => this.SUBRULE2(this.power) },
  ];

  private readonly power: ParserMethod<[], ValueNode> = this.RULE("power", (): ValueNode => {
    const base = this.OR(this.primaries);
    if (!this.ahead(Caret, Superscript)) return base;
    const exponent = this.OPTION({ GATE: this.onward, DEF: () => this.SUBRULE(this.exponent) });
    return exponent === undefined ? base : { type: "power", start: base.start, end: this.here.end, base, exponent };
  });

  /** `yes` and `no` are keywords too, which a path takes to say that they can be no name. */
  private readonly primaries: OrMethodOpts<ValueNode> = { IGNORE_AMBIGUITIES: true, DEF: [
    { ALT: () => this.measure() },
    { ALT: () => this.SUBRULE(this.size) },
    { ALT: () => this.SUBRULE(this.string) },
    { ALT: () => this.flag(this.CONSUME(Yes)) },
    { ALT: () => this.flag(this.CONSUME(No)) },
    { ALT: () => this.SUBRULE(this.named) },
    { ALT: () => this.SUBRULE(this.group) },
    { ALT: () => this.SUBRULE(this.list) },
  ] };

  private flag(token: IToken): FlagNode {
    return { type: "flag", ...spanOf(token), yes: token.tokenType === Yes };
  }

  private binary(operator: IToken, left: ValueNode, right: ValueNode): BinaryNode {
    this.operators++;
    const at = spanOf(operator);
    const sign = operator.tokenType === PlusMinus ? "±" : operator.tokenType === Minus ? "-" : operator.image as "+" | "*" | "/";
    if (operator.image.startsWith("+/")) this.mend(at, `${operator.image} is written ±`, "Write ±", edit(at.start, at.end, "±"));
    return { type: "binary", operator: sign, start: left.start, end: right.end, at, left, right };
  }

  /** As `valueHere`; and on the line after its `=`, which is said, where it can be nothing else. */
  private readonly valueStarts = (): boolean => this.valueHere() || this.startsLate();

  private startsLate(): boolean {
    return !this.sameLine() && equalsLike.has(this.last.tokenType) &&
      (plainStarts.has(this.next.tokenType) || (this.next.tokenType === Name && this.LA(2).tokenType === LParen));
  }

  private sayLateStart(): void {
    if (!this.startsLate()) return;
    const { start, end } = this.here;
    this.mend({ start, end }, `a value begins on the line of its =; move ${this.next.image} up`, "Move up",
      edit(start, this.next.startOffset, " "));
  }

  protected missing(): ValueNode {
    return this.ACTION(() => this.missingValue());
  }

  /** Says that a value should stand here, and stands in for it. */
  protected missingValue(): ValueNode {
    const { last, next, here } = this;
    const ahead = this.sameLine() ? next.tokenType : undefined;
    if (this.depth >= deepest && (ahead === LParen || ahead === LBracket)) {
      this.fault(spanOf(next), `brackets stand at most ${deepest} deep; write a let for a part of it`);
    } else if (ahead === Unknown) this.unexpected(next);
    else if (ahead === Plus) {
      this.fault(spanOf(next), 'a value needs no "+" before it; remove it', "Remove +", edit(next.startOffset, next.startOffset + 1, ""));
    } else if (ahead === Minus && last.tokenType === Minus) {
      this.fault(spanOf(next), 'a value has at most one "-" before it; remove this one', "Remove -", edit(next.startOffset, endOf(next), ""));
    } else if (ahead && /^([*/^±]|\.\.|to$|\+)/.test(next.image)) this.fault(here, `a value is missing before ${next.image}`);
    else if (equalsLike.has(last.tokenType) && this.subject) this.fault(here, `${this.subject.name} has no value; write one after =`);
    else if (last.tokenType === Require) this.fault(here, "require has no condition; write one, such as mass.total < 2 kg");
    else this.fault(here, `a value is missing after ${last.image}`);
    return { type: "missing", ...here };
  }
}

/** degC and degF have a zero of their own, so a sign before one belongs to its number: −5 degC is 268.15 K. */
function signed(minus: IToken, node: ValueNode): QuantityNode | undefined {
  if (node.type !== "quantity" || node.unit?.terms.length !== 1 || !/^deg[CF]$/.test(node.unit.terms[0].symbol)) return undefined;
  const { number } = node;
  return {
    ...node, start: minus.startOffset,
    number: { start: minus.startOffset, end: number.end, value: -number.value, text: `-${number.text}` },
  };
}
