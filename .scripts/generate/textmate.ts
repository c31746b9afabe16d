import { functions, keywords, kinds } from "../../grammar/vocabulary/index";
import { wordsOfForm } from "../../grammar/vocabulary/schema";
import { unitAliases, unitSymbols } from "../../grammar/units/units";

/** A rule of a TextMate grammar, as far as ours needs them. */
export interface Rule {
  readonly name?: string;
  readonly match?: string;
  readonly begin?: string;
  readonly end?: string;
  readonly captures?: Readonly<Record<string, { readonly name: string }>>;
  readonly patterns?: readonly Rule[];
}

const escaped = (text: string) => text.replace(/[.*+?^${}()|[\]\\/]/g, "\\$&");

/** Longest first, so that `mm` is not read as `m`. */
const oneOf = (words: Iterable<string>) =>
  `(?:${[...new Set(words)].sort((a, b) => b.length - a.length || (a < b ? -1 : 1)).map(escaped).join("|")})`;

const name = "[A-Za-z][A-Za-z0-9_]*";
const word = (words: Iterable<string>) => `(?<![A-Za-z0-9_.])${oneOf(words)}(?![A-Za-z0-9_])`;

const symbol = `${oneOf([...unitSymbols, ...unitAliases.keys()].filter((s) => s !== "%"))}(?:\\^-?[0-9]+|[²³])?(?![A-Za-z0-9_])`;
const unit = `%|/?[ \\t]*${symbol}(?:[ \\t]*[*/][ \\t]*${symbol})*(?![ \\t]*=)`;
const number = "[0-9]+(?:\\.[0-9]+)?(?:[eE][+-]?[0-9]+)?";

const scope = (scopes: readonly string[]): Rule["captures"] =>
  Object.fromEntries(scopes.map((one, i) => [String(i + 1), { name: `${one}.airframe` }]));

/** Properties that take one of a set of words: the word is coloured only beside its property. */
function wordProperties(): readonly Rule[] {
  const words = new Map<string, readonly string[]>();
  for (const kind of Object.values(kinds)) {
    for (const { name: own, form } of Object.values(kind.properties)) {
      const choice = wordsOfForm(form);
      if (choice.length > 0) words.set(own, [...(words.get(own) ?? []), ...choice]);
    }
  }
  return [...words].map(([property, choice]) => ({
    match: `(?<![A-Za-z0-9_.])(${property})[ \\t]*(=)[ \\t]*(${oneOf(choice)})(?![A-Za-z0-9_.])`,
    captures: scope(["support.type.property-name", "keyword.operator", "constant.language"]),
  }));
}

const propertyNames = () => Object.values(kinds).flatMap((kind) => Object.keys(kind.properties)).concat("drop");

function rules(): readonly Rule[] {
  return [
    { name: "comment.line.number-sign.airframe", match: "#.*$" },
    {
      name: "string.quoted.double.airframe", begin: '"', end: '"|$',
      patterns: [{ name: "constant.character.escape.airframe", match: '\\\\["\\\\]' }],
    },
    { match: `(?<![A-Za-z0-9_.])(let)[ \\t]+(${name})`, captures: scope(["keyword.control", "variable.other.constant"]) },
    { match: `(?<![A-Za-z0-9_.])(waive)[ \\t]+(${name})`, captures: scope(["keyword.control", "entity.name.tag"]) },
    {
      match: `(?<![A-Za-z0-9_.])(${oneOf(Object.keys(kinds))})[ \\t]+(?!${oneOf(keywords)}(?![A-Za-z0-9_]))(${name})(?=[ \\t]*["{#]|[ \\t]+from\\b|[ \\t]*$)`,
      captures: scope(["storage.type", "entity.name.type"]),
    },
    { name: "storage.type.airframe", match: `(?<![A-Za-z0-9_.])${oneOf(Object.keys(kinds))}(?=[ \\t]*["{]|[ \\t]+from\\b)` },
    ...wordProperties(),
    { name: "support.type.property-name.airframe", match: `${word(propertyNames())}(?=[ \\t]*=)` },
    { name: "support.function.airframe", match: `${word(Object.keys(functions))}(?=[ \\t]*\\()` },
    { name: "constant.language.airframe", match: word(["yes", "no"]) },
    { name: "keyword.control.airframe", match: word(keywords.filter((one) => one !== "yes" && one !== "no")) },
    { name: "variable.other.member.airframe", match: `(?<![A-Za-z0-9_.])${name}(?:\\.${name})+` },
    {
      match: `(?<![A-Za-z0-9_.])(${number})[ \\t]*(${unit})`,
      captures: scope(["constant.numeric", "keyword.other.unit"]),
    },
    { name: "constant.numeric.airframe", match: `(?<![A-Za-z0-9_.])${number}` },
    { name: "keyword.operator.airframe", match: "±|\\+-|\\.\\.|<=|>=|[-=<>+*/^−]" },
  ];
}

/** The highlighting grammar, whole. Blocks nest by braces only, so one flat list of rules serves every depth. */
export const textmate = () => ({
  name: "Airframe",
  scopeName: "source.airframe",
  fileTypes: ["airframe"],
  patterns: rules(),
});
