import type { Body, Load, Member, Surface, Wheel } from "../../model/design/geometry";
import type { Powerplant } from "../../model/design/power";
import { coveredBy } from "../stability/covered";
import { bodyDrag } from "./body";
import { exposedDrag } from "./exposed";
import type { DragPart, Flow, PartDrag } from "./flow";
import { airframePieces, wheelDrag } from "./gear";
import { memberDrag } from "./member";
import { surfaceDrag } from "./surface";

export type { DragPart, Flow } from "./flow";

export interface DragParts {
  readonly bodies: readonly Body[];
  readonly members: readonly Member[];
  readonly wheels: readonly Wheel[];
  readonly surfaces: readonly Surface[];
  readonly powerplants: readonly Pick<Powerplant, "hub" | "propeller">[];
  readonly loads?: readonly Load[];
}

export interface ParasiteDrag {
  readonly parts: readonly DragPart[];
  /** Sum of the parts: drag over dynamic pressure, m². */
  readonly area: number;
}

const onAll = "of all parts and of the friction of all surfaces";

const corners = { path: "corners", share: 0.05, how: `where surfaces meet bodies: 5 % ${onAll} (common practice, no source)` };

/** D. P. Raymer, Aircraft Design, sec. 12.5, from memory: 5 to 10 % of the whole for propeller aircraft. */
const leaks = {
  path: "gaps", share: 0.075,
  how: `gaps of control surfaces, leaks, horns and links: 7.5 % ${onAll} (the middle of Raymer's range for propeller aircraft)`,
};

/**
 * Drag of all but the section drag of lifting surfaces and the propellers, along the flow. Each part stands alone; what they
 * do to each other is a share of the sum, an item of its own. Finite for any input that is; parts in the order given.
 */
export function parasiteDrag(parts: DragParts, flow: Flow): ParasiteDrag {
  return parasiteDragOf(parts)(parts.loads ?? [])(flow);
}

/** The same for one shape, with any loads, in any stream: the shape is looked at once, and so are the loads. */
export function parasiteDragOf({ bodies, members, wheels, surfaces, powerplants }: Omit<DragParts, "loads">): (loads: readonly Load[]) => (flow: Flow) => ParasiteDrag {
  const pieces = wheels.length > 0 ? airframePieces(bodies, surfaces) : [];
  const faces = surfaces.map(surfaceDrag);
  const drags: PartDrag[] = [
    ...bodies.map((body) => bodyDrag(body, { bodies, surfaces, powerplants })),
    ...members.map(memberDrag),
    ...wheels.map((wheel) => wheelDrag(wheel, pieces)),
  ];
  const lines = faces.flatMap(({ layerLines }) => layerLines ?? []);
  const shares = [
    ...(bodies.some((body) => coveredBy(body, surfaces, bodies).length > 0) ? [corners] : []),
    ...(surfaces.some(({ controls }) => controls.length > 0) ? [leaks] : []),
  ];
  return (loads) => {
    const exposed = loads.flatMap((load) => exposedDrag(load, bodies, surfaces) ?? []);
    return (flow) => {
      const parts = [...drags.map((drag) => drag(flow)), ...exposed, ...lines.map((drag) => drag(flow))];
      const whole = sumOf(parts) + faces.reduce((sum, { friction }) => sum + friction(flow), 0);
      const all = [...parts, ...shares.map(({ path, share, how }) => ({ path, area: share * whole, how }))];
      return { parts: all, area: sumOf(all) };
    };
  };
}

const sumOf = (parts: readonly DragPart[]): number => parts.reduce((sum, { area }) => sum + area, 0);
