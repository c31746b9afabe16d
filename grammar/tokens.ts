import { createToken, Lexer, type IToken, type TokenType } from "chevrotain";
import { unclosedString } from "./parser/unclosed";

/** Every token type is one of these, so that what stands in the wrong place can be stepped over. */
export const Any = createToken({ name: "Any", pattern: Lexer.NA });
export const Keyword = createToken({ name: "Keyword", pattern: Lexer.NA, categories: Any });

const token = (name: string, pattern: string | RegExp, more: object = {}): TokenType =>
  createToken({ name, pattern, categories: Any, line_breaks: false, ...more });

const skipped = (name: string, pattern: RegExp, more: object = {}): TokenType =>
  createToken({ name, pattern, group: Lexer.SKIPPED, line_breaks: false, ...more });

const space = " \\t\\v\\f\\u00A0\\u2000-\\u200A\\u202F\\u205F\\u3000\\uFEFF";
const letter = "A-Za-z\\u00AA\\u00B5\\u00C0-\\u00D6\\u00D8-\\u00F6\\u00F8-\\u02C1\\u0370-\\u0373\\u0376-\\u037D\\u0386" +
  "\\u0388-\\u0481\\u048A-\\u0556\\u0561-\\u0587\\u05D0-\\u05EA\\u0620-\\u064A\\u1E00-\\u1FFC\\u2126" +
  "\\u3041-\\u30FA\\u3400-\\u9FFF\\uAC00-\\uD7A3";
const number = "\\d+(?:\\.\\d+)?(?:[eE][+-]?\\d+)?";
const size = "\\d+(?:\\.\\d+)?";

export const Space = skipped("Space", new RegExp(`[${space}]+`));
export const Newline = skipped("Newline", /\r\n|\n|\r/, { line_breaks: true });
export const Comment = skipped("Comment", /#[^\r\n]*/);
/** `//` and `/* *\/`, which other languages have. */
export const ForeignComment = createToken({
  name: "ForeignComment", pattern: /\/\/[^\r\n]*|\/\*(?:[^*]|\*(?!\/))*\*\//, group: "foreign", line_breaks: true,
});

export const Name = token("Name", new RegExp(`[${letter}][${letter}\\u0300-\\u036F\\d_]*`));
const keyword = (word: string): TokenType =>
  createToken({ name: word, pattern: word, longer_alt: Name, categories: Keyword, line_breaks: false });

export const Use = keyword("use");
export const As = keyword("as");
export const Let = keyword("let");
export const Require = keyword("require");
export const Waive = keyword("waive");
export const Because = keyword("because");
export const From = keyword("from");
export const To = keyword("to");
export const Within = keyword("within");
export const For = keyword("for");
export const Yes = keyword("yes");
export const No = keyword("no");
export const keywords: readonly TokenType[] = [Use, As, Let, Require, Waive, Because, From, To, Within, For, Yes, No];

/** Words that can be no name. */
export const keywordNames: ReadonlySet<string> = new Set(keywords.map((type) => type.name));

export const NumberToken = token("Number", new RegExp(number));
/** `.5`, `5.`: a mistake with a message of its own, as are the next two. */
export const PointNumber = token("PointNumber", /\.\d+(?:[eE][+-]?\d+)?|\d+\.(?![.\d])/);
export const SizeToken = token("Size", new RegExp(`${size}(?:[ \\t]*[xX×][ \\t]*${size})+`));
export const ForeignString = token("ForeignString", /'[^'\r\n]*'|[“”„][^“”"\r\n]*[“”"]/);

export const StringToken = token("String", /"(?:[^"\\\r\n]|\\[^\r\n])*"/);
export const UnclosedString = createToken({
  name: "UnclosedString", categories: Any, line_breaks: false, start_chars_hint: ['"'],
  pattern: (text: string, offset: number) => unclosedString(text, offset),
});
/** `12"`, `5'`: inches and feet, right after a number. */
export const Mark = createToken({
  name: "Mark", categories: Any, line_breaks: false, start_chars_hint: ['"', "'"],
  pattern: (text: string, offset: number, tokens: IToken[]): [string] | null => {
    const number = tokens[tokens.length - 1];
    const follows = number?.tokenType === NumberToken && endOf(number) === offset;
    return follows && (text[offset] === '"' || text[offset] === "'") ? [text[offset]] : null;
  },
});

export const LCurly = token("LCurly", "{");
export const RCurly = token("RCurly", "}");
export const LParen = token("LParen", "(");
export const RParen = token("RParen", ")");
export const LBracket = token("LBracket", "[");
export const RBracket = token("RBracket", "]");
export const Semicolon = token("Semicolon", ";");
export const Comma = token("Comma", ",");
export const DotDot = token("DotDot", "..");
export const Dot = token("Dot", ".");
export const LessEqual = token("LessEqual", "<=");
export const GreaterEqual = token("GreaterEqual", ">=");
export const Less = token("Less", "<");
export const Greater = token("Greater", ">");
/** Comparisons of other languages and of print. */
export const ForeignComparison = token("ForeignComparison", /=<|=>|!=|<>|≤|≥|≠/);
export const DoubleEquals = token("DoubleEquals", /={2,3}/);
export const Equals = token("Equals", "=");
export const Colon = token("Colon", /:=?/);
export const PlusMinus = token("PlusMinus", /±|\+-|\+−|\+\/[-−]/);
export const Plus = token("Plus", "+");
export const Minus = token("Minus", /[-−]/);
export const Star = token("Star", "*");
export const Slash = token("Slash", "/");
export const Caret = token("Caret", "^");
export const Superscript = token("Superscript", /[²³]/);
export const Percent = token("Percent", "%");
/** `12°`, `20 °C`. */
export const Degree = token("Degree", /[°º][CF]?|[℃℉]/);
export const Unknown = token("Unknown", /_[A-Za-z0-9_]*|[\uD800-\uDBFF][\uDC00-\uDFFF]|[\u0000-\uFFFF]/);

/** In the order they are tried: longer ones before those they begin with. */
export const tokenTypes: TokenType[] = [
  Space, Newline, Comment, ...keywords, Name, SizeToken, PointNumber, NumberToken,
  LessEqual, GreaterEqual, ForeignComparison, Less, Greater, DoubleEquals, Equals, Semicolon, Comma,
  LCurly, RCurly, LParen, RParen, LBracket, RBracket, Percent, Mark, UnclosedString, StringToken,
  ForeignComment, Slash, PlusMinus, Plus, Minus, Star, DotDot, Dot,
  Colon, Caret, Superscript, Degree, ForeignString, Any, Keyword, Unknown,
];

const lexer = new Lexer(tokenTypes, { positionTracking: "onlyStart", ensureOptimizations: true, skipValidations: true });

export interface Lexed {
  readonly tokens: IToken[];
  /** Comments not begun with `#`. */
  readonly foreign: readonly IToken[];
}

/** Cuts any text into tokens; what has no meaning is `Unknown`, so nothing is lost but space, line ends and comments. */
export function lex(text: string): Lexed {
  const { tokens, groups } = lexer.tokenize(text);
  return { tokens, foreign: groups["foreign"] ?? [] };
}

export const endOf = (token: IToken): number => token.startOffset + token.image.length;
