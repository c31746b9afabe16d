import type { AirframeClass } from "../model/design/design";

interface Margin {
  /** Share of the mean chord. */
  readonly value: number;
  readonly source: string;
}

const practice = (value: number): Margin => ({ value, source: "common practice, no source" });

/** The least static margin a class flies well with. Beginners and heavy cameras want calm, aerobats want little. */
export const leastMargin: Readonly<Record<AirframeClass, Margin>> = {
  trainer: practice(0.1), sport: practice(0.05), aerobatic: practice(0.02), glider: practice(0.05), motor_glider: practice(0.05),
  tailless: practice(0.03), camera: practice(0.05), scale: practice(0.05), speed: practice(0.05), slow: practice(0.05),
  indoor: practice(0.05), seaplane: practice(0.05),
};
