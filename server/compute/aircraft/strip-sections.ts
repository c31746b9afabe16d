import type { Half, Section } from "../../model/design/geometry";
import { spanOf } from "../planform/sides";

/** The two sections between which a place lies, and how far from the first to the second. */
export interface SectionsThere {
  readonly inner: Section;
  readonly outer: Section;
  readonly share: number;
}

/** Sections at a share of a half as built: those of the ends of its panel there; before the root and past the tip those ends' own. */
export function sectionsAlong({ panels }: Half, along: number): SectionsThere | undefined {
  const sized = panels.filter((panel) => spanOf(panel) > 0);
  const length = sized.reduce((sum, panel) => sum + spanOf(panel), 0);
  let from = 0;
  for (const [i, panel] of sized.entries()) {
    const span = spanOf(panel) / length;
    if (along <= from + span || i === sized.length - 1) {
      const share = Math.min(1, Math.max(0, (along - from) / span));
      return { inner: panel.inner.section, outer: panel.outer.section, share };
    }
    from += span;
  }
  return undefined;
}

/** A section at a chord: what a Reynolds number makes air of. */
export interface Lookup {
  readonly section: Section;
  readonly chord: number;
}

/** Where a strip's air comes from: two places in the list of lookups, and how far from the first to the second. */
export type StripLookup = readonly [inner: number, outer: number, share: number];

/** Collects lookups, each once: what is alike to the last bits is the same. */
export class Lookups {
  readonly list: Lookup[] = [];
  private readonly places = new Map<string, number>();
  private readonly names = new Map<Section, string>();

  /** One section alone where the other has no part in it. */
  of({ inner, outer, share }: SectionsThere, chord: number): StripLookup {
    const a = share < 1 ? this.place(inner, chord) : this.place(outer, chord);
    return [a, share > 0 ? this.place(outer, chord) : a, share];
  }

  private place(section: Section, chord: number): number {
    let name = this.names.get(section);
    if (name === undefined) this.names.set(section, (name = JSON.stringify(section)));
    const key = `${chord.toPrecision(9)} ${name}`;
    let place = this.places.get(key);
    if (place === undefined) {
      this.places.set(key, (place = this.list.length));
      this.list.push({ section, chord });
    }
    return place;
  }
}
