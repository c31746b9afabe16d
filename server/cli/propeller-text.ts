import type { PropellerPoint } from "../../shared/propeller-report";
import type { Air } from "../compute/atmosphere/atmosphere";
import { powerNotes } from "../compute/powertrain/notes";
import { rotationLimit } from "../compute/propeller/rotation-limit";
import type { Propeller } from "../model/design/power";
import { caution } from "../report/figures-text";

/** Ends what is told of a propeller. */
const propellerCaution = "Propellers cut: take them off, or tie the aircraft down, before a pack is connected. Stand behind the disc.";

const columns: readonly (readonly [title: string, show: (point: PropellerPoint) => string])[] = [
  ["speed m/s", ({ speed }) => speed.toFixed(2)],
  ["advance", (point) => point.advance_ratio.toFixed(3)],
  ["thrust coeff.", (point) => point.thrust_coefficient.toFixed(4)],
  ["power coeff.", (point) => point.power_coefficient.toFixed(4)],
  ["efficiency", ({ efficiency }) => `${(100 * efficiency).toFixed(1)} %`],
  ["thrust N", ({ thrust }) => figure(thrust)],
  ["power W", ({ power }) => figure(power)],
];

/** Four digits, or three decimals. */
const figure = (value: number): string =>
  value.toFixed(Math.min(3, Math.max(0, 3 - Math.floor(Math.log10(Math.abs(value) || 1))))).replace(/^-(0\.?0*)$/, "$1");

export interface Told {
  readonly propeller: Propeller;
  readonly rotation: number;
  readonly air: Air;
  /** Airspeed from which it no longer pulls. */
  readonly end: number | undefined;
}

/** A table of points for people, with what is not modelled and how to be careful. */
export function propellerText(points: readonly PropellerPoint[], told: Told): string {
  const rows = [columns.map(([title]) => title), ...points.map((point) => columns.map(([, show]) => zeroOf(show(point))))];
  const widths = columns.map((_, i) => Math.max(...rows.map((row) => row[i].length)));
  const table = rows.map((row) => `  ${row.map((cell, i) => cell.padStart(widths[i])).join("  ")}`).join("\n");
  return [headOf(told), table, ...remarks(told, points), `${powerNotes.propeller} ${powerNotes.propellerInFlight}`, propellerCaution, caution].join("\n\n") + "\n";
}

const zeroOf = (text: string): string => (Number.parseFloat(text) === 0 ? text.replace("-", "") : text);

function headOf({ propeller, rotation, air }: Told): string {
  const { diameter, pitch, blades, stations, folding, family } = propeller;
  const inches = (metres: number) => String(Number((metres / 0.0254).toPrecision(4)));
  const size = stations ? `${inches(diameter)} in with ${stations.length} stations` : `${inches(diameter)} × ${inches(pitch)} in`;
  const tip = (rotation * diameter) / 2;
  return `${size}, ${blades} ${folding ? "folding" : family} blade${blades === 1 ? "" : "s"}, ${rpmOf(rotation)} rpm: tips at ` +
    `${tip.toFixed(0)} m/s, Mach ${(tip / air.speedOfSound).toFixed(2)}, in air of ${air.density.toFixed(3)} kg/m³`;
}

const rpmOf = (rotation: number): string => ((rotation * 30) / Math.PI).toFixed(0);

function remarks({ propeller, rotation, end }: Told, points: readonly PropellerPoint[]): string[] {
  const limit = rotationLimit(propeller);
  return [
    ...(end === undefined ? [] : [`It pulls up to ${end.toFixed(1)} m/s.`]),
    ...(points.some(({ thrust }) => thrust < -1e-6) ? ["Where it brakes hard, momentum theory fails in its wake: take those lines for a rough guide."] : []),
    ...(limit && rotation > limit.rotation
      ? [`Its type is usually turned at ${rpmOf(limit.rotation)} rpm at most (common practice): ask its maker before you turn it at ${rpmOf(rotation)}.`]
      : []),
  ];
}
