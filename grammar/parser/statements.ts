import type { IOrAlt, IToken, ParserMethod } from "chevrotain";
import { As, Because, Colon, Comma, DoubleEquals, Equals, For, Keyword, Let, LParen, Name, Require,
  Use, Waive } from "../tokens";
import type { LetNode, NameNode, RequireNode, StringNode, UseNode, ValueNode, WaiveNode } from "../tree";
import { Conditions } from "./conditions";
import { edit, plainStarts, spanOf } from "./context";

/** Entries and the statements that hold no others. */
export abstract class Statements extends Conditions {
  /** A name or, said to be wrong, a word of the language. */
  protected readonly name: ParserMethod<[], NameNode> = this.RULE("name", () => {
    const token = this.OR([{ ALT: () => this.CONSUME(Name) }, { ALT: () => this.CONSUME(Keyword) }]);
    return this.ACTION(() => this.nameNode(token));
  });

  private readonly equals: IOrAlt<IToken>[] = [
    { ALT: () => this.CONSUME(Equals) },
    { ALT: () => this.CONSUME(DoubleEquals) },
    { ALT: () => this.CONSUME(Colon) },
  ];

  private sayEquals(token: IToken): void {
    if (token.tokenType === Equals) return;
    const span = spanOf(token);
    const written = this.text[span.start - 1] === " " ? "=" : " =";
    this.mend(span, `${token.image} is written =`, "Write =", edit(span.start, span.end, written));
  }

  /** After a name: a value without its `=`. */
  private readonly valueAhead = (): boolean => {
    const { tokenType } = this.next;
    if (!this.sameLine()) return false;
    return plainStarts.has(tokenType) || (tokenType === Name && this.LA(2).tokenType === LParen);
  };

  /** The value of what is called `name`, from its `=` on; nothing where not even a sign of a value stands. */
  protected readonly assigned: ParserMethod<[name?: string, start?: number], { equals: IToken | undefined; value: ValueNode } | undefined> =
    this.RULE("assigned", (name?: string, start?: number) => {
      this.subject = { name: name ?? "", start: start ?? 0 };
      const equals = this.OPTION({ GATE: this.sameLine, DEF: () => this.OR(this.equals) });
      let value: ValueNode | undefined;
      this.OPTION2({ GATE: () => equals !== undefined || this.valueAhead(), DEF: () => {
        this.ACTION(() => (equals ? this.sayEquals(equals) : this.sayNoEquals(name ?? "")));
        value = this.SUBRULE(this.value);
      } });
      this.subject = undefined;
      return value && { equals, value };
    });

  private sayNoEquals(name: string): void {
    const { start: from } = this.subject ?? this.here;
    if (/^[\p{L}\p{N}_.]+(?:-[\p{L}\p{N}_.]+)+[ \t]*[=:]/u.test(this.text.slice(from, from + 200))) return void this.sayWrongName(from);
    const { start } = this.here;
    this.fault({ start, end: start }, `= is missing after ${name}`, "Add =", edit(start, start, " ="));
  }

  protected readonly letStatement: ParserMethod<[], LetNode> = this.RULE("letStatement", () => {
    const word = this.CONSUME(Let);
    const name = this.OPTION({ GATE: this.sameLine, DEF: () => this.SUBRULE(this.name) });
    this.ACTION(() => { if (!name) this.fault(this.here, "let needs a name: let NAME = value"); });
    const assigned = this.SUBRULE(this.assigned, { ARGS: [name?.text, name?.start] });
    return this.ACTION(() => {
      if (!assigned) this.fault(this.here, `${name?.text ?? "let"} has no value: let ${name?.text ?? "NAME"} = value`);
      const node: LetNode = { type: "let", start: word.startOffset, end: this.here.end };
      return { ...node, ...(name && { name }), ...(assigned && { value: assigned.value }) };
    });
  });

  protected readonly useStatement: ParserMethod<[], UseNode> = this.RULE("useStatement", () => {
    const word = this.CONSUME(Use);
    const path = this.OPTION({ GATE: this.sameLine, DEF: () => this.SUBRULE(this.string) });
    this.ACTION(() => { if (!path) this.fault(this.here, 'use needs a file in quotes: use "other.airframe" as NAME'); });
    const as = this.OPTION2({ GATE: this.sameLine, DEF: () => this.CONSUME(As) });
    this.ACTION(() => { if (!as) this.fault(this.here, 'use needs a name: use "other.airframe" as NAME'); });
    const name = this.OPTION3({ GATE: this.sameLine, DEF: () => this.SUBRULE(this.name) });
    return this.ACTION(() => {
      if (!name) this.fault(this.here, 'a name is missing after as: use "other.airframe" as NAME');
      const node: UseNode = { type: "use", start: word.startOffset, end: this.here.end };
      return { ...node, ...(path && { path }), ...(name && { name }) };
    });
  });

  protected readonly requireStatement: ParserMethod<[], RequireNode> = this.RULE("requireStatement", () => {
    const word = this.CONSUME(Require);
    const loadings: NameNode[] = [];
    const condition = this.SUBRULE(this.condition);
    this.OPTION(() => {
      this.CONSUME(For);
      this.OPTION2({ GATE: this.sameLine, DEF: () => {
        const first = this.SUBRULE(this.name);
        this.ACTION(() => loadings.push(first));
      } });
      this.ACTION(() => { if (loadings.length === 0) this.fault(this.here, "for needs the name of a loading"); });
      this.MANY({ GATE: this.sameLine, DEF: () => {
        this.CONSUME(Comma);
        const more = this.OPTION3(() => this.SUBRULE2(this.name));
        this.ACTION(() => (more ? loadings.push(more) : this.fault(this.here, "a name is missing after ,")));
      } });
    });
    const because = this.OPTION4(() => this.SUBRULE(this.because));
    return this.ACTION(() => {
      const node: RequireNode = { type: "require", start: word.startOffset, end: this.here.end, loadings };
      return { ...node, ...(condition && { condition }), ...(because && { because }) };
    });
  });

  protected readonly waiveStatement: ParserMethod<[], WaiveNode> = this.RULE("waiveStatement", () => {
    const word = this.CONSUME(Waive);
    const check = this.OPTION({ GATE: this.sameLine, DEF: () => this.SUBRULE(this.name) });
    this.ACTION(() => { if (!check) this.fault(this.here, 'waive needs the code of a check: waive CODE because "…"'); });
    const because = this.OPTION2(() => this.SUBRULE(this.because));
    return this.ACTION(() => {
      const node: WaiveNode = { type: "waive", start: word.startOffset, end: this.here.end };
      return { ...node, ...(check && { check }), ...(because && { because }) };
    });
  });

  private readonly because: ParserMethod<[], StringNode | undefined> = this.RULE("because", () => {
    this.CONSUME(Because);
    const reason = this.OPTION({ GATE: this.sameLine, DEF: () => this.SUBRULE(this.string) });
    this.ACTION(() => { if (!reason) this.fault(this.here, 'because needs a reason in quotes: because "…"'); });
    return reason;
  });
}

