/**
 * Drag coefficient of a long round cylinder across the flow, on its frontal area, by the Reynolds number of its diameter
 * (S. F. Hoerner, Fluid-Dynamic Drag, 1965, ch. 3, after C. Wieselsberger; read off the curve, from memory).
 */
const points: readonly (readonly [reynolds: number, drag: number])[] = [
  [1, 10], [10, 2.8], [100, 1.4], [1e3, 1], [1e4, 1.1], [1e5, 1.2], [2e5, 1.2], [5e5, 0.3], [3e6, 0.6],
];

export function cylinderDrag(reynolds: number): number {
  const first = points[0];
  if (!(reynolds > first[0])) return first[1];
  const i = points.findIndex(([re]) => re >= reynolds);
  if (i < 0) return points[points.length - 1][1];
  const [[ra, a], [rb, b]] = [points[i - 1], points[i]];
  return a * (b / a) ** (Math.log(reynolds / ra) / Math.log(rb / ra));
}

/** What the flow along a round rod costs on diameter × length (Hoerner, ch. 3; from memory). */
const alongRod = 0.02;

/**
 * Drag area of a round rod, m², at an angle to the flow whose sine is `across`: only the flow across it presses, so its
 * drag falls with the third power (Hoerner, ch. 3; from memory). `reynolds` is that of its diameter.
 */
export function rodDragArea(diameter: number, length: number, across: number, reynolds: number): number {
  return diameter * length * (cylinderDrag(reynolds * across) * across ** 3 + alongRod);
}
