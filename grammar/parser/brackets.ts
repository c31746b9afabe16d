import { EOF, type IToken, type ParserMethod } from "chevrotain";
import { Comma, Dot, DotDot, LBracket, LParen, Name, RBracket, RCurly, RParen, Semicolon, To } from "../tokens";
import type { ListNode, QuantityNode, Span, ValueNode } from "../tree";
import { closers, deepest, edit, plainStarts, spanOf } from "./context";
import { Words } from "./words";

interface Items {
  readonly items: readonly ValueNode[];
  readonly trailing?: IToken | undefined;
}

/** Groups, points, lists and calls. An open bracket holds no line that begins an entry or a block. */
export abstract class Brackets extends Words {
  protected abstract readonly sum: ParserMethod<[], ValueNode>;
  protected abstract readonly any: ParserMethod<[], IToken>;
  protected abstract missingValue(): ValueNode;

  private readonly argumentsFollow = (): boolean => this.sameLine() && this.depth < deepest;

  protected readonly named: ParserMethod<[], ValueNode> = this.RULE("named", (): ValueNode => {
    const path = this.SUBRULE(this.path);
    const broken = this.last.tokenType === Dot;
    if (!broken && !this.ahead(LParen)) return { type: "named", start: path.start, end: path.end, path };
    const args = this.OPTION({ GATE: this.argumentsFollow, DEF: () => {
      this.CONSUME(LParen);
      const inner = this.SUBRULE(this.items);
      this.SUBRULE(this.close, { ARGS: [RParen] });
      this.ACTION(() => this.noComma(inner));
      return inner.items;
    } });
    const { end } = this.here;
    if (broken) return { type: "missing", start: path.start, end };
    return args ? { type: "named", start: path.start, end, path, args } : { type: "named", start: path.start, end, path };
  });

  protected readonly group: ParserMethod<[], ValueNode> = this.RULE("group", () => {
    const open = this.CONSUME(LParen);
    const inner = this.SUBRULE(this.items);
    this.SUBRULE(this.close, { ARGS: [RParen] });
    return this.ACTION(() => {
      this.noComma(inner);
      return this.groupOf({ start: open.startOffset, end: this.here.end }, inner.items);
    });
  });

  protected readonly list: ParserMethod<[], ListNode> = this.RULE("list", () => {
    const open = this.CONSUME(LBracket);
    const { items } = this.SUBRULE(this.items);
    this.SUBRULE(this.close, { ARGS: [RBracket] });
    return this.ACTION((): ListNode => ({ type: "list", start: open.startOffset, end: this.here.end, items }));
  });

  /** The closing bracket, or the other kind of one in its place, or none, which is said. */
  private readonly close: ParserMethod<[type?: typeof RParen], void> = this.RULE("close", (type?: typeof RParen) => {
    const sign = type === RParen ? ")" : "]";
    const token = this.OPTION(() => this.OR([{ ALT: () => this.CONSUME(RParen) }, { ALT: () => this.CONSUME(RBracket) }]));
    this.ACTION(() => {
      const span = token ? spanOf(token) : this.here;
      if (!token) this.fault(span, `"${sign === ")" ? "(" : "["}" is never closed; write ${sign} here`, `Add ${sign}`, edit(span.start, span.end, sign));
      else if (token.tokenType !== type) {
        this.fault(span, `"${token.image}" stands where ${sign} should`, `Write ${sign}`, edit(span.start, span.end, sign));
      }
    });
  });

  private readonly itemHere = (): boolean => !this.itemsEnd() && this.valueHere();

  /** Nothing more can stand between the brackets. */
  private itemsEnd(): boolean {
    const { tokenType } = this.next;
    if (closers.has(tokenType) || tokenType === RCurly || tokenType === Semicolon || tokenType === EOF) return true;
    return this.entryAhead();
  }

  private beginsValue(): boolean {
    return plainStarts.has(this.next.tokenType) || this.next.tokenType === Name;
  }

  /** A value beside a value, the comma forgotten. */
  private readonly besides = (): boolean => this.sameLine() && this.beginsValue() && !this.entryAhead();
  private readonly another = (): boolean => this.next.tokenType === Comma || this.besides();
  private readonly astray = (): boolean => this.sameLine() && this.next.tokenType !== Comma && !this.itemsEnd();
  private readonly lost = (): boolean => this.astray() && (this.faulted || !this.beginsValue());

