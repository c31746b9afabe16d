import type { Quantity } from "../../grammar/units/quantity";
import type { DimensionName } from "../../grammar/units/dimension";
import type { Finding, Fix, Severity } from "../../shared/finding";
import type { FigureSet } from "../figures/figure-set";
import type { AirframeClass } from "../model/design/design";
import type { SourceFile } from "../model/resolve/instance";
import type { Places } from "./places";
import type { Say } from "./say";

/** A threshold of a check: what `limits` may change, `CODE` or `CODE.name`. */
export interface Threshold {
  /** Empty for the check's only one. */
  readonly name: string;
  readonly dimension: DimensionName;
  /** The default in SI for a class; undefined where the check doesn't apply to it. */
  readonly usual: (airframe: AirframeClass) => number | undefined;
  readonly text: string;
  readonly source: string;
}

/** Text, weights and planform; aerodynamics and power; what rests on section polars. In the order they are worked out. */
export const waves = ["quick", "slow", "polars"] as const;

export type Wave = (typeof waves)[number];

/** What a check looks at. Figures that are still being worked out are absent, and the check runs again with them. */
export interface Subject {
  readonly file: SourceFile;
  readonly class: AirframeClass;
  readonly sets: readonly FigureSet[];
  readonly places: Places;
  readonly say: Say;
  /** The threshold in force: the designer's from `limits`, else the class's usual one. */
  limit(check: Check, name?: string): Quantity | undefined;
}

/** What a check says; the registry adds the code. */
export interface Verdict {
  readonly severity: Severity;
  readonly message: string;
  readonly place: Finding["place"];
  readonly figure?: string;
  readonly loading?: string;
  readonly fixes?: readonly Fix[];
  readonly related?: Finding["related"];
}

/** One check, in a file of its own beside its page `CODE.md`. */
export interface Check {
  readonly code: string;
  /** It speaks when this has been worked out. */
  readonly wave: Wave;
  /** When it fires, in a sentence. */
  readonly text: string;
  readonly thresholds: readonly Threshold[];
  run(subject: Subject): readonly Verdict[];
}
