import type { Quantity } from "../../../grammar/units/quantity";
import type { Skin } from "../design/geometry";
import type { Instance } from "../resolve/instance";
import type { Reader } from "./reader";

/** The skin written in a surface or a body; undefined without a material that has a density. */
export function skinOf(owner: Instance, reader: Reader): Skin<Quantity> | undefined {
  const block = [...owner.children.values()].find((child) => child.kind === "skin");
  const material = block && reader.block(block, "material")?.target;
  if (!block || !material) return undefined;
  const density = reader.quantity(material, "density");
  const arealDensity = reader.quantity(material, "areal_density");
  if (!density && !arealDensity) return undefined;
  return {
    density, arealDensity,
    wall: reader.quantity(block, "wall"),
    ribSpacing: reader.quantity(block, "rib_spacing"),
    infill: reader.quantity(block, "infill"),
  };
}
