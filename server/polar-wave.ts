import type { PolarShelf, PolarWant } from "./compute/section-air/polar-shelf";

/** Work that takes longer than this is told of, ms. */
const patience = 1000;

/** Works wanted polars out, so long at a time, and tells how far it is once that takes over a second. */
export class PolarWave {
  private steps?: ReturnType<PolarShelf["workSteps"]>;
  private since?: number;
  private done = 0;
  private told?: string;

  /** `tell` is given a line at a time, `naca 4412 at 150,000 (3 of 8)`; undefined when it is over. */
  constructor(
    private readonly polars: Pick<PolarShelf, "want" | "wanted" | "workSteps">,
    private readonly now: () => number,
    private readonly tell: (line: string | undefined) => void,
  ) {}

  /** Goes on for so many ms with what is wanted, which may be other than last time: what was begun goes on if it still is. */
  work(wants: readonly PolarWant[], budget: number): void {
    const start = this.now();
    this.since ??= start;
    this.polars.want(wants);
    do {
      const step = (this.steps ??= this.polars.workSteps()).next();
      if (step.done) {
        this.steps = undefined;
        return;
      }
      if (step.value.finished !== undefined) this.done++;
    } while (this.now() < start + budget);
    if (this.now() >= this.since + patience) this.say();
  }

  /** Is none of these still to be worked out? As of the last work. */
  has(wants: readonly PolarWant[]): boolean {
    const left = new Set(this.polars.wanted().map(({ key }) => key));
    return !wants.some(({ key }) => left.has(key));
  }

  /** Nobody waits for polars any more. */
  end(): void {
    this.steps = undefined;
    this.since = undefined;
    this.done = 0;
    if (this.told !== undefined) this.tell(undefined);
    this.told = undefined;
  }

  private say(): void {
    const left = this.polars.wanted();
    if (left.length === 0) return;
    const [{ shape, reynolds }] = left;
    const name = shape.type === "naca" ? `naca ${shape.digits}` : "coordinates";
    const line = `${name} at ${reynolds.toLocaleString("en")} (${this.done + 1} of ${this.done + left.length})`;
    if (line !== this.told) this.tell(line);
    this.told = line;
  }
}
