import { dimensions } from "../../../grammar/units/dimension";
import { halfWidth, quantity } from "../../../grammar/units/quantity";
import type { Check } from "../check";
import { always, practice } from "../class-words";

/** Weights at which rules commonly change, kg, as read on 25 November 2026. */
const steps = [
  { mass: 0.25, text: "registration commonly begins", source: "EU 2019/947 Art. 14(5): 250 g or more; UK: 250 g, some duties from 100 g; US 14 CFR 48.15: over 0.55 lb" },
  { mass: 25, text: "the open rules for model aircraft commonly end and a permit for the single aircraft begins", source: "EU 2019/947: under 25 kg; UK: under 25 kg; US 14 CFR 107.3: under 55 lb" },
] as const;

export const ruleSteps: readonly { readonly mass: number; readonly source: string }[] = steps;

/** A pointer to local law. */
export const ruleMass: Check = {
  code: "rule_mass",
  wave: "quick",
  text: "The weight is a little over one at which rules commonly change, or over the greatest of them. A pointer to local law, not advice.",
  thresholds: [{
    name: "near", dimension: "ratio", text: "How far over a lower step it still says so, as a share of the step.", usual: always(0.2), source: practice,
  }],
  run(subject) {
    const near = subject.limit(ruleMass, "near");
    const heaviest = [...subject.sets].filter((set) => set.value("mass.total")).sort((a, b) => b.value("mass.total")!.value - a.value("mass.total")!.value)[0];
    if (!near || !heaviest) return [];
    const mass = heaviest.value("mass.total")!;
    const most = mass.value + halfWidth(mass);
    const step = steps.filter((one) => most >= one.mass).at(-1);
    if (!step) return [];
    const last = step === steps[steps.length - 1];
    if (!last && mass.value > step.mass * (1 + near.value)) return [];
    const limit = subject.say(quantity(step.mass, dimensions.mass));
    const where = heaviest.loading.block ? ` in ${heaviest.loading.name}` : "";
    const over = mass.value >= step.mass ? `is at or over ${limit}` : `is under ${limit}, but its band reaches past it`;
    return [{
      severity: "hint", figure: "mass.total", loading: heaviest.loading.name, place: subject.places.whole(),
      message: `weight ${subject.say(mass)}${where} ${over}, where ${step.text}; look up the law and the club's rules where you fly (read 25 November 2026: ${step.source})`,
    }];
  },
};
