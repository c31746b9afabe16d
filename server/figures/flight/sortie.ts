import { dimensions, type DimensionName } from "../../../grammar/units/dimension";
import { quantity, type Quantity } from "../../../grammar/units/quantity";
import { overStall } from "../../compute/aircraft/flight-points";
import { heavierDrag } from "../../compute/aircraft/level-table";
import type { Aeroplane } from "../../compute/flight/aeroplane";
import type { Fed } from "../../compute/flight/on-charge";
import { sortie, type FlownLeg, type Leg, type Sortie } from "../../compute/flight/sortie";
import { settler } from "../../model/design/settle";
import type { LegSpeed, PlannedLeg, PlannedSortie } from "../../model/design/sortie";
import { across } from "../changes";
import type { Facts, SortieFlown } from "../facts";
import type { Account, Input } from "../figure";
import type { FigureSet } from "../figure-set";
import { named } from "../wing";
import { putEndurance, putSortieSeries } from "./flight-series";
import { sectionsAccount } from "./points";

type Flight = NonNullable<Facts["flight"]>;

/**
 * The aircraft as flight mechanics sees it, of another weight: the same lift coefficients, and so drag over lift, at speeds by the root
 * of it. More lift in a turn likewise; with less, up or down a slope, induced drag alone falls.
 */
export function aeroplaneAt({ model, loaded, points, table, flown }: Flight, mass: number): Aeroplane {
  const heavier = mass / loaded.mass;
  const grown = Math.sqrt(heavier);
  const stallSpeed = points.stall.speed * grown;
  return {
    mass, density: model.air.density, stallSpeed, searched: [stallSpeed, table.range[1] * grown],
    drag: heavierDrag(table, heavier),
    ...(flown && { thrust: flown.thrust, electricPower: flown.electricPower }),
  };
}

/** Each of the loading's sorties, in steps. Nothing where flight isn't known, or its motors can't be computed. */
export function* putSorties(set: FigureSet): Generator<void, void> {
  const { flight } = set.facts;
  const mass = set.value("mass.total");
  if (!flight || !mass) return;
  putEndurance(set, aeroplaneAt(flight, mass.value), flight);
  const plans = settler(set.loading.design.sorties);
  if (plans.nominal.length === 0 || (set.loading.design.powerplants.length > 0 && !flight.power)) return;
  yield;
  // Packs may be flown flat here: what is usable of them is a check's affair.
  const packs = (flight.fed ?? []).filter(({ share }) => share > 0);
  const flat = packs.map(({ store, share }): Fed => ({ share, store: { ...store, usable: 1 } }));
  const fly = (plan: PlannedSortie, kg: number, fed: readonly Fed[] = flat) => flownBy(plan, flight, kg, fed, set.loading.design.cruise !== undefined);
  const aeroplane = aeroplaneAt(flight, mass.value);
  const flown = plans.nominal.map((plan): SortieFlown =>
    ({ plan, aeroplane, flown: fly(plan, mass.value), fly: (other, fed = packs) => fly(other, mass.value, fed) }));
  set.facts.sorties = flown;
  const changes = [...plans.variables].map((variable) => ({ variable, up: plans.at(variable, 1), down: plans.at(variable, -1) }));
  yield;
  const of = yield* across({ middle: plans.nominal, changes }, { mass: { quantity: mass, step: 1e-3 * mass.value } }, (all, { mass: kg }) =>
    Object.fromEntries(all.flatMap((plan) => Object.entries(numbersOf(fly(plan, kg))).map(([name, value]) => [`${name} ${plan.path}`, value] as const))));
  if (!of) return;
  for (const one of flown) {
    putFigures(set, one.flown, one.plan, (name, dimension) => of(`${name} ${one.plan.path}`, dimension));
    if (!one.flown.ended) putSortieSeries(set, one);
  }
}

function flownBy({ legs, equipment = 0 }: PlannedSortie, flight: Flight, mass: number, fed: readonly Fed[], cruiseGiven: boolean): Sortie {
  const grown = Math.sqrt(mass / flight.loaded.mass);
  return sortie(legs.map((leg) => legOf(leg, flight, grown, cruiseGiven)), aeroplaneAt(flight, mass), fed, equipment);
}

