import type { AirframeClass } from "../model/design/design";
import type { Check, Subject } from "./check";

const words: Readonly<Record<AirframeClass, string>> = {
  trainer: "a trainer", sport: "a sport model", aerobatic: "an aerobatic model", glider: "a glider", motor_glider: "a motor glider",
  tailless: "a tailless model", camera: "a camera ship", scale: "a scale model", speed: "a speed model", slow: "a slow flyer",
  indoor: "an indoor model", seaplane: "a seaplane",
};

/** Is a threshold in force the class's usual one, not the design's own? */
export const isUsual = (subject: Subject, check: Check, name = ""): boolean =>
  subject.limit(check, name)?.value === check.thresholds.find((threshold) => threshold.name === name)?.usual(subject.class);

/** Who sets a threshold, to begin a clause with: "a trainer needs", or "limits asks for" where the design sets its own. */
export function asker(subject: Subject, check: Check, name = "", verb = "needs"): string {
  return isUsual(subject, check, name) ? `${words[subject.class]} ${verb}` : "limits asks for";
}

/** A threshold by class: those not named get `others`. */
export function byClass(own: Partial<Record<AirframeClass, number>>, others?: number): (airframe: AirframeClass) => number | undefined {
  return (airframe) => (airframe in own ? own[airframe] : others);
}

/** The same for every class. */
export const always = (value: number) => (): number => value;

export const practice = "common practice, no source";
