import { dimensions, type DimensionName } from "../../../grammar/units/dimension";
import { compoundOf } from "../../../grammar/units/units";

export interface Column {
  readonly place: number;
  /** As the header says. */
  readonly name: string;
  /** What one of its unit is in SI. */
  readonly scale: number;
}

const kinds = {
  rpm: { names: /^(rpm|rotation|turns)$/, dimension: "rotation", unit: "rpm", example: "rpm" },
  speed: { names: /^(speed|airspeed|v)$/, dimension: "speed", unit: "m/s", example: "speed [m/s]" },
  thrust: { names: /^(thrust|t)$/, dimension: "force", unit: "N", example: "thrust [N]" },
  power: { names: /^(power|shaft ?power|p)$/, dimension: "power", unit: "W", example: "power [W]" },
  density: { names: /^(density|air ?density|rho)$/, dimension: "density", unit: "kg/m^3", example: "density [kg/m^3]" },
} as const satisfies Record<string, { readonly names: RegExp; readonly dimension: DimensionName; readonly unit: string; readonly example: string }>;

type Kind = keyof typeof kinds;

export type Columns = Readonly<Record<Exclude<Kind, "density">, Column>> & { readonly density?: Column };

/** Finds the columns by the names and units in a header. Otherwise what is wrong with them, to follow the file's name. */
export function columnsOf(header: readonly string[]): Columns | { readonly fault: string } {
  const found: Partial<Record<Kind, Column>> = {};
  for (const [place, name] of header.entries()) {
    const { bare, unit } = parted(name);
    const kind = (Object.keys(kinds) as Kind[]).find((one) => kinds[one].names.test(bare));
    if (!kind) continue;
    const before = found[kind];
    if (before) return { fault: `has two columns for ${kind}: "${before.name}" and "${name}"` };
    const written = unit ?? (bare === "rpm" ? "rpm" : undefined);
    if (written === undefined) return { fault: `says no unit in its column "${name}"; name it ${kinds[kind].example}` };
    const compound = compoundOf(written);
    if (!compound) return { fault: `has a column "${name}" in "${written}", which is no unit; name it ${kinds[kind].example}` };
    if (!compound.dimension.every((power, i) => power === dimensions[kinds[kind].dimension][i])) {
      const meant = kind === "thrust" && ["g", "kg", "oz", "lb"].includes(written) ? `${written}f` : kinds[kind].unit;
      return { fault: `has a column "${name}" that is no ${kind === "rpm" ? "rotation" : kind}; is it ${meant}?` };
    }
    found[kind] = { place, name, scale: compound.scale };
  }
  const { rpm, speed, thrust, power, density } = found;
  if (rpm && speed && thrust && power) return { rpm, speed, thrust, power, density };
  if (Object.keys(found).length === 0) return { fault: "has no header that names its columns with their units, as in: rpm, speed [m/s], thrust [N], power [W]" };
  const missing = (["rpm", "speed", "thrust", "power"] as const).filter((kind) => !found[kind]);
  return { fault: `has no column "${missing.map((kind) => kinds[kind].example).join('" and no column "')}" in its header` };
}

/** `thrust [gf]`, `thrust (gf)` and `thrust_gf` alike. */
function parted(name: string): { readonly bare: string; readonly unit?: string } {
  const found = /^(.*?)\s*(?:[[(](.+)[\])]|_([^_]+))$/.exec(name.trim());
  if (!found) return { bare: name.trim().toLowerCase() };
  return { bare: found[1].toLowerCase().replace(/_/g, " ").trim(), unit: (found[2] ?? found[3]).trim() };
}
