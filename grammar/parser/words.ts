import type { IOrAlt, IToken, ParserMethod } from "chevrotain";
import { Dot, endOf, ForeignString, Keyword, Name, StringToken, UnclosedString } from "../tokens";
import type { NameNode, PathNode, StringNode } from "../tree";
import { edit, spanOf } from "./context";
import { Quantities } from "./quantities";

/** Strings, names and paths. */
export abstract class Words extends Quantities {
  private readonly strings: IOrAlt<IToken>[] = [
    { ALT: () => this.CONSUME(StringToken) },
    { ALT: () => this.CONSUME(UnclosedString) },
    { ALT: () => this.CONSUME(ForeignString) },
  ];

  protected readonly string: ParserMethod<[], StringNode> = this.RULE("string", () => {
    const token = this.OR(this.strings);
    return this.ACTION(() => this.stringNode(token));
  });

  private stringNode(token: IToken): StringNode {
    const { image, tokenType } = token;
    const span = spanOf(token);
    const inner = image.slice(1, tokenType === UnclosedString ? undefined : -1);
    if (tokenType === UnclosedString) {
      this.mend({ start: span.end, end: span.end }, `${image} is not closed; write " at its end`, 'Add "', edit(span.end, span.end, '"'));
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
    for (const { 0: typed, 1: escaped, index } of inner.matchAll(/\\(["\\]|[^])?/g)) {
      if (escaped === '"' || escaped === "\\") continue;
      const start = offset + index;
      this.mend({ start, end: start + typed.length }, `${typed} is no escape; a backslash is written \\\\`, "Write \\\\",
        edit(start, start + 1, "\\\\"));
    }
  }

  /** A name, also where it is a word of the language, which is said. */
  protected nameNode(token: IToken): NameNode {
    const { image, tokenType, startOffset } = token;
    if (tokenType !== Name) {
      this.fault(spanOf(token), `"${image}" is a word of the language and can't be a name`, `Write ${image}_1`,
        edit(startOffset, endOf(token), `${image}_1`));
    }
    return { type: "name", start: startOffset, end: endOf(token), text: image };
  }

  private readonly words: IOrAlt<IToken>[] = [{ ALT: () => this.CONSUME(Name) }, { ALT: () => this.CONSUME(Keyword) }];
  private readonly moreWords: IOrAlt<IToken>[] = [{ ALT: () => this.CONSUME2(Name) }, { ALT: () => this.CONSUME2(Keyword) }];

  /** Names with points between. A point with no name after it is a fault, and the path ends before it. */
  protected readonly path: ParserMethod<[], PathNode> = this.RULE("path", (): PathNode => {
    const first = this.OR(this.words);
    const names = [this.ACTION(() => this.nameNode(first))];
    if (this.ahead(Dot)) this.MANY({ GATE: this.sameLine, DEF: () => {
      const dot = this.CONSUME(Dot);
      const name = this.OPTION({ GATE: this.sameLine, DEF: () => this.OR2(this.moreWords) });
      this.ACTION(() => (name ? names.push(this.nameNode(name))
        : this.fault(this.here, `${this.text.slice(names[0].start, endOf(dot))} ends in a point; write a name after it`)));
    } });
    return this.ACTION(() => ({ type: "path", start: names[0].start, end: names[names.length - 1].end, names }));
  });
}
