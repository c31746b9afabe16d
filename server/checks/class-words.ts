import type { AirframeClass } from "../model/design/design";
import type { Check, Subject } from "./check";

const words: Readonly<Record<AirframeClass, string>> = {
  trainer: "a trainer", sport: "a sport model", aerobatic: "an aerobatic model", glider: "a glider", motor_glider: "a motor glider",
  tailless: "a tailless model", camera: "a camera ship", scale: "a scale model", speed: "a speed model", slow: "a slow flyer",
  indoor: "an indoor model", seaplane: "a seaplane",
};

/** Who sets a threshold, to begin a clause with: "a trainer needs", or "limits asks for" where the design sets its own. */
export function asker(subject: Subject, check: Check, name = "", verb = "needs"): string {
  const usual = check.thresholds.find((threshold) => threshold.name === name)?.usual(subject.class);
  return subject.limit(check, name)?.value === usual ? `${words[subject.class]} ${verb}` : "limits asks for";
}

/** A threshold by class: those not named get `others`. */
export function byClass(own: Partial<Record<AirframeClass, number>>, others?: number): (airframe: AirframeClass) => number | undefined {
  return (airframe) => (airframe in own ? own[airframe] : others);
}

/** The same for every class. */
export const always = (value: number) => (): number => value;

export const practice = "common practice, no source";
