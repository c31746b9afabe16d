import type { Propeller } from "../../model/design/power";
import type { Air } from "../atmosphere/atmosphere";
import { bladeOf } from "./blade";
import type { LoadCurve } from "./load-curve";
import { bladeLoad, propellerLoad } from "./propeller-at";

/** Six points are within 0.3 % of a solution for each rotation: the coefficients change only with Reynolds number. */
const pointCount = 6;
/** Tip speeds the points lie between, m/s. Beyond them the coefficients stay those of the end. */
const slowest = 8;
const fastest = 330;

/**
 * Thrust and power coefficients standing still as a smooth curve over ln rotation: blade elements are solved at Chebyshev
 * points once, then all else is interpolation (J.-P. Berrut and L. N. Trefethen, SIAM Review 46(3), 2004).
 */
export function staticCoefficients(propeller: Propeller, air: Air): LoadCurve {
  const blade = bladeOf(propeller);
  const diameter = propeller.diameter;
  const [low, high] = [slowest, fastest].map((speed) => Math.log((2 * speed) / diameter));
  const points = Array.from({ length: pointCount }, (_, i) => {
    const angle = ((2 * i + 1) * Math.PI) / (2 * pointCount);
    const place = (low + high) / 2 + ((high - low) / 2) * Math.cos(angle);
    const { thrustCoefficient, powerCoefficient } = bladeLoad(blade, Math.exp(place), 0, air);
    return { place, weight: (i % 2 === 0 ? 1 : -1) * Math.sin(angle), thrustCoefficient, powerCoefficient };
  });
  return {
    at: (rotation) => {
      const place = Math.min(high, Math.max(low, Math.log(rotation)));
      let [whole, thrust, power] = [0, 0, 0];
      for (const point of points) {
        if (Math.abs(place - point.place) < 1e-12) {
          return propellerLoad(point.thrustCoefficient, point.powerCoefficient, { diameter, rotation, speed: 0, air });
        }
        const weight = point.weight / (place - point.place);
        whole += weight;
        thrust += weight * point.thrustCoefficient;
        power += weight * point.powerCoefficient;
      }
      return propellerLoad(thrust / whole, power / whole, { diameter, rotation, speed: 0, air });
    },
  };
}
