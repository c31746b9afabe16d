import { dimensions, type DimensionName } from "../../../grammar/units/dimension";
import { quantity, type Quantity } from "../../../grammar/units/quantity";
import { overStall } from "../../compute/aircraft/flight-points";
import { heldAlive, neutralSideThrust, pointed, torqueSpreads, type Alive, type AliveCase, type Pulled } from "../../compute/motor-out/all-alive";
import type { LateralAir } from "../../compute/motor-out/lateral-air";
import { together, type Cause, type Lateral } from "../../compute/motor-out/plant";
import { lateralAccount } from "../../compute/stability/accounts";
import { settle } from "../../model/design/settle";
import { across } from "../changes";
import type { Account, Input } from "../figure";
import type { FigureSet } from "../figure-set";
import type { Memory } from "../memory";
import { mapsIn } from "../propeller-maps";
import type { Row } from "../series";
import { named } from "../wing";
import { causes, controlsOf } from "./failures";
import { sectionsAccount } from "./points";
import { steeredAir } from "./steered";

/** What rudder and ailerons do at full throttle with all motors running, in steps. Nothing without flight on motors, or where nothing steers. */
export function* putTorqueTrim(set: FigureSet, memory: Memory): Generator<void, void> {
  const { flight } = set.facts;
  const { powerplants, sources } = settle({ powerplants: set.design.powerplants, sources: set.design.sources });
  const mass = set.value("mass.total");
  if (!flight?.power || !mass) return;
  const { model, loaded, points: { stall }, table, performance } = flight;
  yield;
  const lateral = steeredAir(set, memory);
  if (!lateral) return;
  yield;
  const path: Pulled = performance?.climb ?? { speed: overStall * stall.speed, loadFactor: 1 };
  const flown = { model, table, lateral, powerplants, sources, mapOf: mapsIn(memory) };
  const given: AliveCase = { ...flown, spreads: torqueSpreads(flown, path.speed) };
  const held = heldAlive(given, loaded, path);
  if (!held) return;
  yield;
  const neutral = neutralSideThrust(given, loaded, path);
  const [single] = powerplants;
  const share = rudderShare(held, lateral);
  set.facts.climbTrim = {
    held, ...(share !== undefined && { share }), ...(neutral !== undefined && { neutral }),
    shareAt: (right) => {
      const there = powerplants.length === 1 ? heldAlive({ ...given, powerplants: [pointed(single, right)] }, loaded, path) : undefined;
      return there && rudderShare(there, lateral);
    },
  };
  yield;
  const of = yield* across({ middle: given, changes: [] }, { mass: { quantity: mass, step: 1e-3 * mass.value } }, (_, { mass: kg }) => {
    const there = kg === loaded.mass ? held : heldAlive(given, { ...loaded, mass: kg }, path);
    return there && { ...angles(there, lateral), bank: there.bank, neutral: kg === loaded.mass ? neutral : neutralSideThrust(given, { ...loaded, mass: kg }, path, neutral) };
  });
  if (!of) return;
  putFigures(set, held, lateral, performance?.climb !== undefined, of);
  yield* putSeries(set, given);
}

const angles = ({ rudder, aileron }: Pick<Alive, "rudder" | "aileron">, { yaw, roll }: LateralAir) => ({
  rudder: rudder === undefined ? undefined : yaw?.angle(rudder), aileron: aileron === undefined ? undefined : roll?.angle(aileron),
});

/** Of the throw on its side; undefined without a rudder. */
function rudderShare({ rudder }: Alive, { yaw }: LateralAir): number | undefined {
  if (rudder === undefined || !yaw) return undefined;
  return rudder > 0 ? rudder / yaw.throw.positive : -rudder / yaw.throw.negative;
}

const left =
  "what a wing in the slipstream takes out of its swirl, which spares rudder and aileron: where it stands right in it, true angles of both and the side thrust " +
  "that needs no rudder may be half of these or less; what a hull does to the slipstream, its mixing, and how it drifts in a sideslip; lift that it adds to one side of " +
  "the wing; bodies' side force. Packs are half charged. " +
  `Bands are those of the weight alone. ${lateralAccount} ${sectionsAccount}`;

type Of = (name: "rudder" | "aileron" | "bank" | "neutral", dimension: DimensionName) => Quantity | undefined;

