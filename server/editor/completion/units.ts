import type { Piece } from "../../../grammar/tree";
import { dimensions, sameDimension, type Dimension, type DimensionName } from "../../../grammar/units/dimension";
import { compoundOf, units } from "../../../grammar/units/units";
import { usualUnits } from "../../../grammar/units/usual";
import type { System } from "../../checks/say";
import type { Item } from "./item";
import type { Cursor } from "./scope";

/** Units for the number before the cursor: those that fit `wanted` first, as people write them. */
export function unitItems(cursor: Cursor, written: readonly Piece[], wanted: readonly DimensionName[], system: System): Item[] {
  const usual = wanted.flatMap((name) => usualFirst(name, system));
  const fitting = units.filter((unit) => wanted.some((name) => sameDimension(dimensions[name], unit.dimension))).map((unit) => unit.symbol);
  const others = units.map((unit) => unit.symbol);
  const start = written[0]?.start ?? cursor.word.start;
  const replace = { start, end: cursor.word.end };
  const prefix = written.map((piece) => piece.text).join("");
  const whole = [...new Set([...usual, ...fitting])].filter((symbol) => symbol.startsWith(prefix) || prefix === "");
  const items = whole.map((symbol, i): Item => unitItem(symbol, i < usual.length ? 0 : 1, replace));
  if (prefix !== "") return items.length > 0 ? items : others.map((symbol) => unitItem(symbol, 2));
  return [...items, ...others.filter((symbol) => !whole.includes(symbol)).map((symbol) => unitItem(symbol, 2, replace))];
}

function usualFirst(name: DimensionName, system: System): readonly string[] {
  const { metric, imperial } = usualUnits[name];
  return system === "metric" ? [...metric, ...imperial] : [...imperial, ...metric];
}

const unitItem = (symbol: string, rank: number, replace?: Item["replace"]): Item =>
  ({ label: symbol, sort: "unit", rank, detail: nameOf(symbol), replace, topic: { about: "unit", name: symbol } });

function nameOf(symbol: string): string | undefined {
  const unit = units.find((each) => each.symbol === symbol);
  return unit?.name ?? dimensionOf(compoundOf(symbol)?.dimension);
}

function dimensionOf(dimension: Dimension | undefined): string | undefined {
  if (!dimension) return undefined;
  return (Object.keys(dimensions) as DimensionName[]).find((name) => sameDimension(dimensions[name], dimension))?.replace(/_/g, " ");
}
