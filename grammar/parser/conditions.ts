import type { IToken, ParserMethod } from "chevrotain";
import { DotDot, DoubleEquals, Equals, ForeignComparison, Greater, GreaterEqual, Less, LessEqual, To, Within } from "../tokens";
import type { ConditionNode, ValueNode } from "../tree";
import { edit, spanOf } from "./context";
import { Values } from "./values";

interface Comparison {
  readonly sign: IToken;
  readonly right: ValueNode;
}

/** What `=<` and its like are written as. */
const plainSigns: Readonly<Record<string, ConditionNode["operator"]>> = { "=<": "<=", "=>": ">=", "≤": "<=", "≥": ">=" };

const within = (at: IToken, left: ValueNode, right: ValueNode, upper: ValueNode): ConditionNode => ({
  type: "condition", start: Math.min(left.start, right.start), end: Math.max(left.end, upper.end),
  left, operator: "within", at: spanOf(at), right, upper,
});

/** What `require` asks for. */
export abstract class Conditions extends Values {
  protected readonly condition: ParserMethod<[], ConditionNode | undefined> = this.RULE("condition", () => {
    const comparisons: Comparison[] = [];
    this.ACTION(() => { this.operators = 0; });
    const left = this.OPTION3({ GATE: this.sameLine, DEF: () => this.SUBRULE(this.sum) }) ?? this.missing();
    const range = this.OPTION({ GATE: this.sameLine, DEF: () => {
      const sign = this.CONSUME(Within);
      const low = this.OPTION4({ GATE: this.valueHere, DEF: () => this.SUBRULE2(this.sum) }) ?? this.missing();
      const dots = this.OPTION2({ GATE: this.sameLine, DEF: () => this.OR2([
        { ALT: () => this.CONSUME(DotDot) }, { ALT: () => this.CONSUME(To) },
      ]) });
      this.ACTION(() => this.checkDots(dots));
      const high = this.OPTION5({ GATE: this.valueHere, DEF: () => this.SUBRULE3(this.sum) }) ?? this.missing();
      return this.ACTION(() => within(sign, left, low, high));
    } });
    this.MANY({ GATE: this.sameLine, DEF: () => {
      const sign = this.OR([
        { ALT: () => this.CONSUME(Less) },
        { ALT: () => this.CONSUME(LessEqual) },
        { ALT: () => this.CONSUME(Greater) },
        { ALT: () => this.CONSUME(GreaterEqual) },
        { ALT: () => this.CONSUME(ForeignComparison) },
        { ALT: () => this.CONSUME(DoubleEquals) },
        { ALT: () => this.CONSUME(Equals) },
      ]);
      const right = this.OPTION6({ GATE: this.valueHere, DEF: () => this.SUBRULE4(this.sum) }) ?? this.missing();
      this.ACTION(() => comparisons.push({ sign, right }));
    } });
    return range ?? this.ACTION(() => this.conditionOf(left, comparisons));
  });

  private checkDots(dots: IToken | undefined): void {
    if (!dots) return this.fault(this.here, "within takes two limits; write .. and the upper one");
    if (dots.tokenType === DotDot) return;
    const { start, end } = spanOf(dots);
    this.mend({ start, end }, "to is written .. between limits", "Write ..", edit(start, end, ".."));
  }

  private conditionOf(left: ValueNode, comparisons: readonly Comparison[]): ConditionNode | undefined {
    const [first, second, third] = comparisons;
    if (!first) {
      if (left.type !== "missing") {
        this.fault(this.here, `${this.text.slice(left.start, left.end)} needs a limit; write < , <= , > , >= or within a .. b`);
      }
      return undefined;
    }
    if (third) {
      this.fault(spanOf(third.sign), "a condition has one limit, or two with within a .. b");
      return undefined;
    }
    if (second) return this.chain(left, first, second);
    const { sign, right } = first;
    const operator = this.operatorOf(left, first);
    return operator && { type: "condition", start: left.start, end: right.end, left, operator, at: spanOf(sign), right };
  }

  private operatorOf(left: ValueNode, { sign, right }: Comparison): ConditionNode["operator"] | undefined {
    const { image, tokenType } = sign;
    if (tokenType === DoubleEquals || tokenType === Equals) {
      this.equality(left, sign, right);
      return undefined;
    }
    if (tokenType !== ForeignComparison) return image as ConditionNode["operator"];
    const plain = plainSigns[image];
    const span = spanOf(sign);
    if (plain) this.mend(span, `${image} is written ${plain}`, `Write ${plain}`, edit(span.start, span.end, plain));
    else this.fault(span, `${image} can't be required; write < , <= , > , >= or within a .. b`);
    return plain;
  }

  /** `a == b`: the fix allows a hundredth to each side. */
  private equality(left: ValueNode, sign: IToken, right: ValueNode): void {
    const message = `${this.text.slice(left.start, right.end)} asks for one exact value; write within and two limits`;
    if (right.type === "missing") return this.fault(spanOf(sign), message);
    const typed = this.text.slice(right.start, right.end);
    const limits = [0.99, 1.01].map((share) => {
      if (right.type !== "quantity") return `(${typed}) * ${share}`;
      const { value } = right.number;
      return `${Number((value * share).toPrecision(6))}${this.text.slice(right.number.end, right.end)}`;
    });
    const written = `within ${limits.join(" .. ")}`;
    this.fault(spanOf(sign), message, `Write ${written}`, edit(sign.startOffset, right.end, written));
  }

  /** `5 % < x < 9 %`. */
  private chain(left: ValueNode, first: Comparison, second: Comparison): ConditionNode | undefined {
    const rising = /[<≤]/.test(first.sign.image);
    if (rising !== /[<≤]/.test(second.sign.image) || first.sign.image === "<>" || second.sign.image === "<>") {
      this.fault(spanOf(second.sign), "a condition has one limit, or two with within a .. b");
      return undefined;
    }
    const [low, high] = rising ? [left, second.right] : [second.right, left];
    const typed = (node: ValueNode): string => this.text.slice(node.start, node.end);
    const written = `${typed(first.right)} within ${typed(low)} .. ${typed(high)}`;
    const span = { start: left.start, end: second.right.end };
    this.mend(span, `${typed({ ...left, end: span.end })} is written ${written}`, `Write ${written}`, edit(span.start, span.end, written));
    return within(first.sign, first.right, low, high);
  }
}

