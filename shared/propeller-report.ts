import * as z from "zod";

/** What `propeller --format json` prints. SI units, but rpm. */

export const propellerPoint = z.strictObject({
  rpm: z.number(),
  speed: z.number().describe("m/s, along the shaft."),
  advance_ratio: z.number().describe("V/(n D), n in turns a second."),
  thrust_coefficient: z.number().describe("T/(ρ n² D⁴)"),
  power_coefficient: z.number().describe("P/(ρ n³ D⁵)"),
  efficiency: z.number().describe("Thrust × speed over shaft power; 0 standing still, and where it brakes or windmills."),
  thrust: z.number().describe("N"),
  power: z.number().describe("At the shaft, W."),
});

export const propellerReport = z.strictObject({ points: z.array(propellerPoint) });

export type PropellerPoint = z.infer<typeof propellerPoint>;
export type PropellerReport = z.infer<typeof propellerReport>;
