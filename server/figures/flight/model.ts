import type { Quantity } from "../../../grammar/units/quantity";
import { airBasisSteps } from "../../compute/aircraft/air-basis";
import type { FlightModel } from "../../compute/aircraft/flight-model";
import { groundStance } from "../../compute/aircraft/ground-stance";
import { atmosphere } from "../../compute/atmosphere/atmosphere";
import { parasiteDragOf } from "../../compute/drag/parasite-drag";
import type { SectionsAir } from "../../compute/section-air/section-air";
import { neutralPointSteps } from "../../compute/stability/neutral-point";
import type { Design, Settled } from "../../model/design/design";
import { settler, type Settler } from "../../model/design/settle";
import type { Change, Solved } from "../changes";
import type { FigureSet } from "../figure-set";
import type { Memory } from "../memory";
import type { Shape } from "../shape";

/** What the air sees of a loading: its outside with controls, and what else drags. */
type Outside = Pick<Design<Quantity>, "members" | "wheels" | "powerplants" | "loads" | "field" | "flaps" | "bodies" | "surfaces">;

interface Ready {
  /** As `Facts.shape`: what the lattice was solved for. */
  readonly bare: Settler<Shape<Quantity>>;
  readonly outside: Settler<Outside>;
}

function readyOf({ loading: { design }, facts }: FigureSet): Ready | undefined {
  const { surfaces, bodies, members, wheels, powerplants, loads, field, flaps } = design;
  return facts.shape && { bare: facts.shape, outside: settler({ surfaces, bodies, members, wheels, powerplants, loads, field, flaps }) };
}

/**
 * The air of a loading's shape, and of that with each variable of its geometry moved. Lattices are those of the neutral point,
 * remembered; so moving a weight costs none. Undefined without a wing, or where its lattice has no solution.
 */
export function* flightModels(set: FigureSet, memory: Memory, sections: SectionsAir): Generator<void, Solved<FlightModel> | undefined> {
  const ready = readyOf(set);
  if (!ready) return undefined;
  const middle = yield* modelOf(ready.bare.nominal, ready.outside.nominal, memory, sections);
  if (!middle) return undefined;
  const changes: Change<FlightModel>[] = [];
  for (const variable of ready.bare.variables) {
    const at = (sign: 1 | -1) => modelOf(ready.bare.at(variable, sign), ready.outside.at(variable, sign), memory, sections);
    const up = yield* at(1);
    const down = yield* at(-1);
    if (up && down) changes.push({ variable, up, down });
  }
  return { middle, changes };
}

function* modelOf(bare: Shape, outside: Settled<Outside>, memory: Memory, sections: SectionsAir): Generator<void, FlightModel | undefined> {
  const air = atmosphere(outside.field);
  const pitch = yield* memory.recallSteps("neutral point", bare, () => neutralPointSteps(bare));
  if (!air || !pitch) return undefined;
  const { bodies, flaps = 0 } = outside;
  const surfaces = outside.surfaces.map((surface, i) => ({ ...bare.surfaces[i], controls: surface.controls }));
  const basis = yield* memory.recallSteps("air basis", { surfaces, bodies: bare.bodies, flaps }, () => airBasisSteps(pitch, { surfaces, bodies, flaps }));
  yield;
  const { members, wheels, powerplants, loads } = outside;
  const dragging = {
    bodies, members, wheels, surfaces: outside.surfaces, powerplants: powerplants.map(({ hub, propeller }) => ({ hub, propeller })),
  };
  const parasite = memory.recall("parasite drag", dragging, () => parasiteDragOf(dragging))(loads);
  return { basis, pitch, sections, air, parasite, stance: groundStance(wheels) };
}
