import { polarKey } from "../compute/section-air/polar-key";
import type { PolarShelf, PolarWant } from "../compute/section-air/polar-shelf";
import type { SectionsAir } from "../compute/section-air/section-air";
import { sectionsAir } from "../compute/section-air/sections-air";

/** What figures ask of sections in the air; it notes the polars that were pending. */
export class AskedSections {
  readonly air: SectionsAir;
  private readonly lacking = new Map<string, PolarWant>();

  constructor(shelf: PolarShelf) {
    this.air = sectionsAir((shape, reynolds) => {
      const answer = shelf.get(shape, reynolds);
      if (answer === "pending") {
        const key = polarKey(shape, reynolds);
        this.lacking.set(key, { key, shape, reynolds });
      }
      return answer;
    });
  }

  /** In the order they were asked for. */
  wanted(): readonly PolarWant[] {
    return [...this.lacking.values()];
  }
}
