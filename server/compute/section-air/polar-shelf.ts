import type { SectionShape } from "../../model/design/geometry";
import { polarSteps, type Polar, type PolarSteps } from "../polar/polar";
import { polarKey, shapeKey } from "./polar-key";
import { polarOfText, textOfPolar } from "./polar-text";

/** `"none"` where a section has no polar, `"pending"` where it is still to be worked out. */
export type PolarAnswer = Polar | "none" | "pending";

export type PolarLookup = (shape: SectionShape, reynolds: number) => PolarAnswer;

/** Where polars are kept longer than the program runs. Keys are letters, digits and hyphens; neither may throw. */
export interface PolarStore {
  read(key: string): string | undefined;
  write(key: string, text: string): void;
}

export interface PolarWant {
  readonly key: string;
  readonly shape: SectionShape;
  readonly reynolds: number;
}

/** `finished` names the polar that has just become known, if one has. */
export interface WorkStep {
  readonly finished?: string;
}

/** Polars held at most, those longest unused going first: some fifty sections at all Reynolds numbers, a few megabytes. */
const most = 500;

/**
 * Polars that are known, and those that were asked for and aren't yet. Asking computes nothing: a host works the wanted ones
 * out where it holds nothing up, and asks again.
 */
export class PolarShelf {
  private readonly known = new Map<string, Polar | "none">();
  private readonly wants = new Map<string, PolarWant>();
  private readonly shapeKeys = new WeakMap<SectionShape, string>();

  /** How often a polar was asked for that was pending. */
  misses = 0;

  constructor(private readonly store?: PolarStore) {}

  /** What is known of a polar; one that is pending is wanted from now on. */
  readonly get: PolarLookup = (shape, reynolds) => {
    if (shape.type === "flat") return "none";
    const key = polarKey(this.shapeKeyOf(shape), reynolds);
    const found = this.wants.has(key) ? undefined : this.known.get(key) ?? this.stored(key);
    if (found !== undefined) {
      this.keep(key, found);
      return found;
    }
    if (!this.wants.has(key)) this.wants.set(key, { key, shape, reynolds });
    this.misses++;
    return "pending";
  };

  /** In the order they were asked for. */
  wanted(): readonly PolarWant[] {
    return [...this.wants.values()];
  }

  /** From now on just these are wanted, in this order, unless they are known: the rest was for texts that are no more. */
  want(wants: readonly PolarWant[]): void {
    this.wants.clear();
    for (const want of wants) if (!this.known.has(want.key)) this.wants.set(want.key, want);
  }

  /** Takes in a polar worked out for a want, here or elsewhere. */
  put(key: string, polar: Polar | "none"): void {
    this.wants.delete(key);
    this.keep(key, polar);
    this.store?.write(key, textOfPolar(polar));
  }

  /**
   * Works out what is wanted, one after another, until nothing is. Yields every few milliseconds: the host turns its event
   * loop there, and may drop the rest at any time. What was begun is dropped when it is wanted no longer.
   */
  *workSteps(): Generator<WorkStep, void> {
    let last: { readonly shape: string; readonly steps: PolarSteps } | undefined;
    for (let [want] = this.wants.values(); want; [want] = this.wants.values()) {
      const { key, shape, reynolds } = want;
      if (last?.shape !== shapeKey(shape)) {
        last = { shape: shapeKey(shape), steps: polarSteps(shape) };
        yield {};
      }
      const work = last.steps(reynolds);
      let step = work.next();
      for (; !step.done && this.wants.has(key); step = work.next()) yield {};
      if (!step.done) continue;
      this.put(key, step.value ?? "none");
      yield { finished: key };
    }
  }

  private shapeKeyOf(shape: SectionShape): string {
    let key = this.shapeKeys.get(shape);
    if (key === undefined) this.shapeKeys.set(shape, (key = shapeKey(shape)));
    return key;
  }

  private stored(key: string): Polar | "none" | undefined {
    const text = this.store?.read(key);
    return text === undefined ? undefined : polarOfText(text);
  }

  private keep(key: string, polar: Polar | "none"): void {
    this.known.delete(key);
    this.known.set(key, polar);
    if (this.known.size > most) this.known.delete(this.known.keys().next().value as string);
  }
}
