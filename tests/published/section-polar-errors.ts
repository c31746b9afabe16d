import { readFileSync } from "node:fs";
import { polarsOf, type Polar } from "../../server/compute/polar/polar";
import { readCoordinates } from "../../server/model/coordinates/read";
import { references } from "../references";

const degrees = 180 / Math.PI;

/** Lifts that drag is compared at, as long as they lie this far below the highest. */
const lifts = [0.2, 0.4, 0.6, 0.8];
const below = 0.2;

/** Computed less measured, the mean over models of one section; per cent where so named. */
export interface Errors {
  readonly section: string;
  readonly zeroLiftDegrees?: number;
  readonly slopePercent?: number;
  readonly liftMax?: number;
  /** Angle at which lift first comes to 98 % of its highest. */
  readonly onsetDegrees?: number;
  readonly dragMinPercent?: number;
  readonly dragPercent: readonly number[];
  readonly bestRatioPercent?: number;
  readonly moment?: number;
}

type Row = Readonly<Record<string, string>>;

function rowsOf(name: string): readonly Row[] {
  const path = references("sections", name);
  if (!path) return [];
  const [header, ...lines] = readFileSync(path, "utf8").split(/\r?\n/).filter((line) => line !== "" && !line.startsWith("#"));
  const names = header.split(",");
  return lines.map((line) => Object.fromEntries(line.split(",").map((value, i) => [names[i], value])));
}

/** Mean over the models of a section at one Reynolds number. */
function measured(table: string, section: string, reynolds: number): ((column: string) => number | undefined) | undefined {
  const rows = rowsOf(table).filter((row) => row.section === section && Number(row.Re) === reynolds);
  if (rows.length === 0) return undefined;
  return (column) => {
    const values = rows.map((row) => row[column]).filter((value) => value !== "" && value !== undefined).map(Number).filter(Number.isFinite);
    return values.length === 0 ? undefined : values.reduce((a, b) => a + b) / values.length;
  };
}

/** Where a section of the reference data was measured at this Reynolds number: how far the polar is off. */
export function errorsAt(section: string, reynolds: number, extra = false): Errors | undefined {
  const at = measured(extra ? "extra_summary.csv" : "summary.csv", section, reynolds);
  const path = extra ? references("sections", "extra_coords", `${section}.dat`) : references("sections", `${section}.dat`);
  if (!at || !path) return undefined;
  const read = readCoordinates(readFileSync(path, "utf8"));
  if ("fault" in read) throw new Error(`${section} ${read.fault}`);
  const polar = polarsOf({ type: "coordinates", points: read.points })(reynolds);
  if (!polar) throw new Error(`no polar of ${section} at ${reynolds}`);
  return errorsOf(section, polar, at);
}

function errorsOf(section: string, polar: Polar, at: (column: string) => number | undefined): Errors {
  const off = (found: number | undefined, column: string) => {
    const value = at(column);
    return found === undefined || value === undefined ? undefined : found - value;
  };
  const percent = (found: number | undefined, column: string) => {
    const value = at(column);
    return found === undefined || value === undefined ? undefined : 100 * (found / value - 1);
  };
  const top = polar.points.findIndex((point) => point.lift === polar.liftMax);
  const rising = polar.points.slice(0, top + 1);
  const where = (reach: (i: number) => number, value: number, of: (i: number) => number): number | undefined => {
    const i = rising.findIndex((_, k) => k > 0 && (reach(k - 1) - value) * (reach(k) - value) <= 0);
    if (i < 1) return undefined;
    const share = (value - reach(i - 1)) / (reach(i) - reach(i - 1));
    return of(i - 1) + share * (of(i) - of(i - 1));
  };
  const highest = at("cl_max");
  const compared = lifts.filter((lift) => highest !== undefined && lift < highest - below);
  return {
    section,
    zeroLiftDegrees: off(polar.zeroLiftAngle * degrees, "alpha0_fit_deg"),
    slopePercent: percent(polar.liftSlope / degrees, "dcl_dalpha_per_deg"),
    liftMax: off(polar.liftMax, "cl_max"),
    onsetDegrees: off(where((i) => rising[i].lift, 0.98 * polar.liftMax, (i) => rising[i].angle * degrees), "alpha_98pct_clmax_deg"),
    dragMinPercent: percent(polar.dragMin, "cd_min"),
    dragPercent: compared.flatMap((lift) =>
      percent(where((i) => rising[i].lift, lift, (i) => rising[i].drag), `cd_at_cl_${lift.toFixed(1)}`) ?? []),
    bestRatioPercent: percent(Math.max(...rising.map((point) => point.lift / point.drag)), "LD_max"),
    moment: off(polar.moment, "cm_c4_mean"),
  };
}

/** Of the errors that are there. */
export function spread(errors: readonly (number | undefined)[]): { count: number; mean: number; rms: number; absolute: number; worst: number } {
  const all = errors.filter((value) => value !== undefined && Number.isFinite(value)) as number[];
  const mean = (of: (value: number) => number) => all.reduce((sum, value) => sum + of(value), 0) / all.length;
  return { count: all.length, mean: mean((v) => v), rms: Math.sqrt(mean((v) => v * v)), absolute: mean(Math.abs), worst: Math.max(...all.map(Math.abs)) };
}
