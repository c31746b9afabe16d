import type { MeanLine } from "./mean-line";

/**
 * Mean line of a four-digit section (NACA Report 460, 1933) or a five-digit one, simple or reflexed (NACA Report 537,
 * 1935), in chords. Undefined for digits that name no such section.
 */
export function nacaMeanLine(digits: string): MeanLine | undefined {
  if (/^\d{4}$/.test(digits)) return fourDigit(Number(digits[0]) / 100, Number(digits[1]) / 10);
  if (/^\d{5}$/.test(digits)) return fiveDigit(Number(digits[0]), digits.slice(1, 3));
  return undefined;
}

/** Thickness over chord: the last two digits. */
export const nacaThickness = (digits: string): number => Number(digits.slice(-2)) / 100;

/**
 * Half thickness in chords at share `x` of the chord, laid off normal to the mean line (NACA Report 460). `closed`
 * changes the last coefficient so that the trailing edge has no thickness.
 */
export function nacaHalfThickness(thickness: number, x: number, closed = false): number {
  const tail = closed ? 0.1036 : 0.1015;
  return 5 * thickness * (0.2969 * Math.sqrt(x) - 0.126 * x - 0.3516 * x ** 2 + 0.2843 * x ** 3 - tail * x ** 4);
}

/** Leading-edge radius in chords, NACA Report 460. */
export const nacaNoseRadius = (thickness: number): number => 1.1019 * thickness ** 2;

/**
 * Points x, y in chords from the trailing edge over the upper side to the nose and back, `count` intervals a side,
 * closer together at both ends. Undefined for digits that name no section.
 */
export function nacaOutline(digits: string, count: number, closed = false): readonly (readonly [number, number])[] | undefined {
  const line = nacaMeanLine(digits);
  if (!line) return undefined;
  const side = (sign: 1 | -1): (readonly [number, number])[] =>
    Array.from({ length: count + 1 }, (_, i) => {
      const x = (1 - Math.cos((Math.PI * i) / count)) / 2;
      const half = sign * nacaHalfThickness(nacaThickness(digits), x, closed);
      const slope = line.slope(x);
      const length = Math.hypot(1, slope);
      return [x - (half * slope) / length, line.height(x) + half / length];
    });
  return [...side(1).reverse(), ...side(-1).slice(1)];
}

function fourDigit(camber: number, place: number): MeanLine | undefined {
  if (camber === 0) return { height: () => 0, slope: () => 0 };
  if (place === 0) return undefined;
  const side = (x: number) => (x < place ? place : 1 - place);
  return {
    height: (x) => (camber * ((x < place ? 0 : 1 - 2 * place) + 2 * place * x - x * x)) / side(x) ** 2,
    slope: (x) => (2 * camber * (place - x)) / side(x) ** 2,
  };
}

/** By the second and third digit: r, k1 and k2/k1 for a design lift of 0.3, NACA Report 537 (from memory). */
const fiveDigitLines: Readonly<Record<string, readonly [r: number, k1: number, ratio: number]>> = {
  "10": [0.058, 361.4, 0], "20": [0.126, 51.64, 0], "30": [0.2025, 15.957, 0], "40": [0.29, 6.643, 0], "50": [0.391, 3.23, 0],
  "21": [0.13, 51.99, 0.000764], "31": [0.217, 15.793, 0.00677], "41": [0.318, 6.52, 0.0303], "51": [0.441, 3.191, 0.1355],
};

function fiveDigit(lift: number, form: string): MeanLine | undefined {
  const line = fiveDigitLines[form];
  if (!line) return undefined;
  const [r, k1, ratio] = line;
  const k = ((k1 / 6) * lift) / 2;
  const fall = ratio * (1 - r) ** 3 + r ** 3;
  return {
    height: (x) => k * ((x < r ? 1 : ratio) * (x - r) ** 3 - fall * x + r ** 3),
    slope: (x) => k * (3 * (x < r ? 1 : ratio) * (x - r) ** 2 - fall),
  };
}
