import { dimensions, sameDimension, type Dimension } from "../../../grammar/units/dimension";
import { chain, quantity, subtract, type Quantity } from "../../../grammar/units/quantity";
import { wordsFor } from "../../../grammar/units/usual";
import { cosine, sine, tangent } from "./trigonometry";

/** Says why an argument doesn't fit; the caller knows where it stands. */
export class ArgumentError extends Error {
  constructor(readonly argument: number, message: string, readonly wanted?: Dimension) {
    super(message);
  }
}

type NumberFunction = (args: readonly Quantity[]) => Quantity;

function need(q: Quantity, dimension: Dimension, argument: number): void {
  if (sameDimension(q.dimension, dimension)) return;
  throw new ArgumentError(argument, `takes ${wordsFor(dimension)} here, not ${wordsFor(q.dimension)}`, dimension);
}

const ofAngle = (f: (angle: Quantity) => Quantity): NumberFunction => ([x]) => {
  need(x, dimensions.angle, 0);
  return f(x);
};

/** The one the choice falls on, with its own tolerance. */
const pick = (wins: (a: number, b: number) => boolean): NumberFunction => (args) => {
  args.forEach((q, i) => need(q, args[0].dimension, i));
  return args.reduce((best, q) => (wins(q.value, best.value) ? q : best));
};

/** The functions of numbers, by name, with how many arguments they take. Tolerances pass by the chain rule. */
export const numberFunctions: Readonly<Record<string, { readonly least: number; readonly most: number; readonly apply: NumberFunction }>> = {
  sqrt: {
    least: 1, most: 1,
    apply: ([x]) => {
      if (x.value < 0) throw new ArgumentError(0, "takes no value below 0");
      if (x.dimension.some((n) => n % 2 !== 0)) throw new ArgumentError(0, `takes an area, a plain number or the like, not ${wordsFor(x.dimension)}: it has no root`);
      const root = Math.sqrt(x.value);
      return chain(x, root, root === 0 ? 0 : 0.5 / root, x.dimension.map((n) => n / 2) as unknown as Dimension);
    },
  },
  sin: { least: 1, most: 1, apply: ofAngle(sine) },
  cos: { least: 1, most: 1, apply: ofAngle(cosine) },
  tan: { least: 1, most: 1, apply: ofAngle(tangent) },
  atan2: {
    least: 2, most: 2,
    apply: ([y, x]) => {
      need(x, y.dimension, 1);
      const r2 = x.value ** 2 + y.value ** 2 || 1;
      const byY = chain(y, 0, x.value / r2, dimensions.angle);
      const byX = chain(x, 0, y.value / r2, dimensions.angle);
      return { ...subtract(byY, byX), value: Math.atan2(y.value, x.value) };
    },
  },
  abs: { least: 1, most: 1, apply: ([x]) => chain(x, Math.abs(x.value), x.value < 0 ? -1 : 1, x.dimension) },
  min: { least: 1, most: 99, apply: pick((a, b) => a < b) },
  max: { least: 1, most: 99, apply: pick((a, b) => a > b) },
  round: {
    least: 1, most: 2,
    apply: ([x, step]) => {
      if (step) need(step, x.dimension, 1);
      else need(x, dimensions.ratio, 0);
      const size = step?.value ?? 1;
      if (!(size > 0)) throw new ArgumentError(1, "takes a step over 0");
      return quantity(Math.round(x.value / size) * size, x.dimension, x.spread);
    },
  },
};
