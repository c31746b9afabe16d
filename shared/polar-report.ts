import * as z from "zod";

/** What `polar --format json` prints. Angles in radians, coefficients on the chord. */

const polarReportPoint = z.strictObject({
  angle: z.number().describe("rad, to the x axis of the coordinates."),
  lift: z.number(),
  drag: z.number(),
  moment: z.number().describe("About the quarter chord, nose up."),
});

const polarReportEntry = z.strictObject({
  reynolds: z.number(),
  zero_lift_angle: z.number().describe("rad, of the straight line through the attached part of the lift curve."),
  lift_slope: z.number().describe("per rad, of that line."),
  moment: z.number().describe("About the quarter chord, nose up, in attached flow."),
  lift_max: z.number(),
  angle_at_lift_max: z.number().describe("rad"),
  drag_min: z.number(),
  points: z.array(polarReportPoint),
});

export const polarReport = z.strictObject({ foil: z.string(), polars: z.array(polarReportEntry) });

export type PolarReport = z.infer<typeof polarReport>;
