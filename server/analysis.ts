import type { Finding } from "../shared/finding";
import { applyWaivers } from "./checks/waivers";
import { checks } from "./checks/registry";
import { runChecks } from "./checks/run";
import { checkRequirements } from "./checks/require";
import { sayIn, type Say, type System } from "./checks/say";
import { readLimits } from "./checks/limits";
import { readWeighed } from "./checks/weighed";
import type { KnownMoments } from "./compute/mass/part-moments";
import { FigureSet } from "./figures/figure-set";
import type { Memory } from "./figures/memory";
import { putQuickFigures, putSlowFigures } from "./figures/groups";
import type { Model } from "./model/model";
import { sameSubstance } from "./model/resolve/substance";

/** One text worked out: its model, the figures of each loading, and what is found in it, in two waves. */
export class Analysis {
  readonly sets: readonly FigureSet[];
  readonly say: Say;
  /** Has the slow work been done? */
  complete = false;
  private found?: readonly Finding[];

  /** `before`: what was worked out of the text's last version. If only comments and spaces changed, its figures stand. */
  constructor(readonly model: Model, private readonly memory: Memory, units: System, before?: Analysis) {
    this.say = sayIn(units);
    this.sets = model.loadings.map((loading) => new FigureSet(loading));
    if (before?.complete && sameSubstance(before.model.file, model.file)) {
      this.sets.forEach((set, i) => set.adopt(before.sets[i]));
      this.complete = true;
    } else {
      const moments: KnownMoments = new WeakMap();
      for (const set of this.sets) putQuickFigures(set, moments);
    }
  }

  /** Of the text and of weights at once; of everything when the analysis is complete. In the order of the text. */
  get findings(): readonly Finding[] {
    return (this.found ??= this.judge());
  }

  /** The slow work, a step at a time: aerodynamics and power. May be abandoned between steps. */
  *finish(): Generator<void, void> {
    if (this.complete) return;
    for (const set of this.sets) {
      yield* putSlowFigures(set, this.memory);
      set.complete = true;
    }
    this.complete = true;
    this.found = undefined;
  }

  /** All the slow work at once. */
  finishNow(): this {
    for (const _ of this.finish()) void _;
    return this;
  }

  set(loading: string): FigureSet {
    return this.sets.find((s) => s.loading.name === loading) ?? this.sets[0];
  }

  private judge(): readonly Finding[] {
    const { model, sets } = this;
    const limits = readLimits(model, sets, checks);
    const checked = runChecks(model, sets, limits, this.say, this.complete);
    const kept = applyWaivers(checked, model, checks.map((check) => check.code), this.complete);
    readWeighed(model, sets);
    const required = checkRequirements(model, sets, this.say);
    return [...model.problems.list(), ...kept, ...required].sort((a, b) => a.place.start - b.place.start || a.place.end - b.place.end);
  }
}
