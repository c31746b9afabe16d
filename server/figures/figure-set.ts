import type { Quantity } from "../../grammar/units/quantity";
import { entryOf } from "../../shared/catalogue";
import type { Design } from "../model/design/design";
import type { Loading } from "../model/loadings";
import type { Facts } from "./facts";
import type { Account, Figure } from "./figure";
import type { Series } from "./series";

/** The figures of one loading, in the order they were worked out, with the facts that checks need besides. */
export class FigureSet {
  private readonly figures = new Map<string, Figure>();
  private readonly plots = new Map<string, Series>();
  readonly facts: Facts = {};
  /** False until all its figures are worked out: one that isn't there may still come. */
  complete = false;
  /** No more will come, though not all were worked out: that was called off. */
  stopped = false;

  constructor(readonly loading: Loading) {}

  /** As it is computed: as written, but for powerplants that their runs on the stand show to be otherwise, where that is asked for. */
  get design(): Design<Quantity> {
    return this.facts.calibrated ?? this.loading.design;
  }

  /** Takes a figure in; one that couldn't be worked out (undefined or not finite) stays absent. */
  put(name: string, quantity: Quantity | undefined, account: Account): void {
    const entry = entryOf(name);
    if (!entry) throw new Error(`${name} is not in the catalogue`);
    if (quantity && Number.isFinite(quantity.value)) this.figures.set(name, { name, entry, quantity, account });
    else this.figures.delete(name);
  }

  /** Takes in what a plot shows; without a line that has a value it stays absent. */
  putSeries(series: Series): void {
    const lines = series.lines.filter(({ values }) => values.some((value) => value !== undefined && Number.isFinite(value)));
    if (lines.length > 0) this.plots.set(series.name, { ...series, lines });
    else this.plots.delete(series.name);
  }

  series(): Series[] {
    return [...this.plots.values()];
  }

  /** Takes over all that was worked out of the same design. */
  adopt(other: FigureSet): void {
    for (const figure of other.all()) this.figures.set(figure.name, figure);
    for (const series of other.series()) this.plots.set(series.name, series);
    Object.assign(this.facts, other.facts);
    this.complete = other.complete;
    this.stopped = other.stopped;
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
