import type { MassParts } from "./element";
import { pathsOver } from "./paths";

/**
 * The parts without those named and all they hold. A plain name means both of a mirrored pair; a spar can be taken
 * out of its surface, though not of a surface that was weighed whole.
 */
export function without<P extends Omit<MassParts<unknown>, "allowance">>(parts: P, paths: Iterable<string>): P {
  const out = new Set(paths);
  if (out.size === 0) return parts;
  const stays = ({ path }: { readonly path: string }): boolean => {
    for (const over of pathsOver(path)) if (out.has(over)) return false;
    return true;
  };
  return {
    ...parts,
    surfaces: parts.surfaces.filter(stays).map((s) => (s.spars.every(stays) ? s : { ...s, spars: s.spars.filter(stays) })),
    bodies: parts.bodies.filter(stays),
    members: parts.members.filter(stays),
    loads: parts.loads.filter(stays),
  };
}
