import type { SectionShape } from "../../model/design/geometry";

export type OutlinePoint = readonly [x: number, y: number];

/** Points on each face: enough for the length and area to 0.02 %. */
const count = 100;

/**
 * The outline of a section in chords, x aft of the leading edge and y up, from the trailing edge over the upper face to
 * the trailing edge again. Four- and five-digit sections after NACA TR 460 and TR 537, trailing edge as thick as given
 * there. Digits that are no such section give a flat plate of no thickness.
 */
export function sectionOutline(shape: SectionShape): readonly OutlinePoint[] {
  if (shape.type === "coordinates") return shape.points;
  if (shape.type === "flat") return plate(shape.thickness);
  const camber = camberLine(shape.digits);
  return camber ? facesAround(camber, Number(shape.digits.slice(-2)) / 100) : plate(0);
}

function plate(thickness: number): OutlinePoint[] {
  const half = thickness / 2;
  return [[1, 0], [1, half], [0, half], [0, -half], [1, -half], [1, 0]];
}

/** Height and slope of the mean line at `x`. */
type MeanLine = (x: number) => readonly [height: number, slope: number];

function facesAround(camber: MeanLine, t: number): OutlinePoint[] {
  const face = (sign: 1 | -1): OutlinePoint[] => Array.from({ length: count + 1 }, (_, i) => {
    const x = (1 - Math.cos((Math.PI * i) / count)) / 2;
    const half = sign * 5 * t * (0.2969 * Math.sqrt(x) - 0.126 * x - 0.3516 * x ** 2 + 0.2843 * x ** 3 - 0.1015 * x ** 4);
    const [height, slope] = camber(x);
    const length = Math.hypot(1, slope);
    return [x - (half * slope) / length, height + half / length];
  });
  return [...face(1).reverse(), ...face(-1).slice(1)];
}

function camberLine(digits: string): MeanLine | undefined {
  if (/^\d{4}$/.test(digits)) return fourDigit(Number(digits[0]) / 100, Number(digits[1]) / 10);
  if (/^\d{5}$/.test(digits)) return fiveDigit(digits);
  return undefined;
}

function fourDigit(m: number, p: number): MeanLine {
  if (m === 0 || p === 0) return () => [0, 0];
  return (x) => {
    const part = x < p ? p : 1 - p;
    const offset = x < p ? 0 : 1 - 2 * p;
    return [(m * (offset + 2 * p * x - x * x)) / part ** 2, (2 * m * (p - x)) / part ** 2];
  };
}

/** m, k1 and k2/k1 of NACA TR 537, tables I and II, for a design lift of 0.3. */
const fiveDigitLines: Readonly<Record<string, readonly [m: number, k1: number, ratio: number]>> = {
  "10": [0.058, 361.4, 0], "20": [0.126, 51.64, 0], "30": [0.2025, 15.957, 0], "40": [0.29, 6.643, 0], "50": [0.391, 3.23, 0],
  "21": [0.13, 51.99, 0.000764], "31": [0.217, 15.793, 0.00677], "41": [0.318, 6.52, 0.0303], "51": [0.441, 3.191, 0.1355],
};

function fiveDigit(digits: string): MeanLine | undefined {
  const line = fiveDigitLines[digits.slice(1, 3)];
  if (!line) return undefined;
  const [m, k1, ratio] = line;
  const k = ((k1 / 6) * Number(digits[0])) / 2;
  const fall = ratio * (1 - m) ** 3 + m ** 3;
  return (x) => {
    const ahead = x < m ? (x - m) ** 3 : ratio * (x - m) ** 3;
    const aheadSlope = x < m ? 3 * (x - m) ** 2 : 3 * ratio * (x - m) ** 2;
    return [k * (ahead - fall * x + m ** 3), k * (aheadSlope - fall)];
  };
}
