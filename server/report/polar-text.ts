import type { Polar, PolarDoubt } from "../compute/polar/polar";
import { caution } from "./figures-text";

const degrees = 180 / Math.PI;

export const doubtText: Readonly<Record<PolarDoubt, string>> = {
  low_reynolds: "below 100,000 laminar bubbles decide, and wind tunnels differ by a fifth in drag: take it for a rough guide.",
  no_stall: "lift had not fallen where the polar ends, so the highest lift may not be the most there is.",
  high_camber: "sections of such camber fail suddenly at small Reynolds numbers, which is not foreseen: the highest lift may be too high.",
  eased: "some angles were only solved with earlier transition than in a quiet stream; drag is too low there.",
};

const limits = "Worked out from the shape, for a smooth section in a quiet stream; the line of lift is fitted to the attached part. " +
  "Against wind tunnels at 150,000 to 300,000: highest lift right to about 0.07 (worst seen 0.16, camber of 9 %), drag to about 8 %. " +
  "Not modelled: roughness, a blunt trailing edge's base, Mach number, hysteresis, flow after the stall. Above 500,000 little has been compared.";

/** Polars as tables for people. */
export function polarText(foil: string, polars: readonly Polar[]): string {
  return [foil, ...polars.flatMap(tableOf), limits, caution].join("\n\n") + "\n";
}

function tableOf(polar: Polar): string[] {
  const { reynolds, zeroLiftAngle, liftSlope, moment, liftMax, angleAtLiftMax, dragMin, points, doubts } = polar;
  const said = `Reynolds number ${reynolds}: no lift at ${angle(zeroLiftAngle)}°, slope ${(liftSlope / degrees).toFixed(4)} per degree, ` +
    `moment ${moment.toFixed(3)}, highest lift ${liftMax.toFixed(2)} at ${angle(angleAtLiftMax)}°, least drag ${dragMin.toFixed(4)}`;
  const rows = [["angle °", "lift", "drag", "moment"],
    ...points.map((point) => [angle(point.angle), point.lift.toFixed(3), point.drag.toFixed(4), point.moment.toFixed(3)])];
  const table = rows.map((row) => `  ${row.map((cell) => cell.padStart(8)).join("")}`).join("\n");
  return [said, ...doubts.map((doubt) => `Take care: ${doubtText[doubt]}`), table];
}

const angle = (value: number): string => (value * degrees).toFixed(1).replace(/^-0\.0$/, "0.0");
