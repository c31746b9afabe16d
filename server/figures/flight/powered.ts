import { dimensions } from "../../../grammar/units/dimension";
import { plain, quantity, subtract } from "../../../grammar/units/quantity";
import type { FlightModel, Loaded } from "../../compute/aircraft/flight-model";
import type { FlightPoints } from "../../compute/aircraft/flight-points";
import { poweredMargin, type Pulling } from "../../compute/aircraft/powered";
import type { FlightPower } from "../../compute/powertrain/in-flight";
import type { PlantRun } from "../../compute/powertrain/plant-run";
import type { PropellerMap } from "../../compute/propeller/propeller-map";
import type { Powerplant } from "../../model/design/power";
import type { FigureSet } from "../figure-set";
import { named } from "../wing";

/** The static margin with the propellers pulling as level flight at cruise asks. */
export function putPowered(
  set: FigureSet, model: FlightModel, loaded: Loaded, { cruise }: FlightPoints, throttle: number | undefined, power: FlightPower,
  plants: readonly Powerplant[], mapOf: (propeller: NonNullable<Powerplant["propeller"]>) => PropellerMap,
): void {
  const still = set.value("stability.static_margin");
  if (throttle === undefined || !still) return;
  const runs = power.run(cruise.speed, throttle).powerplants as readonly PlantRun[];
  const pulling = plants.flatMap(({ path, hub, thrustAxis, propeller }, i): Pulling[] => {
    const { rotation, thrust, torque } = runs[i];
    if (!propeller || !(rotation > 0)) return [];
    const speed = Math.max(0, -thrustAxis[0] * cruise.speed);
    return [{ path, hub, diameter: propeller.diameter, thrust, torque, crossForce: mapOf(propeller).cross({ rotation, speed, air: model.air }).force }];
  });
  const found = poweredMargin(model.pitch, pulling, { speed: cruise.speed, density: model.air.density, x: loaded.x });
  if (!found) return;
  // The band is that of the margin without power.
  const margin = subtract(still, plain(still.value - found.margin));
  set.put("stability.static_margin_powered", margin, {
    formula: "static margin with each propeller's force across its shaft, and with the lift of strips in its slipstream grown by the square of the speed there, less what the slipstream is turned towards the shaft and what the wing's added lift adds to the downwash",
    inputs: [
      ...named(set, "stability.static_margin", "flight.cruise_speed"), { name: "throttle", value: plain(throttle) },
      { name: "by the propellers' own force", value: plain(found.byForce) }, { name: "by their slipstream", value: plain(found.bySlipstream) },
      ...pulling.map(({ path, crossForce }) => ({ name: `force of ${path} per radian`, value: quantity(crossForce * cruise.speed, dimensions.force) })),
    ],
    source: "blade elements around the disc; slipstream by momentum: B. W. McCormick, Aerodynamics of V/STOL Flight, 1967",
    notModelled: "the slipstream's swirl, how it drifts and mixes, thrust above or below the balance point, full throttle, where all this is more",
  });
}
