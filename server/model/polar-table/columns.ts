/** Places of the columns that count, and how many radians one of the angle's unit is. */
export interface Columns {
  readonly reynolds: number;
  readonly angle: number;
  readonly lift: number;
  readonly drag: number;
  readonly moment?: number;
  readonly radians: number;
}

type Quantity = "reynolds" | "angle" | "lift" | "drag" | "moment";

const names: Readonly<Record<Quantity, RegExp>> = {
  reynolds: /^(re|reynolds|reynolds ?number)$/,
  angle: /^(angle|alpha|aoa|angle ?of ?attack)$/,
  lift: /^(lift|cl|c ?l|lift ?coefficient)$/,
  drag: /^(drag|cd|c ?d|drag ?coefficient)$/,
  moment: /^(moment|cm|c ?m|cm ?c ?4|moment ?coefficient)$/,
};

const units: readonly (readonly [RegExp, number])[] = [[/ ?(deg|degrees?|°)$/, Math.PI / 180], [/ ?(rad|radians?)$/, 1]];

const examples: Readonly<Record<Quantity, string>> = { reynolds: "reynolds", angle: "angle_deg", lift: "lift", drag: "drag", moment: "moment" };

/** Finds the columns by the names in a header. Otherwise what is wrong with them, to follow the file's name. */
export function columnsOf(header: readonly string[]): Columns | { readonly fault: string } {
  const found = new Map<Quantity, number>();
  let radians: number | undefined;
  for (const [i, name] of header.entries()) {
    const plain = name.toLowerCase().replace(/[_[\]()/\s]+/g, " ").trim();
    const unit = units.find(([pattern]) => pattern.test(plain));
    const bare = unit ? plain.replace(unit[0], "") : plain;
    const quantity = (Object.keys(names) as Quantity[]).find((one) => names[one].test(bare));
    if (!quantity) continue;
    if (found.has(quantity)) return { fault: `has two columns for ${quantity}: "${header[found.get(quantity)!]}" and "${name}"` };
    if (quantity === "angle") {
      if (!unit) return { fault: `says no unit in its column "${name}"; name it angle_deg or angle_rad` };
      radians = unit[1];
    }
    found.set(quantity, i);
  }
  if (found.size === 0) return { fault: "has no header that names its columns, as in: reynolds, angle_deg, lift, drag, moment" };
  const missing = (["reynolds", "angle", "lift", "drag"] as const).filter((quantity) => !found.has(quantity));
  if (missing.length > 0) return { fault: `has no column "${missing.map((quantity) => examples[quantity]).join('" and no column "')}" in its header` };
  return {
    reynolds: found.get("reynolds")!, angle: found.get("angle")!, lift: found.get("lift")!, drag: found.get("drag")!,
    moment: found.get("moment"), radians: radians ?? 1,
  };
}
