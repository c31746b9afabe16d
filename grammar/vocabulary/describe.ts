import { usualUnits } from "../units/usual";
import type { Form, Kind, Property } from "./schema";

const listed = (names: readonly string[]): string =>
  names.length < 2 ? names.join("") : `${names.slice(0, -1).join(", ")} or ${names[names.length - 1]}`;

const oneOf = (words: readonly string[]): string => `${words.length > 1 ? "one of " : ""}${words.map((word) => `\`${word}\``).join(" ")}`;

/** What a value of this form is, in words: "a length, or two with `to` between". */
export function describeForm(form: Form): string {
  switch (form.form) {
    case "quantity": return usualUnits[form.dimension].words + (form.taper ? ", or two with `to` between" : "") + (form.words.length > 0 ? `, or ${oneOf(form.words)}` : "");
    case "count": return "a whole number";
    case "point": return "a point, `(x, y, z)`";
    case "stretch": return `two values with \`to\` between, each ${usualUnits[form.dimension].words}`;
    case "word": return oneOf(form.words);
    case "flag": return "`yes` or `no`";
    case "text": return "text in quotes";
    case "reference": return describeReference(form.kinds, form.list);
    case "names": return "a list of names";
    case "outputs": return "a list, one entry a channel";
    case "section": return "`naca(…)` or `flat(…)`" + (form.blocks ? ", or the name of a `foil`" : "") + (form.taper ? "; or two with `to` between" : "");
  }
}

function describeReference(kinds: readonly string[], list: boolean): string {
  const what = kinds.includes("*") ? "part" : listed(kinds.map((kind) => `\`${kind}\``));
  const article = /^`?[aeiou]/.test(what) ? "an" : "a";
  return `the name of ${article} ${what}${list ? ", or a list of them" : ""}`;
}

/** Whether it must be written, or what holds when it isn't; empty where it is simply left out. */
export function describeDefault(property: Property): string {
  if (!property.needed) return property.default;
  const unless = property.unless.length > 0 ? `, unless ${listed(property.unless)}` : "";
  return `needed${unless}${property.inherited ? "; later panels go on from the one before" : ""}`;
}

/** Where a kind may stand: "the file, an `assembly`". */
export function describePlace(kind: Kind): string {
  return listed(kind.within.map((place) => (place === "file" ? "the file" : `\`${place}\``)));
}
