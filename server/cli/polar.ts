import type { PolarReport } from "../../shared/polar-report";
import { polarRange, polarsOf, type Polar } from "../compute/polar/polar";
import { meanLine } from "../compute/section/mean-line";
import type { SectionShape } from "../model/design/geometry";
import { readCoordinates } from "../model/coordinates/read";
import { doubtText, polarText } from "../report/polar-text";
import { Failure, type Io } from "./io";
import { readText } from "./open";

export interface PolarOptions {
  readonly reynolds: string;
  readonly format: "text" | "json" | "csv";
}

/** Prints a section's polars. 1 if one could not be worked out. */
export async function polar(foil: string, options: PolarOptions, io: Io): Promise<number> {
  const numbers = reynoldsOf(options.reynolds);
  const of = polarsOf(await shapeOf(foil, io));
  const polars = numbers.map(of).filter((each) => each !== undefined);
  if (options.format === "json") io.out(`${JSON.stringify(reportOf(foil, polars), undefined, 2)}\n`);
  else if (options.format === "csv") io.out(csv(polars));
  else io.out(polarText(foil, polars));
  const solved = polars.map(({ reynolds }) => reynolds);
  for (const reynolds of numbers.filter((each) => !solved.includes(each))) {
    io.err(`${foil} has no polar at a Reynolds number of ${reynolds}: its flow could not be solved at enough angles\n`);
  }
  if (options.format !== "text") {
    for (const { reynolds, doubts } of polars) for (const doubt of doubts) io.err(`At a Reynolds number of ${reynolds}: ${doubtText[doubt]}\n`);
  }
  return polars.length < numbers.length ? 1 : 0;
}

const formula = /^naca[\s_-]*\(?\s*["']?\s*(\d+)\s*["']?\s*\)?$/i;

async function shapeOf(foil: string, io: Io): Promise<SectionShape> {
  const digits = formula.exec(foil.trim())?.[1];
  if (digits === undefined) {
    if (/^flat\b/.test(foil.trim())) throw new Failure("a flat plate has no polar: its thin nose is not modelled");
    const read = readCoordinates(await readText(foil, io));
    if ("fault" in read) throw new Failure(`${foil} ${read.fault}`);
    return { type: "coordinates", points: read.points };
  }
  const shape: SectionShape = { type: "naca", digits };
  if (digits.endsWith("00") || !meanLine(shape)) {
    throw new Failure(`there is no section naca("${digits}"): it takes four digits such as "2412", or five such as "23012"`);
  }
  return shape;
}

function reynoldsOf(text: string): number[] {
  const [low, high] = polarRange;
  return text.split(/[,;\s]+/).filter((word) => word !== "").map((word) => {
    const [, number, unit] = /^(\d+\.?\d*(?:e\d+)?)([kM]?)$/.exec(word) ?? [];
    const value = Number(number) * (unit === "k" ? 1e3 : unit === "M" ? 1e6 : 1);
    if (!Number.isFinite(value)) throw new Failure(`--reynolds takes numbers such as 100000,200000; "${word}" is none`);
    if (value < low || value > high) {
      throw new Failure(`--reynolds lies between ${low} and ${high}, where the method is tried; here it is ${word}`);
    }
    return value;
  });
}

function reportOf(foil: string, polars: readonly Polar[]): PolarReport {
  return {
    foil,
    polars: polars.map((each) => ({
      reynolds: each.reynolds, zero_lift_angle: each.zeroLiftAngle, lift_slope: each.liftSlope, moment: each.moment,
      lift_max: each.liftMax, angle_at_lift_max: each.angleAtLiftMax, drag_min: each.dragMin, points: [...each.points],
    })),
  };
}

const csv = (polars: readonly Polar[]): string =>
  ["reynolds,angle,lift,drag,moment", ...polars.flatMap(({ reynolds, points }) =>
    points.map(({ angle, lift, drag, moment }) => [reynolds, angle, lift, drag, moment].join(",")))].join("\n") + "\n";
