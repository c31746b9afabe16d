import type { Finding } from "../shared/finding";
import { applyWaivers } from "./checks/waivers";
import type { Wave } from "./checks/check";
import { checks } from "./checks/registry";
import { runChecks } from "./checks/run";
import { checkRequirements } from "./checks/require";
import { sayIn, type Say, type System } from "./checks/say";
import { readLimits } from "./checks/limits";
import { readWeighed } from "./checks/weighed";
import type { KnownMoments } from "./compute/mass/part-moments";
import type { PolarShelf, PolarWant } from "./compute/section-air/polar-shelf";
import { AskedSections } from "./figures/asked-sections";
import { FigureSet } from "./figures/figure-set";
import type { Memory } from "./figures/memory";
import { putQuickFigures, type SlowFigures } from "./figures/groups";
import type { Model } from "./model/model";
import { sameSubstance } from "./model/resolve/substance";

/** What outlives a text: dear answers, polars, and how slow figures are worked out with them. */
export interface Workshop {
  readonly memory: Memory;
  readonly polars: PolarShelf;
  readonly figures: SlowFigures;
}

/**
 * One text worked out: its model, the figures of each loading, and what is found in it, in three waves. The first comes with
 * it, the second by `finish()`; while polars are `wanted` then, the third by `finish()` again once they are on the shelf.
 */
export class Analysis {
  readonly sets: readonly FigureSet[];
  readonly say: Say;
  /** How far it has been worked out. */
  reached: Wave = "quick";
  /** Polars that the second wave lacked. */
  wanted: readonly PolarWant[] = [];
  /** The third wave was called off. */
  stopped = false;
  private found?: readonly Finding[];

  /** `before`: what was worked out of the text's last version. If only comments and spaces changed, its figures stand. */
  constructor(readonly model: Model, private readonly workshop: Workshop, units: System, before?: Analysis) {
    this.say = sayIn(units);
    this.sets = model.loadings.map((loading) => new FigureSet(loading));
    if (before && before.reached !== "quick" && sameSubstance(before.model.file, model.file)) {
      this.sets.forEach((set, i) => set.adopt(before.sets[i]));
      this.reached = before.reached;
      this.wanted = before.wanted;
      this.stopped = before.stopped;
    } else {
      const moments: KnownMoments = new WeakMap();
      for (const set of this.sets) putQuickFigures(set, moments);
    }
  }

  /** Has all been worked out? */
  get complete(): boolean {
    return this.reached === "polars";
  }

  /** Of all that has been worked out, in the order of the text. */
  get findings(): readonly Finding[] {
    return (this.found ??= this.judge());
  }

  /** The slow work, a step at a time; what is known from before takes none. May be abandoned between steps. */
  *finish(): Generator<void, void> {
    if (this.complete) return;
    const { memory, polars, figures } = this.workshop;
    const asked = new AskedSections(polars);
    memory.begin();
    for (const set of this.sets) {
      const before = polars.misses;
      yield* figures(set, memory, asked.air);
      set.complete = polars.misses === before;
    }
    this.wanted = asked.wanted();
    this.reached = this.wanted.length > 0 ? "slow" : "polars";
    this.found = undefined;
    if (this.complete) for (const set of this.sets) set.complete = true;
  }

  /** All of it at once, polars included. */
  finishNow(): this {
    const { polars } = this.workshop;
    while (!this.complete) {
      for (const _ of this.finish()) void _;
      polars.want(this.wanted);
      for (const _ of polars.workSteps()) void _;
    }
    return this;
  }

  /** Leaves it at what is known. */
  stop(): void {
    this.stopped = true;
    for (const set of this.sets) set.stopped = !set.complete;
  }

  /** May this finding, of the text before, still be found in this one? */
  awaits({ code, figure, loading = "" }: Finding): boolean {
    if (this.complete || this.stopped) return false;
    if (this.reached === "quick" || checks.find((check) => check.code === code)?.wave === "polars") return true;
    return figure !== undefined && !this.set(loading).get(figure);
  }

  set(loading: string): FigureSet {
    return this.sets.find((s) => s.loading.name === loading) ?? this.sets[0];
  }

  private judge(): readonly Finding[] {
    const { model, sets } = this;
    const limits = readLimits(model, sets, checks);
    const checked = runChecks(model, sets, limits, this.say, this.reached);
    const kept = applyWaivers(checked, model, checks.map((check) => check.code), this.complete);
    readWeighed(model, sets);
    const required = checkRequirements(model, sets, this.say);
    return [...model.problems.list(), ...kept, ...required].sort((a, b) => a.place.start - b.place.start || a.place.end - b.place.end);
  }
}
