import type { Polar, PolarDoubt, PolarPoint } from "../polar/polar";

/** A polar as text, to be kept. */
export const textOfPolar = (polar: Polar | "none"): string => JSON.stringify(polar);

const numbers = ["reynolds", "zeroLiftAngle", "liftSlope", "moment", "liftMax", "angleAtLiftMax", "dragMin"] as const;
const columns = ["angle", "lift", "drag", "moment"] as const;

/** The polar of a text that `textOfPolar` gave; undefined for any other, as of a file that was cut short. */
export function polarOfText(text: string): Polar | "none" | undefined {
  const value = parsed(text);
  if (value === "none") return value;
  if (!isRecord(value) || !numbers.every((name) => Number.isFinite(value[name]))) return undefined;
  const { points, doubts } = value;
  const whole = Array.isArray(points) && points.length > 0 && points.every((point) => isRecord(point) && columns.every((name) => Number.isFinite(point[name])));
  if (!whole || !Array.isArray(doubts)) return undefined;
  return { ...(value as unknown as Polar), points: points as readonly PolarPoint[], doubts: doubts as readonly PolarDoubt[] };
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text) as unknown;
  } catch {
    return undefined;
  }
}

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> => typeof value === "object" && value !== null;
