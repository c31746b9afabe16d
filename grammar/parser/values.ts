import { EOF, type IOrAlt, type IToken, type ParserMethod } from "chevrotain";
import { Caret, Comma, Dot, DotDot, endOf, Equals, ForeignString, Keyword, LBracket, LParen, Minus, Name, No, Plus, PlusMinus,
  RBracket, RCurly, RParen, Semicolon, Slash, Star, StringToken, Superscript, To, UnclosedString, Unknown, Yes } from "../tokens";
import type { BinaryNode, FlagNode, ListNode, NameNode, NamedNode, PathNode, QuantityNode, Span, StringNode, ValueNode } from "../tree";
import { closers, edit, equalsLike, plainStarts, spanOf } from "./context";
import { Quantities } from "./quantities";

const binary = (operator: IToken, left: ValueNode, right: ValueNode): BinaryNode => {
  const sign = operator.image[0];
  const plain = operator.tokenType === PlusMinus ? "±" : sign === "−" ? "-" : sign;
  return { type: "binary", operator: plain as BinaryNode["operator"], start: left.start, end: right.end, at: spanOf(operator), left, right };
};

interface Items {
  readonly items: readonly ValueNode[];
  readonly trailing?: IToken | undefined;
}

/** Values: everything that may stand after `=`. Each rule takes any text and gives a node, a missing one at need. */
export abstract class Values extends Quantities {
  protected readonly value: ParserMethod<[], ValueNode> = this.RULE("value", () => {
    this.ACTION(() => {
      this.operators = 0;
      this.sayLateStart();
    });
    const left = this.OPTION({ GATE: this.valueStarts, DEF: () => this.SUBRULE(this.sum) }) ?? this.missing();
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

  protected readonly sum: ParserMethod<[], ValueNode> = this.RULE("sum", () => {
    let left = this.SUBRULE(this.product);
    if (this.ahead(Plus, Minus)) this.MANY({ GATE: this.onward, DEF: () => {
      const operator = this.OR([{ ALT: () => this.CONSUME(Plus) }, { ALT: () => this.CONSUME(Minus) }]);
      this.operators++;
      const right = this.OPTION({ GATE: this.valueHere, DEF: () => this.SUBRULE2(this.product) }) ?? this.missing();
      left = this.ACTION(() => binary(operator, left, right));
    } });
    if (this.ahead(PlusMinus)) this.OPTION2({ GATE: this.onward, DEF: () => {
      const operator = this.CONSUME(PlusMinus);
      const right = this.OPTION3({ GATE: this.valueHere, DEF: () => this.SUBRULE3(this.product) }) ?? this.missing();
      left = this.ACTION(() => binary(operator, left, right));
    } });
    return left;
  });

  private readonly product: ParserMethod<[], ValueNode> = this.RULE("product", () => {
    let left = this.SUBRULE(this.unary);
    if (this.ahead(Star, Slash)) this.MANY({ GATE: this.onward, DEF: () => {
      const operator = this.OR([{ ALT: () => this.CONSUME(Star) }, { ALT: () => this.CONSUME(Slash) }]);
      this.operators++;
      const right = this.OPTION({ GATE: this.valueHere, DEF: () => this.SUBRULE2(this.unary) }) ?? this.missing();
      left = this.ACTION(() => binary(operator, left, right));
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

  protected missing(): ValueNode {
    return this.ACTION(() => this.missingValue());
  }

  /** As `valueHere`; and on the line after its `=`, which is said, where it can be nothing else. */
  private readonly valueStarts = (): boolean => this.valueHere() || this.startsLate();

  private startsLate(): boolean {
    return !this.sameLine() && equalsLike.has(this.last.tokenType) &&
      (plainStarts.has(this.next.tokenType) || (this.next.tokenType === Name && this.LA(2).tokenType === LParen));
  }

  private sayLateStart(): void {
    if (!this.startsLate()) return;
    const { start } = this.here;
    this.mend({ start, end: start }, `a value begins on the line of its =; move ${this.next.image} up`, "Move up",
      edit(start, this.next.startOffset, " "));
  }

  private readonly primaries: IOrAlt<ValueNode>[] = [
    { ALT: () => this.measure() },
    { ALT: () => this.SUBRULE(this.size) },
    { ALT: () => this.SUBRULE(this.string) },
    { ALT: () => {
      const token = this.OR3([{ ALT: () => this.CONSUME(Yes) }, { ALT: () => this.CONSUME(No) }]);
      return this.ACTION((): FlagNode => ({ type: "flag", ...spanOf(token), yes: token.tokenType === Yes }));
    } },
    { ALT: () => this.SUBRULE(this.named) },
    { ALT: () => this.SUBRULE(this.group) },
    { ALT: () => this.SUBRULE(this.list) },
  ];

  protected readonly string: ParserMethod<[], StringNode> = this.RULE("string", () => {
    const token = this.OR(this.strings);
    return this.ACTION(() => this.stringNode(token));
  });

  private readonly strings: IOrAlt<IToken>[] = [
    { ALT: () => this.CONSUME(StringToken) },
    { ALT: () => this.CONSUME(UnclosedString) },
    { ALT: () => this.CONSUME(ForeignString) },
  ];

  private stringNode(token: IToken): StringNode {
    const { image, tokenType } = token;
    const span = spanOf(token);
    const inner = image.slice(1, tokenType === UnclosedString ? undefined : -1);
    if (tokenType === UnclosedString) {
      this.mend({ start: span.end, end: span.end }, `${image} has no closing "`, 'Add "', edit(span.end, span.end, '"'));
    } else if (tokenType === ForeignString) {
      const written = `"${inner.replace(/["\\]/g, "\\$&")}"`;
      this.mend(span, `${image} is written ${written}`, `Write ${written}`, edit(span.start, span.end, written));
      return { type: "string", ...span, text: inner };
    }
    if (!inner.includes("\\")) return { type: "string", ...span, text: inner };
    this.checkEscapes(inner, span.start + 1);
    return { type: "string", ...span, text: inner.replace(/\\(["\\])/g, "$1") };
  }

  private checkEscapes(inner: string, offset: number): void {
    for (const wrong of inner.matchAll(/\\(["\\]|[^])?/g)) {
      if (wrong[1] === '"' || wrong[1] === "\\") continue;
      const start = offset + wrong.index;
      this.mend({ start, end: start + wrong[0].length }, `${wrong[0]} is no escape; a backslash is written \\\\`, "Write \\\\",
        edit(start, start + 1, "\\\\"));
      return;
    }
  }

  /** A name, also where it is a word of the language, which is said. */
  protected nameNode(token: IToken): NameNode {
    if (token.tokenType !== Name) {
      this.fault(spanOf(token), `\`${token.image}\` is a word of the language and can't be a name; write ${token.image}_1 or the like`);
    }
    return { type: "name", start: token.startOffset, end: endOf(token), text: token.image };
  }

  /** Names with points between. A point with no name after it is a fault, and the path ends before it. */
  protected readonly path: ParserMethod<[], PathNode> = this.RULE("path", (): PathNode => {
    const first = this.OR(this.words);
    const names = [this.ACTION(() => this.nameNode(first))];
    if (this.ahead(Dot)) this.MANY({ GATE: this.sameLine, DEF: () => {
      const dot = this.CONSUME(Dot);
      const name = this.OPTION({ GATE: this.sameLine, DEF: () => this.OR2(this.moreWords) });
      this.ACTION(() => (name ? names.push(this.nameNode(name))
        : this.fault(this.here, `a name is missing after ${this.text.slice(names[0].start, endOf(dot))}`)));
    } });
    return this.ACTION(() => ({ type: "path", start: names[0].start, end: names[names.length - 1].end, names }));
  });

  private readonly words: IOrAlt<IToken>[] = [{ ALT: () => this.CONSUME(Name) }, { ALT: () => this.CONSUME(Keyword) }];
  private readonly moreWords: IOrAlt<IToken>[] = [{ ALT: () => this.CONSUME2(Name) }, { ALT: () => this.CONSUME2(Keyword) }];

  private readonly argumentsFollow = (): boolean => this.sameLine() && this.depth < 64;

  private readonly named: ParserMethod<[], ValueNode> = this.RULE("named", (): ValueNode => {
    const path = this.SUBRULE(this.path);
    const broken = this.last.tokenType === Dot;
    if (!broken && !this.ahead(LParen)) return { type: "named", start: path.start, end: path.end, path };
    const args = this.OPTION({ GATE: this.argumentsFollow, DEF: () => {
      const open = this.CONSUME(LParen);
      const inner = this.SUBRULE(this.items);
      const close = this.OPTION2(() => this.CONSUME(RParen));
      return this.ACTION(() => {
        this.closed(open, close);
        this.noComma(inner);
        return inner.items;
      });
    } });
    return this.ACTION((): ValueNode => {
      const { end } = this.here;
      if (broken) return { type: "missing", start: path.start, end };
      const node: NamedNode = { type: "named", start: path.start, end, path };
      return args ? { ...node, args } : node;
    });
  });

  private readonly group: ParserMethod<[], ValueNode> = this.RULE("group", () => {
    const open = this.CONSUME(LParen);
    const inner = this.SUBRULE(this.items);
    const close = this.OPTION(() => this.CONSUME(RParen));
    return this.ACTION(() => this.groupOf(open, inner, close));
  });

  private readonly list: ParserMethod<[], ListNode> = this.RULE("list", () => {
    const open = this.CONSUME(LBracket);
    const { items } = this.SUBRULE(this.items);
    const close = this.OPTION(() => this.CONSUME(RBracket));
    return this.ACTION((): ListNode => {
      this.closed(open, close);
      return { type: "list", start: open.startOffset, end: this.here.end, items };
    });
  });

  private readonly itemHere = (): boolean => !this.itemsEnd() && this.valueHere();

  /** Nothing more can stand between the brackets. */
  private itemsEnd(): boolean {
    const { tokenType } = this.next;
    if (closers.has(tokenType) || tokenType === RCurly || tokenType === Semicolon || tokenType === EOF) return true;
    return !this.sameLine() && this.entryAhead();
  }

  /** A value beside a value, the comma forgotten. */
  private readonly besides = (): boolean => this.sameLine() && !this.entryAhead();
  private readonly astray = (): boolean => this.restAhead() && this.next.tokenType !== Comma && !this.itemsEnd() && !this.entryAhead();

  /** What stands between brackets, up to where they close or must have been meant to. */
  private readonly items: ParserMethod<[], Items> = this.RULE("items", () => {
    const items: ValueNode[] = [];
    let trailing: IToken | undefined;
    this.ACTION(() => { this.depth++; });
    const first = this.SUBRULE(this.item);
    this.ACTION(() => { if (first) items.push(first); });
    this.MANY(() => {
      trailing = undefined;
      const item = this.OR<ValueNode | undefined>([
        { ALT: () => {
          const comma = this.CONSUME(Comma);
          const value = this.SUBRULE2(this.item);
          if (!value) trailing = comma;
          return value;
        } },
        { GATE: this.besides, ALT: () => {
          this.ACTION(() => this.missingComma());
          return this.SUBRULE3(this.sum);
        } },
      ]);
      this.ACTION(() => { if (item) items.push(item); });
    });
    this.ACTION(() => { this.depth--; });
    return { items, trailing };
  });

  /** One of them; what follows it before the next comma has no place there. */
  private readonly item: ParserMethod<[], ValueNode | undefined> = this.RULE("item", () => {
    let value = this.OPTION({ GATE: this.itemHere, DEF: () => this.SUBRULE(this.sum) });
    this.ACTION(() => {
      if (!value && (this.next.tokenType === Comma || this.astray())) value = this.missingValue();
      if (this.astray() && !this.beginsValue()) this.unexpectedInBrackets();
    });
    this.MANY({ GATE: this.lost, DEF: () => this.SUBRULE(this.any) });
    return value;
  });

  private beginsValue(): boolean {
    return plainStarts.has(this.next.tokenType) || this.next.tokenType === Name;
  }

  private readonly lost = (): boolean => this.astray() && (this.faulted || !this.beginsValue());

  protected abstract readonly any: ParserMethod<[], IToken>;

  private missingComma(): void {
    const { start, end } = this.here;
    this.fault({ start, end }, `a , is missing before ${this.next.image}`, "Add ,", edit(start, end, ","));
  }

  private unexpectedInBrackets(): void {
    const { image, tokenType } = this.next;
    if (tokenType === To || tokenType === DotDot) {
      this.fault(spanOf(this.next), `\`${image}\` can't stand inside brackets; it parts two whole values`);
    } else this.unexpected(this.next);
  }

  private closed(open: IToken, close: IToken | undefined): void {
    if (close) return;
    const { start, end } = this.here;
    const sign = open.image === "(" ? ")" : "]";
    this.fault({ start, end }, `\`${open.image}\` is never closed; write ${sign} here`, `Add ${sign}`, edit(start, end, sign));
  }

  private noComma({ trailing }: Items): void {
    if (!trailing) return;
    const span = spanOf(trailing);
    this.mend(span, "`,` is one too many before )", "Remove ,", edit(span.start, span.end, ""));
  }

  private groupOf(open: IToken, inner: Items, close: IToken | undefined): ValueNode {
    this.closed(open, close);
    this.noComma(inner);
    const span: Span = { start: open.startOffset, end: this.here.end };
    const [x, y, z, ...more] = this.withoutDecimalCommas(inner.items);
    if (x && !y) return { type: "group", ...span, inner: x };
    if (x && y && z && more.length === 0) return { type: "point", ...span, items: [x, y, z] };
    const count = inner.items.length;
    this.fault(span, count === 0 ? "() holds no value" : `a point has three coordinates, (x, y, z); here are ${count}`);
    return { type: "missing", ...span };
  }

  /** `(12,5 mm, 0 mm, 3 mm)` has one number too many, and two with a comma and nothing else between. */
  private withoutDecimalCommas(items: readonly ValueNode[]): readonly ValueNode[] {
    if (items.length === 1 || items.length === 3) return items;
    const merged: ValueNode[] = [];
    const slips: { readonly span: Span; readonly text: string }[] = [];
    for (let i = 0; i < items.length; i++) {
      const [whole, fraction] = [items[i], items[i + 1]];
      const joins = whole.type === "quantity" && fraction?.type === "quantity" && !whole.unit &&
        fraction.start === whole.end + 1 && /^\d+$/.test(whole.number.text);
      if (!joins) {
        merged.push(whole);
        continue;
      }
      const text = `${whole.number.text}.${fraction.number.text}`;
      const span = { start: whole.start, end: fraction.number.end };
      slips.push({ span, text });
      const node: QuantityNode = { ...fraction, start: whole.start, number: { ...span, text, value: Number(text) } };
      merged.push(node);
      i++;
    }
    if (merged.length !== 1 && merged.length !== 3) return items;
    for (const { span, text } of slips) {
      this.mend(span, `${this.text.slice(span.start, span.end)} is written ${text}`, `Write ${text}`, edit(span.start, span.end, text));
    }
    return merged;
  }

  /** Says that a value should stand here, and stands in for it. */
  protected missingValue(): ValueNode {
    const { last, next } = this;
    const ahead = this.sameLine();
    if (ahead && next.tokenType === Unknown) this.unexpected(next);
    else if (ahead && this.isKeyword(1) && next.tokenType !== To && last.tokenType === Equals) this.nameNode(next);
    else if (ahead && /^([*/^+±]|\.\.|to$)/.test(next.image)) this.fault(this.here, `a value is missing before ${next.image}`);
    else if (last.tokenType === Equals && this.subject) this.fault(this.here, `${this.subject.name} has no value; write one after =`);
    else this.fault(this.here, `a value is missing after ${last.image}`);
    return this.missingNode();
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
