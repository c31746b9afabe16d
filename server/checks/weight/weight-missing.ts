import type { Instance } from "../../model/resolve/instance";
import type { Check, Subject, Verdict } from "../check";
import { andList } from "../names";
import { unweighed } from "../readiness";

/** Parts that must weigh something and don't. */
export const weightMissing: Check = {
  code: "weight_missing",
  wave: "quick",
  text: "Parts that must weigh something don't: one hint listing them until anything weighs, then a warning each.",
  thresholds: [],
  run(subject) {
    const missing = new Map<string, Verdict>();
    for (const set of subject.sets) for (const path of unweighed(set)) {
      const name = subject.places.name(set, path);
      const block = subject.places.blockOf(set, path);
      if (missing.has(name) || (block && isBroken(block))) continue;
      missing.set(name, { severity: "warning", message: messageFor(name, block?.kind), place: placeOf(subject, set, path) });
    }
    const names = [...missing.keys()];
    if (names.length === 0 || subject.sets.some((set) => set.facts.mass)) return [...missing.values()];
    return [{
      severity: "hint", place: subject.places.whole(),
      message: `nothing weighs anything yet: ${andList(names)} ${names.length === 1 ? "needs a weight" : "need weights"} before balance and loading can be worked out`,
    }];
  },
};

/** A weight, or a skin that should give it, is written and can't be read: that has had its message. */
function isBroken({ slots, children }: Instance): boolean {
  const skin = [...children.values()].find(({ kind }) => kind === "skin")?.slots;
  return slots.has("weight") || (skin !== undefined && skin.has("material") && (skin.has("wall") || skin.has("infill")));
}

const shells = new Set(["wing", "tailplane", "canard", "fin", "fuselage", "body", "boom"]);

function messageFor(name: string, kind: string | undefined): string {
  const how = kind && shells.has(kind) ? "write weight = …, or a skin with its material and wall" : "write weight = …";
  return `${name} weighs nothing, so the balance point is off by it; ${how} (0 g if it is weighed with another part)`;
}

/** The part, or its panel where only that has no weight. */
function placeOf({ places }: Subject, set: Subject["sets"][number], path: string) {
  const block = places.blockOf(set, path);
  const panel = block?.children.get(path.slice(path.lastIndexOf(".") + 1));
  return panel?.kind === "panel" ? places.block(panel) : places.part(set, path);
}
