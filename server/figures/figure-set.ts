import type { Quantity } from "../../grammar/units/quantity";
import { entryOf } from "../../shared/catalogue";
import type { Loading } from "../model/loadings";
import type { Facts } from "./facts";
import type { Account, Figure } from "./figure";

/** The figures of one loading, in the order they were worked out, with the facts that checks need besides. */
export class FigureSet {
  private readonly figures = new Map<string, Figure>();
  readonly facts: Facts = {};
  /** False until the slow work is done too: a figure that isn't there may still come. */
  complete = false;

  constructor(readonly loading: Loading) {}

  /** Takes a figure in; one that couldn't be worked out (undefined or not finite) stays absent. */
  put(name: string, quantity: Quantity | undefined, account: Account): void {
    const entry = entryOf(name);
    if (!entry) throw new Error(`${name} is not in the catalogue`);
    if (!quantity || !Number.isFinite(quantity.value)) return;
    this.figures.set(name, { name, entry, quantity, account });
  }

  /** Takes over all that was worked out of the same design. */
  adopt(other: FigureSet): void {
    for (const figure of other.all()) this.figures.set(figure.name, figure);
    Object.assign(this.facts, other.facts);
    this.complete = other.complete;
  }

  get(name: string): Figure | undefined {
    return this.figures.get(name);
  }

  value(name: string): Quantity | undefined {
    return this.figures.get(name)?.quantity;
  }

  all(): Figure[] {
    return [...this.figures.values()];
  }
}
