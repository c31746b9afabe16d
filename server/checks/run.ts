import type { Quantity } from "../../grammar/units/quantity";
import type { Finding } from "../../shared/finding";
import type { FigureSet } from "../figures/figure-set";
import type { Model } from "../model/model";
import { waves, type Subject, type Wave } from "./check";
import { limitOf } from "./limits";
import { Places } from "./places";
import { checks } from "./registry";
import type { Say } from "./say";

/** What the checks find that can speak once so much is worked out. */
export function runChecks(
  model: Model, sets: readonly FigureSet[], limits: ReadonlyMap<string, Quantity>, say: Say, reached: Wave,
): Finding[] {
  const airframe = sets[0].loading.design.class;
  const subject: Subject = {
    file: model.file, class: airframe, sets, say,
    places: new Places(model.file),
    limit: (check, name) => limitOf(limits, check, airframe, name),
  };
  return checks
    .filter((check) => waves.indexOf(check.wave) <= waves.indexOf(reached))
    .flatMap((check) => check.run(subject).map((verdict): Finding => ({ code: check.code, ...verdict })));
}
