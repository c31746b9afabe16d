import { dimensions } from "../../../grammar/units/dimension";
import { isQuantity, quantity, type Quantity } from "../../../grammar/units/quantity";
import type { LegSpeed, PlannedLeg, PlannedSortie } from "../design/sortie";
import { pathOf, type Instance } from "../resolve/instance";
import type { Reader } from "./reader";

/** What is flown in a loading: the sorties that name it, and in the first loading those that name none. A sortie with a broken leg is left out. */
export function buildSorties(root: Instance, reader: Reader, loading: Instance | undefined): PlannedSortie<Quantity>[] {
  const blocks = [...root.children.values()];
  const first = blocks.find(({ kind }) => kind === "loading");
  return blocks.filter(({ kind }) => kind === "sortie").flatMap((block): PlannedSortie<Quantity>[] => {
    const own = reader.written(block, "loading") ? reader.block(block, "loading")?.target : first;
    if (own !== loading) return [];
    const legs = [...block.children.values()].filter(({ kind }) => kind === "leg").map((leg) => legOf(leg, reader));
    const whole = legs.length > 0 && legs.every((leg) => leg !== undefined);
    return whole ? [{ path: pathOf(block), equipment: reader.own(block, "equipment"), legs }] : [];
  });
}

const lengths = ["time", "distance", "height"] as const;

function legOf(block: Instance, reader: Reader): PlannedLeg<Quantity> | undefined {
  const long = lengths.filter((name) => reader.written(block, name));
  const length = long.length === 1 ? reader.quantity(block, long[0]) : undefined;
  const climb = climbOf(block, reader);
  const speed = reader.written(block, "speed") ? reader.raw(block, "speed") : climb === "full" ? "best_climb" : climb === "glide" ? "best_glide" : "cruise";
  const banked = reader.written(block, "bank");
  const bank = banked ? reader.quantity(block, "bank") : undefined;
  if (!length || climb === undefined || (banked && !bank)) return undefined;
  if (long[0] === "height" && !reader.written(block, "climb") && !reader.written(block, "glide")) return undefined;
  if (!isQuantity(speed) && typeof speed !== "string") return undefined;
  return {
    name: block.key, climb, speed: speed as Quantity | LegSpeed, ...(bank && { bank }),
    for: { [long[0]]: length } as PlannedLeg<Quantity>["for"],
  };
}

function climbOf(block: Instance, reader: Reader): Quantity | "full" | "glide" | undefined {
  const climbs = reader.written(block, "climb");
  if (reader.written(block, "glide")) {
    const glides = reader.flag(block, "glide");
    if (glides === undefined || (glides && climbs)) return undefined;
    if (glides) return "glide";
  }
  if (!climbs) return quantity(0, dimensions.speed);
  const climb = reader.raw(block, "climb");
  return climb === "full" || isQuantity(climb) ? climb : undefined;
}