function legOf({ name, speed, climb, bank, for: length }: PlannedLeg, flight: Flight, grown: number, cruiseGiven: boolean): Leg {
  // Nobody plans to fly closer to the stall, turns included.
  const least = overStall * flight.points.stall.speed * Math.sqrt(1 / Math.cos(bank ?? 0));
  const at = typeof speed === "number" ? speed
    : speed === "cruise" && cruiseGiven ? speedCalled(speed, flight)
    : Math.max(speedCalled(speed, flight), least) * grown;
  return { name, speed: at, climb, ...(bank !== undefined && { bank }), for: length };
}

/** NaN where there is none, as of a climb without motors: such a leg can't be flown. */
function speedCalled(name: LegSpeed, { points, performance = { thrust: [], electric: [] } }: Flight): number {
  const speeds: Readonly<Record<LegSpeed, number | undefined>> = {
    cruise: points.cruise.speed, best_glide: points.glide.speed, least_sink: points.sink.speed, best_climb: performance.climb?.speed,
    best_range: performance.farthest?.speed, best_endurance: performance.longest?.speed,
  };
  return speeds[name] ?? NaN;
}

const taken = ({ stores }: FlownLeg): number => stores.reduce((sum, store) => sum + store.taken, 0);

/** Share left in the pack that is emptiest; undefined without packs. */
export const leftAfter = ({ stores }: FlownLeg): number | undefined => (stores.length > 0 ? Math.min(...stores.map(({ charge }) => charge)) : undefined);

function numbersOf({ legs, time, distance, ended }: Sortie) {
  if (ended) return {};
  const powered = legs.some(({ stores }) => stores.length > 0);
  return { time, distance, used: powered ? legs.reduce((sum, leg) => sum + taken(leg), 0) : undefined, left: leftAfter(legs[legs.length - 1]) };
}

function putFigures(set: FigureSet, { legs }: Sortie, { path, equipment }: PlannedSortie, of: (name: string, dimension: DimensionName) => Quantity | undefined): void {
  const input = (name: string, value: number | undefined, dimension: DimensionName): Input[] =>
    (value === undefined ? [] : [{ name, value: quantity(value, dimensions[dimension]) }]);
  const each = (what: string, value: (leg: FlownLeg) => number | undefined, dimension: DimensionName) =>
    legs.flatMap((leg) => input(`${leg.leg.name}: ${what}`, value(leg), dimension));
  const account = (formula: string, inputs: readonly Input[]): Account => ({
    formula, inputs: [...named(set, "mass.total"), ...inputs],
    source: "J. D. Anderson, Introduction to Flight, ch. 6; packs by their own curve of volts over charge, from full",
    notModelled: "the changes from leg to leg, the height that speed is worth, wind, thrust's part in the lift, motors on half-charged packs all the way, an idle propeller's drag, " +
      `packs that give less in the cold or at a high current; of tolerances only those of the weight and of the sortie itself count. ${sectionsAccount}`,
  });
  const speeds = each("speed", ({ leg }) => leg.speed, "speed");
  set.put(`flight.sortie.${path}.time`, of("time", "time"), account("sum of the legs' times: as written, distance / forward speed or height / rate", [...speeds, ...each("time", (leg) => leg.time, "time")]));
  set.put(`flight.sortie.${path}.distance`, of("distance", "length"), account("sum of the legs' forward speed × time, in still air",
    [...each("distance", (leg) => leg.distance, "length"), ...each("height", ({ height }) => (Math.abs(height) > 1e-9 ? height : undefined), "length")]));
  const power = [...input("equipment", equipment, "power"), ...each("power from the packs", (leg) => leg.power, "power")];
  set.put(`flight.sortie.${path}.charge_used`, of("used", "charge"), account("sum over legs and packs of ∫ power / volts under load", [...power, ...each("charge", taken, "charge")]));
  set.put(`flight.sortie.${path}.charge_left`, of("left", "ratio"), account("1 − charge taken / capacity, of the pack that has least", [...power, ...legs.map((leg): Input => ({ name: `${leg.leg.name}: left after it`, value: `${(100 * (leftAfter(leg) ?? NaN)).toFixed(1)} %` }))]));
}
