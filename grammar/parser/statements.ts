import type { IOrAlt, IToken, ParserMethod } from "chevrotain";
import { As, Because, Colon, Comma, DoubleEquals, Equals, For, Keyword, LCurly, Let, LParen, Name, Require,
  Use, Waive } from "../tokens";
import type { LetNode, NameNode, RequireNode, StringNode, UseNode, ValueNode, WaiveNode } from "../tree";
import { Conditions } from "./conditions";
import { edit, equalsLike, plainStarts, spanOf } from "./context";

/** Entries and the statements that hold no others. */
export abstract class Statements extends Conditions {
  /** A name or, said to be wrong, a word of the language. */
  protected readonly name: ParserMethod<[], NameNode> = this.RULE("name", () => {
    const token = this.OR([{ ALT: () => this.CONSUME(Name) }, { ALT: () => this.CONSUME(Keyword) }]);
    return this.ACTION(() => this.nameNode(token));
  });

  /** What stands where a name should, up to where the name would end. */
  protected readonly wrongName: ParserMethod<[], NameNode> = this.RULE("wrongName", (): NameNode => {
    const { startOffset: start } = this.next;
    const text = this.ACTION(() => this.sayWrongName(start));
    this.MANY({ GATE: this.wrongNameAhead, DEF: () => this.SUBRULE(this.any) });
    return { type: "name", start, end: this.here.end, text };
  });

  private readonly wrongNameAhead = (): boolean =>
    this.restAhead() && this.next.tokenType !== LCurly && !equalsLike.has(this.next.tokenType);

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
    const wrong = name && !this.recording ? undefined : this.OPTION2({ GATE: this.wrongNameAhead, DEF: () => this.SUBRULE(this.wrongName) });
    this.ACTION(() => { if (!name && !wrong) this.fault(this.here, "let has no name; write let NAME = value"); });
    const assigned = this.SUBRULE(this.assigned, { ARGS: [name?.text, name?.start] });
    return this.ACTION(() => {
      if (!assigned) this.fault(this.here, `${name?.text ?? "let"} has no value; write let ${name?.text ?? "NAME"} = value`);
      const node: LetNode = { type: "let", start: word.startOffset, end: this.here.end };
      return { ...node, ...(name && { name }), ...(assigned && { value: assigned.value }) };
    });
  });

  protected readonly useStatement: ParserMethod<[], UseNode> = this.RULE("useStatement", () => {
    const word = this.CONSUME(Use);
    const path = this.OPTION({ GATE: this.sameLine, DEF: () => this.SUBRULE(this.string) });
    this.ACTION(() => { if (!path) this.sayNoFile(); });
    if (!path || this.recording) this.MANY({ GATE: this.beforeAs, DEF: () => this.SUBRULE(this.any) });
    const as = this.OPTION2({ GATE: this.sameLine, DEF: () => this.CONSUME(As) });
    this.ACTION(() => { if (!as) this.fault(this.here, 'use has no name for the file; write as NAME after it'); });
    const name = this.OPTION3({ GATE: this.sameLine, DEF: () => this.SUBRULE(this.name) });
    return this.ACTION(() => {
      if (!name) this.fault(this.here, "a name is missing after as; write as NAME");
      const node: UseNode = { type: "use", start: word.startOffset, end: this.here.end };
      return { ...node, ...(path && { path }), ...(name && { name }) };
    });
  });

  private readonly beforeAs = (): boolean => this.restAhead() && this.next.tokenType !== As;

  /** `use plover as single`: what should stand in quotes. */
  private sayNoFile(): void {
    const { startOffset: start } = this.next;
    const typed = this.sameLine() ? /^[^\s;"]+/.exec(this.text.slice(start, start + 200))?.[0] : undefined;
    if (typed === undefined || typed === "as") return this.fault(this.here, 'use has no file; write use "other.airframe" as NAME');
    const end = start + typed.length;
    this.fault({ start, end }, `a file stands in quotes; write "${typed}"`, `Write "${typed}"`, edit(start, end, `"${typed}"`));
  }

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
      this.ACTION(() => { if (loadings.length === 0) this.fault(this.here, "a loading is missing after for; write its name"); });
      this.MANY({ GATE: this.sameLine, DEF: () => {
        this.CONSUME(Comma);
        const more = this.OPTION3(() => this.SUBRULE2(this.name));
        this.ACTION(() => (more ? loadings.push(more) : this.fault(this.here, "a loading is missing after ,; write its name")));
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
    this.ACTION(() => { if (!check) this.fault(this.here, 'waive names no check; write waive CODE because "…"'); });
    const because = this.OPTION2(() => this.SUBRULE(this.because));
    return this.ACTION(() => {
      const node: WaiveNode = { type: "waive", start: word.startOffset, end: this.here.end };
      return { ...node, ...(check && { check }), ...(because && { because }) };
    });
  });

  private readonly because: ParserMethod<[], StringNode | undefined> = this.RULE("because", () => {
    this.CONSUME(Because);
    const reason = this.OPTION({ GATE: this.sameLine, DEF: () => this.SUBRULE(this.string) });
    this.ACTION(() => { if (!reason) this.fault(this.here, 'because gives no reason; write because "…"'); });
    return reason;
  });
}

