type Points = readonly (readonly [number, number])[];

/**
 * Reads a section's coordinates: two columns of x and y in chords, from the trailing edge over the upper side to the
 * nose and back below. Lines that are not two numbers before the first pair are a title.
 */
export function readCoordinates(text: string): { readonly points: Points } | { readonly fault: string } {
  const points: (readonly [number, number])[] = [];
  for (const [i, line] of text.split(/\r?\n/).entries()) {
    const numbers = line.trim().split(/[\s,;]+/).map(Number);
    const isPair = numbers.length === 2 && numbers.every(Number.isFinite) && line.trim() !== "";
    if (isPair) points.push([numbers[0], numbers[1]]);
    else if (points.length > 0 && line.trim() !== "") return { fault: `has no two numbers on its line ${i + 1}` };
  }
  if (points.length < 10) return { fault: `has ${points.length} points; a section needs at least 10` };
  const xs = points.map(([x]) => x);
  if (Math.max(...xs) > 1.05 || Math.min(...xs) < -0.05) return { fault: "has x outside 0 to 1; write its coordinates in chords" };
  const nose = xs.indexOf(Math.min(...xs));
  const falls = xs.slice(0, nose).every((x, i) => x >= xs[i + 1]);
  const rises = xs.slice(nose, -1).every((x, i) => x <= xs[nose + i + 1]);
  if (!falls || !rises || nose === 0) {
    return { fault: "does not run from the trailing edge over the upper side to the nose and back below" };
  }
  return { points };
}