  /** What stands between brackets, up to where they close or must have been meant to. */
  private readonly items: ParserMethod<[], Items> = this.RULE("items", () => {
    const items: ValueNode[] = [];
    let trailing: IToken | undefined;
    this.ACTION(() => { this.depth++; });
    const first = this.SUBRULE(this.item);
    this.ACTION(() => { if (first) items.push(first); });
    this.MANY({ GATE: this.another, DEF: () => {
      trailing = undefined;
      const item = this.OR<ValueNode | undefined>([
        { ALT: () => {
          const comma = this.CONSUME(Comma);
          const value = this.SUBRULE2(this.item);
          if (!value) trailing = comma;
          return value;
        } },
        { ALT: () => {
          this.ACTION(() => this.missingComma());
          return this.SUBRULE3(this.sum);
        } },
      ]);
      this.ACTION(() => { if (item) items.push(item); });
    } });
    this.ACTION(() => { this.depth--; });
    return { items, trailing };
  });

  /** One of them; what follows it before the next comma has no place there. */
  private readonly item: ParserMethod<[], ValueNode | undefined> = this.RULE("item", () => {
    let value = this.OPTION({ GATE: this.itemHere, DEF: () => this.SUBRULE(this.sum) });
    this.ACTION(() => {
      if (!value && (this.next.tokenType === Comma || this.astray())) value = this.missingValue();
      if (this.astray() && !this.beginsValue()) this.sayAstray();
    });
    this.MANY({ GATE: this.lost, DEF: () => this.SUBRULE(this.any) });
    return value;
  });

  private missingComma(): void {
    const { start, end } = this.here;
    this.fault({ start, end }, `a , is missing before ${this.next.image}`, "Add ,", edit(start, end, ","));
  }

  private sayAstray(): void {
    const { image, tokenType } = this.next;
    if (tokenType !== To && tokenType !== DotDot) this.unexpected(this.next);
    else this.fault(spanOf(this.next), `"${image}" can't stand inside brackets; it parts two whole values`);
  }

  private noComma({ trailing }: Items): void {
    if (!trailing) return;
    const span = spanOf(trailing);
    this.fault(span, '"," has nothing after it; remove it', "Remove ,", edit(span.start, span.end, ""));
  }

  private groupOf(span: Span, items: readonly ValueNode[]): ValueNode {
    const [x, y, z, ...more] = this.withoutDecimalCommas(items);
    if (x && !y) return { type: "group", ...span, inner: x };
    if (x && y && z && more.length === 0) return { type: "point", ...span, items: [x, y, z] };
    this.fault(span, items.length === 0 ? "() holds no value; write one, or a point (x, y, z)"
      : `a point has three coordinates, (x, y, z); here are ${items.length}`);
    return { type: "missing", ...span };
  }

  /** `(12,5 mm, 0 mm, 3 mm)` has one number too many, and two with a comma and nothing else between. */
  private withoutDecimalCommas(items: readonly ValueNode[]): readonly ValueNode[] {
    if (items.length === 1 || items.length === 3) return items;
    const merged: ValueNode[] = [];
    for (const item of items) {
      const whole = merged[merged.length - 1];
      const joined = whole && joinDecimal(whole, item);
      if (joined) merged[merged.length - 1] = joined;
      else merged.push(item);
    }
    if (merged.length !== 1 && merged.length !== 3) return items;
    for (const item of merged) {
      if (item.type !== "quantity" || items.includes(item)) continue;
      const { start, end, text } = item.number;
      this.mend({ start, end }, `${this.text.slice(start, end)} is written ${text}`, `Write ${text}`, edit(start, end, text));
    }
    return merged;
  }
}

/** 12 and 5 mm, of `12,5 mm`, as one. */
function joinDecimal(whole: ValueNode, fraction: ValueNode): QuantityNode | undefined {
  if (whole.type !== "quantity" || fraction.type !== "quantity" || whole.unit) return undefined;
  if (fraction.start !== whole.end + 1 || !/^\d+$/.test(whole.number.text) || !/^\d+$/.test(fraction.number.text)) return undefined;
  const text = `${whole.number.text}.${fraction.number.text}`;
  return { ...fraction, start: whole.start, number: { start: whole.start, end: fraction.number.end, text, value: Number(text) } };
}
