import { levelFlight, type FlightModel, type Loaded } from "../../compute/aircraft/flight-model";
import type { FlightPoints } from "../../compute/aircraft/flight-points";
import { modesNear, type Flight, type Modes } from "../../compute/modes/aircraft-modes";
import { lateralAccount, latticeAccount } from "../../compute/stability/accounts";
import type { DimensionName } from "../../../grammar/units/dimension";
import type { Quantity } from "../../../grammar/units/quantity";
import { across, type Solved } from "../changes";
import type { Account } from "../figure";
import type { FigureSet } from "../figure-set";
import { named } from "../wing";

/** Change of lift, as a share, by which the slope of drag over angle is found. */
const liftChange = 0.05;

/** Short period, phugoid, Dutch roll, roll and spiral of a loading at cruise. */
export function* putModes(set: FigureSet, { middle }: Solved<FlightModel>, loaded: Loaded, { cruise }: FlightPoints): Generator<void, void> {
  const names = ["inertia.roll", "inertia.pitch", "inertia.yaw", "inertia.product", "mass.total", "cg.x", "cg.z"] as const;
  const [roll, pitch, yaw, product, mass, x, z] = names.map((name) => set.value(name));
  if (!roll || !pitch || !yaw || !product || !mass || !x || !z || set.facts.side === undefined) return;
  const near: Flight = {
    ...loaded, speed: cruise.speed, density: middle.air.density, lift: cruise.state.liftCoefficient, drag: cruise.drag, dragSlope: dragSlope(middle, loaded, cruise),
    inertia: { roll: roll.value, pitch: pitch.value, yaw: yaw.value, product: product.value },
  };
  const modes = modesNear(middle.basis, middle.pitch, set.facts.side, near);
  yield;
  const share = (quantity: Quantity) => ({ quantity, step: 1e-3 * Math.max(Math.abs(quantity.value), 1e-6) });
  const place = (quantity: Quantity) => ({ quantity, step: 1e-3 });
  const values = { roll: share(roll), pitch: share(pitch), yaw: share(yaw), product: share(product), mass: share(mass), x: place(x), z: place(z) };
  const of = yield* across({ middle: near, changes: [] }, values, (_, at) => {
    const lift = (near.lift * at.mass) / loaded.mass;
    const grown = (lift / near.lift) ** 2;
    return numbersOf(modes({
      ...near, mass: at.mass, x: at.x, z: at.z, lift, drag: near.drag + cruise.induced * (grown - 1), dragSlope: near.dragSlope * (lift / near.lift),
      inertia: { roll: at.roll, pitch: at.pitch, yaw: at.yaw, product: at.product },
    }));
  });
  if (!of) return;
  const put = (name: string, key: string, dimension: DimensionName, formula: string, side = false) => set.put(name, of(key, dimension), account(set, formula, side));
  put("modes.short_period.damping", "shortDamping", "ratio", "share of critical damping of the faster pair of roots of speed, incidence, pitch rate and pitch angle");
  put("modes.short_period.frequency", "shortFrequency", "rotation", "root of the product of that pair");
  put("modes.phugoid.damping", "phugoidDamping", "ratio", "share of critical damping of the slower pair of those roots");
  put("modes.phugoid.frequency", "phugoidFrequency", "rotation", "root of the product of that pair");
  put("modes.dutch_roll.damping", "dutchDamping", "ratio", "share of critical damping of the swinging pair of roots of sideslip, roll rate, yaw rate and bank", true);
  put("modes.dutch_roll.frequency", "dutchFrequency", "rotation", "root of the product of that pair", true);
  put("modes.roll.time", "rollTime", "time", "−1 / the larger of the two roots that do not swing", true);
  put("modes.spiral.doubling_time", "doubling", "time", "ln 2 / the smaller of the two roots that do not swing, where it grows", true);
  put("modes.spiral.halving_time", "halving", "time", "−ln 2 / the smaller of the two roots that do not swing, where it dies", true);
}

/** Of the drag coefficient per radian, at one speed, from a little more and a little less lift. */
function dragSlope(model: FlightModel, loaded: Loaded, { speed, induced, state }: FlightPoints["cruise"]): number {
  const [more, less] = [1 + liftChange, 1 - liftChange].map((factor) => levelFlight(model, loaded, speed, factor));
  const slope = more && less ? (more.drag - less.drag) / (more.state.angle - less.state.angle) : NaN;
  return Number.isFinite(slope) ? slope : (2 * induced * model.pitch.liftSlope) / state.liftCoefficient;
}

function numbersOf(modes: Modes | undefined): Readonly<Record<string, number | undefined>> | undefined {
  if (!modes) return undefined;
  const { pitch: { shortPeriod, phugoid }, side } = modes;
  const spiral = side?.spiral;
  return {
    shortDamping: shortPeriod?.damping, shortFrequency: shortPeriod?.frequency, phugoidDamping: phugoid?.damping, phugoidFrequency: phugoid?.frequency,
    dutchDamping: side?.dutchRoll?.damping, dutchFrequency: side?.dutchRoll?.frequency, rollTime: side?.rollTime,
    doubling: spiral !== undefined && spiral > 0 ? Math.LN2 / spiral : undefined,
    halving: spiral !== undefined && spiral < 0 ? -Math.LN2 / spiral : undefined,
  };
}

function account(set: FigureSet, formula: string, side: boolean): Account {
  const own = side ? ["inertia.roll", "inertia.yaw", "inertia.product", "stability.yaw_stiffness", "stability.dihedral_effect"] : ["inertia.pitch", "stability.static_margin"];
  return {
    formula: `${formula}, in level flight at cruise`, inputs: named(set, "flight.cruise_speed", "mass.total", ...own),
    source: "linear equations of motion: R. C. Nelson, Flight Stability and Automatic Control, 1998, ch. 4 and 5",
    notModelled: `controls that float, thrust that changes with speed, the propeller's own damping, motions that are not small; bands leave out tolerances of the shape. ${latticeAccount}` +
      (side ? ` ${lateralAccount}` : ""),
  };
}
