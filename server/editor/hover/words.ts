import { functions, kinds, reserved, reservedText, statements } from "../../../grammar/vocabulary";
import { notComputedYet, type Form, type Kind, type Property } from "../../../grammar/vocabulary/schema";
import { usualUnits } from "../../../grammar/units/usual";
import { findUnit, units, type Unit } from "../../../grammar/units/units";
import type { Card, Part, Row } from "../../report/card";

/** Keywords that are part of another statement or a value. */
const connectives: Readonly<Record<string, string>> = {
  as: "Names the file that `use` makes known.",
  because: "Says why something is required or waived.",
  from: "Copies a block with all it holds. What is written anew replaces; `drop` leaves children out.",
  to: "From root to tip, or from start to end: `245 mm to 170 mm`.",
  within: "Between two limits: `within 5 % .. 15 %`.",
  for: "Names the loadings that a `require` is for; without it, all.",
  yes: "The property holds.",
  no: "The property doesn't hold.",
};

export function keywordCard(word: string): Card | undefined {
  if (Object.hasOwn(statements, word)) return { title: `\`${word}\``, parts: [statements[word].text, { code: statements[word].example }] };
  if (Object.hasOwn(connectives, word)) return { title: `\`${word}\``, parts: [connectives[word]] };
  return undefined;
}

export function kindCard(name: string): Card | undefined {
  const kind: Kind | undefined = kinds[name];
  if (kind) return { title: `\`${name}\``, parts: [kind.text, ...later(kind), { code: kind.example }] };
  return reserved.has(name) ? { title: `\`${name}\``, parts: [`\`${name}\` ${reservedText}.`] } : undefined;
}

export function functionCard(name: string): Card | undefined {
  if (!Object.hasOwn(functions, name)) return undefined;
  const { signature, text, example } = functions[name];
  return { title: `\`${signature}\``, parts: [text, { code: example }] };
}

/** `value`: what it comes to here, where that isn't plain from the text. */
export function propertyCard(property: Property, kind: string, value?: string): Card {
  const rows: Row[] = [
    ...(value === undefined ? [] : [["here", value] as const]),
    ["takes", formText(property.form)],
    ...(property.default ? [["if not written", property.default] as const] : property.needed ? [["needed", needed(property)] as const] : []),
  ];
  return {
    title: `\`${property.name}\` of ${kind}`,
    parts: [property.text, ...later(property), { rows }, { code: `${property.name} = ${property.example}` }],
  };
}

const needed = (property: Property): string =>
  property.unless.length > 0 ? `unless ${property.unless.join(" or ")} is there` : "yes";

const later = ({ later }: { readonly later: boolean }): Part[] => (later ? [notComputedYet] : []);

/** What may stand after the `=`, in words. */
export function formText(form: Form): string {
  switch (form.form) {
    case "quantity": {
      const { words, metric, imperial } = usualUnits[form.dimension];
      const symbols = [...new Set([...metric, ...imperial])].filter((symbol) => symbol !== "%");
      const known = symbols.length > 0 ? ` (${symbols.slice(0, 5).join(", ")})` : "";
      return `${words}${form.taper ? ", or two with to between" : ""}${known}${form.words.length > 0 ? `, or ${form.words.join(", ")}` : ""}`;
    }
    case "stretch":
      return "two values with to between, from inner to outer";
    case "count":
      return "a whole number";
    case "point":
      return "a point, (x, y, z)";
    case "word":
      return form.words.join(", ");
    case "flag":
      return "yes or no";
    case "text":
      return "text in quotes";
    case "reference":
      return `the name of a ${form.kinds.includes("*") ? "part" : form.kinds.join(" or ")}${form.list ? ", or a list of names" : ""}`;
    case "names":
      return "a list of names";
    case "outputs":
      return "a list, one entry a channel";
    case "section":
      return `naca("2412"), flat(3 %)${form.blocks ? ", or the name of a foil" : ""}`;
  }
}

export function unitCard(symbol: string): Card | undefined {
  const unit: Unit | undefined = findUnit(symbol);
  if (!unit) return undefined;
  const others = units.filter((other) => other.group === unit.group && other !== unit).map((other) => other.symbol);
  return { title: `\`${unit.symbol}\``, parts: [`${unit.name}: a unit of ${unit.group}`, ...(others.length > 0 ? [`Others: ${others.join(", ")}`] : [])] };
}