function putFigures(set: FigureSet, held: Alive, lateral: LateralAir, climbs: boolean, of: Of): void {
  const input = (name: string, value: number | undefined, dimension: DimensionName): Input[] =>
    (value === undefined ? [] : [{ name, value: quantity(value, dimensions[dimension]) }]);
  const inputs: readonly Input[] = [
    ...named(set, "mass.total"), ...input(climbs ? "speed of best climb" : "1.3 × flight.stall_speed", held.speed, "speed"),
    ...[lateral.roll, lateral.yaw].flatMap((axis) => (axis ? [{ name: "controls", value: controlsOf(axis) }] : [])),
    ...contributed(held),
  ];
  const account = (formula: string, more: readonly Input[] = []): Account => ({
    formula, inputs: [...inputs, ...more],
    source: "thrust, torque and the blade that goes down: D. P. Raymer, Aircraft Design, ch. 16; swirl: moment of momentum, H. Glauert, Airplane Propellers, 1935; " +
      "controls by the vortex lattice and Glauert, ARC R&M 1095",
    notModelled: left,
  });
  const both = lateral.roll && lateral.yaw;
  const way = both ? "without sideslip" : `sideslip ${held.sideslip === undefined ? "unknown" : "as it must be"}`;
  const more = both ? [] : input("sideslip, wind from the right", held.sideslip, "angle");
  const leaves = `leaves no roll and no yaw at full throttle, climbing, ${way}`;
  set.put("trim.climb.rudder", of("rudder", "angle"), account(`deflection that with the ailerons ${leaves}`, more));
  set.put("trim.climb.aileron", of("aileron", "angle"), account(`mean deflection of both sides that with the rudder ${leaves}`, more));
  set.put("trim.climb.bank", of("bank", "angle"), account("asin(−side force of thrust, swirl and controls / (weight × cosine of the path))", more));
  set.put("trim.climb.right_thrust", of("neutral", "angle"), account("angle of the shaft to the right of straight ahead with which trim.climb.rudder is 0; the slipstream goes with the shaft", more));
}

/** Yaw and roll of each powerplant by each cause, and of several together, with how they cancel. */
function contributed({ contributions }: Alive): Input[] {
  const size = Math.max(...contributions.flatMap(({ yaw, roll }) => [Math.abs(yaw), Math.abs(roll)]));
  const moments = (what: string, { yaw, roll }: Lateral): Input[] => [["yaw", "nose right", yaw] as const, ["roll", "right wing down", roll] as const]
    .flatMap(([axis, way, value]) => (Math.abs(value) > 1e-3 * size ? [{ name: `${axis} by ${what}, ${way}`, value: quantity(value, dimensions.torque) }] : []));
  const paths = [...new Set(contributions.map(({ path }) => path))];
  const each = contributions.flatMap((one) => moments(paths.length > 1 ? `${causes[one.cause]} of ${one.path}` : causes[one.cause], one));
  if (paths.length === 1) return each;
  const sums = (Object.keys(causes) as Cause[]).map((cause) => ({ cause, sum: together(contributions.filter((one) => one.cause === cause)) }));
  const left = sums.flatMap(({ cause, sum }) => moments(`${causes[cause]} of all together`, sum));
  return [...each, ...(left.length > 0 ? left : [{ name: "all together", value: "they cancel: no yaw, no roll" }])];
}

/** Places of the plot. */
const places = 12;

/** Rudder and aileron at full throttle over speed, on level flight's lift. */
function* putSeries(set: FigureSet, given: AliveCase): Generator<void, void> {
  const { flight } = set.facts;
  if (!flight) return;
  const { loaded, table: { range: [low, high] }, performance } = flight;
  const end = Math.min(high, Math.max(performance?.topSpeed ?? high, overStall * low));
  const speeds = Array.from({ length: places }, (_, i) => low + ((end - low) * i) / (places - 1));
  const turned: ReturnType<typeof angles>[] = [];
  for (const speed of speeds) {
    yield;
    const held = heldAlive(given, loaded, { speed, loadFactor: 1 });
    turned.push(held ? angles(held, given.lateral) : { rudder: undefined, aileron: undefined });
  }
  const row = (title: string, of: "rudder" | "aileron"): Row => ({ title, dimension: "angle", values: turned.map((one) => one[of]) });
  set.putSeries({
    name: "trim.full_throttle", title: "Rudder and aileron at full throttle over speed", x: { title: "Speed", dimension: "speed", values: speeds },
    lines: [row("Rudder, trailing edge left", "rudder"), row("Aileron, rolling left", "aileron")],
  });
}
