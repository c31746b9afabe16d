import { readFileSync } from "node:fs";
import { join } from "node:path";
import { root } from "./server";
import { rangeOf, type Walk } from "./views";

const file = join(root, "samples/plover.airframe");

/** A battery moved far aft: findings come, and the hover over it must answer in every client. */
export function batteryMoved(): Walk {
  const text = readFileSync(file, "utf8");
  const { start } = rangeOf(text, "battery");
  return { file, edit: { from: "(95 mm, 0 mm, -20 mm)", to: "(395 mm, 0 mm, -20 mm)" }, hover: start };
}

/** A unit of another dimension, on a line with signs outside ASCII before it: columns are UTF-16 in the protocol. */
export function wrongUnit(): Walk {
  const text = readFileSync(file, "utf8");
  return { file, edit: { from: "weight = 418 g", to: 'title = "±°²😀" ; weight = 418 mm' }, hover: rangeOf(text, "wing").start };
}
