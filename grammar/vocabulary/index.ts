import { bodies } from "./bodies";
import { build } from "./build";
import { composition, copyProperties } from "./composition";
import { control } from "./control";
import { controls } from "./controls";
import { flying } from "./flying";
import { ground } from "./ground";
import { power } from "./power";
import { bare } from "./property";
import { wordsOfForm, type Kind, type Property } from "./schema";
import { structure } from "./structure";
import { surfaces } from "./surfaces";
import * as synonyms from "./synonyms";
import { whole } from "./whole";

export { functions, keywords, reserved, reservedText, statements } from "./words";
export { judge, type Judgement } from "./property";

/** Families of kinds, in the order the reference shows them. */
export const families: Readonly<Record<string, readonly Kind[]>> = {
  "The whole": whole,
  Surfaces: surfaces,
  "Control surfaces": controls,
  "Bodies and masses": bodies,
  Power: power,
  Strength: structure,
  Ground: ground,
  Control: control,
  Flying: flying,
  Build: build,
  Composition: composition,
};

/** The one table of kinds, by name. */
export const kinds: Readonly<Record<string, Kind>> = bare(Object.fromEntries(
  Object.values(families).flatMap((family) => family.map((kind) => [kind.name, kind])),
));

/** A property of a kind; `drop` belongs to every block that is a copy. Undefined for an unknown kind or name. */
export function findProperty(kind: string, name: string): Property | undefined {
  return kinds[kind]?.properties[name] ?? (name === "drop" ? copyProperties.drop : undefined);
}

/** The kinds that may stand directly in a block of kind `parent`, or in the "file". */
export function kindsWithin(parent: string): readonly Kind[] {
  return Object.values(kinds).filter((kind) => kind.within.includes(parent));
}

/**
 * Properties that must be written and are not; of alternatives the first. `goesOn`: the block is a panel after the
 * first, which inherits.
 */
export function missingProperties(kind: Kind, written: ReadonlySet<string>, goesOn = false): readonly Property[] {
  const missing: Property[] = [];
  const settled = new Set(written);
  for (const property of Object.values(kind.properties)) {
    if (!property.needed || settled.has(property.name) || (goesOn && property.inherited)) continue;
    if (property.unless.some((name) => settled.has(name))) continue;
    missing.push(property);
    settled.add(property.name);
  }
  return missing;
}

/** Groups of written properties of which only one may stand: `sweep` beside `offset`. */
export function clashingProperties(kind: Kind, written: ReadonlySet<string>): readonly (readonly string[])[] {
  return kind.exclusive.map((group) => group.filter((name) => written.has(name))).filter((group) => group.length > 1);
}

/** The kind an unknown word usually means: `stab`, `tailplane`. Those that may stand in `parent` come first. */
export function usualKind(word: string, parent?: string): string | undefined {
  const known = (name: string) => kinds[name] !== undefined;
  const fits = (name: string) => known(name) && (parent === undefined || kinds[name].within.includes(parent));
  return synonyms.usualKind(word, fits) ?? synonyms.usualKind(word, known);
}

/** The property of that kind an unknown word usually means: `mass`, `weight`. */
export function usualProperty(kind: string, word: string): string | undefined {
  return synonyms.usualProperty(word, (name) => findProperty(kind, name) !== undefined);
}

/** The word of that property an unknown one usually means: `ccw`, `anticlockwise`. */
export function usualWord(property: Property, word: string): string | undefined {
  const words = wordsOfForm(property.form);
  return synonyms.usualWord(word, (name) => words.includes(name));
}
