import { plain } from "../../../grammar/units/quantity";
import type { LiftLimit } from "../../compute/aircraft/lift-limits";
import type { FigureSet } from "../../figures/figure-set";
import { cgAftOfLimit } from "../balance/cg-aft-of-limit";
import type { Check, Subject, Verdict } from "../check";
import { judge } from "../judge";
import { balances } from "../readiness";

/** A canard that goes on lifting when the wing has let go. */
export const canardStallsLast: Check = {
  code: "canard_stalls_last",
  wave: "polars",
  text: "With a canard: the wing reaches its limit of lift before the canard does.",
  thresholds: [],
  run(subject) {
    for (const set of subject.sets) {
      const limits = set.facts.flight?.points.stall.limits.filter(({ sense }) => sense === "up");
      const wing = limits?.find(({ kind }) => kind === "wing");
      const canards = set.facts.flight?.model.basis.strips.filter(({ kind }) => kind === "canard");
      if (!limits || !wing || !canards || canards.length === 0 || !balances(set, subject) || tailHeavy(subject, set)) continue;
      const canard = limits.find(({ kind }) => kind === "canard");
      if (!canard || canard.liftCoefficient > wing.liftCoefficient) return [verdict(subject, set, wing, canard?.path ?? canards[0].path, canard)];
    }
    return [];
  },
};

/** A balance point behind its limit takes load off the canard: that has its own message. */
function tailHeavy(subject: Subject, set: FigureSet): boolean {
  const margin = set.value("stability.static_margin");
  return !margin || judge(margin, subject.limit(cgAftOfLimit) ?? plain(0), "least").fails;
}

function verdict(subject: Subject, set: FigureSet, wing: LiftLimit, path: string, canard: LiftLimit | undefined): Verdict {
  const { places, say } = subject;
  const lift = (limit: LiftLimit) => say(plain(limit.liftCoefficient));
  const [front, main] = [path, wing.path].map((one) => places.name(set, one));
  return {
    severity: "error", figure: "aero.stall_station", loading: set.loading.name, place: places.part(set, path),
    message: `${main} reaches its limit at a lift coefficient of ${lift(wing)}, ${front} only ${canard ? `at ${lift(canard)}` : "beyond any lift"}` +
      `${set.loading.block ? ` in ${set.loading.name}` : ""}: as the wing lets go the nose rises instead of falling, and no elevator brings it back; ` +
      `give ${front} less area, a section with less highest lift or more incidence, or move weight forward`,
  };
}
