import { units } from "../../grammar/units/units";
import { copyProperties } from "../../grammar/vocabulary/composition";
import { describeDefault, describeForm, describePlace } from "../../grammar/vocabulary/describe";
import { families, functions, keywords, reserved, statements } from "../../grammar/vocabulary/index";
import { notComputedYet, type Kind, type Property } from "../../grammar/vocabulary/schema";

const begin = "<!-- words:begin -->";
const end = "<!-- words:end -->";

const code = (text: string) => `\`${text}\``;
const cell = (text: string) => text.replace(/\|/g, "\\|").replace(/\n/g, " ");
const row = (...cells: readonly string[]) => `| ${cells.map(cell).join(" | ")} |`;

function propertyRow(property: Property, wholeKindLater: boolean): string {
  const mark = property.later && !wholeKindLater ? " *Not computed yet.*" : "";
  return row(code(property.name), describeForm(property.form), describeDefault(property), `${property.text}${mark}`, code(property.example));
}

function kindSection(kind: Kind): string {
  const properties = Object.values(kind.properties);
  const table = properties.length === 0 ? [] : [
    "", row("property", "value", "if not written", "meaning", "example"), row("---", "---", "---", "---", "---"),
    ...properties.map((property) => propertyRow(property, kind.later)),
  ];
  const groups = kind.exclusive.map((group) => group.map(code).join(" "));
  return [
    `#### ${code(kind.name)}`, "", kind.text + (kind.later ? ` *${notComputedYet}*` : ""),
    `Stands in ${describePlace(kind)}.${kind.open ? " Takes any dotted name as an entry." : ""}`,
    ...table, ...(groups.length > 0 ? ["", `Only one of each may be written: ${groups.join("; ")}.`] : []),
    "", "```airframe", kind.example, "```", "",
  ].join("\n");
}

function unitTable(): string[] {
  const groups = new Map<string, string[]>();
  for (const unit of units) groups.set(unit.group, [...(groups.get(unit.group) ?? []), `${code(unit.symbol)} ${unit.name}`]);
  return [row("measure", "units"), row("---", "---"), ...[...groups].map(([group, symbols]) => row(group, symbols.join(" · ")))];
}

/** The words of the language as Markdown: statements, functions, units, and every kind with its properties. */
export function words(): string {
  const kinds = Object.entries(families).flatMap(([family, members]) => [`### ${family}`, "", ...members.map(kindSection)]);
  return [
    "### Statements", "",
    row("word", "meaning", "example"), row("---", "---", "---"),
    ...Object.entries(statements).map(([name, { text, example }]) => row(code(name), text, code(example))),
    "", `No name may be one of ${keywords.map(code).join(" ")}. Kept for later: ${[...reserved].map(code).join(" ")}.`, "",
    "### Functions", "",
    row("function", "meaning", "example"), row("---", "---", "---"),
    ...Object.values(functions).map(({ signature, text, example }) => row(code(signature), text, code(example))),
    "", "### Units", "", ...unitTable(), "",
    "Any of them may be combined, as in `75 g/dm^2`, `3.2 kgf*cm`, `780 rpm/V`, `16 m/s`.", "",
    ...kinds,
    "### Copies", "", "Any block with `from` also takes:", "",
    row("property", "value", "if not written", "meaning", "example"), row("---", "---", "---", "---", "---"),
    ...Object.values(copyProperties).map((property) => propertyRow(property, false)), "",
  ].join("\n");
}

/** The text with what stands between the marks of the words written anew; without marks they are put at its end. */
export function withWords(text: string): string {
  const [before, rest] = text.split(begin);
  const after = rest?.split(end)[1];
  if (after === undefined) return `${text.trimEnd()}\n\n## Words\n\n${begin}\n\n${words()}\n${end}\n`;
  return `${before}${begin}\n\n${words()}\n${end}${after}`;
}
