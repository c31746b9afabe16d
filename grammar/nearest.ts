/**
 * How many letters must be put in, taken out, changed or swapped with their neighbour to make one word of the other
 * (Damerau 1964, restricted). A change of case alone counts half.
 */
export function editDistance(a: string, b: string): number {
  let before: number[] = [];
  let previous = Array.from({ length: b.length + 1 }, (_, i) => i);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const change = a[i - 1] === b[j - 1] ? 0 : a[i - 1].toLowerCase() === b[j - 1].toLowerCase() ? 0.5 : 1;
      let least = Math.min(previous[j] + 1, row[j - 1] + 1, previous[j - 1] + change);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) least = Math.min(least, before[j - 2] + 1);
      row.push(least);
    }
    before = previous;
    previous = row;
  }
  return previous[b.length];
}

/** The candidate a mistyped word most likely means: at most a third of its letters off, nothing if none is that near. */
export function nearest(word: string, candidates: Iterable<string>): string | undefined {
  const allowed = Math.max(1, Math.floor(word.length / 3));
  let best: string | undefined;
  let least = Infinity;
  for (const candidate of candidates) {
    if (candidate === word || Math.abs(candidate.length - word.length) > allowed) continue;
    const distance = editDistance(word, candidate);
    // A word of one or two letters is another word when one letter differs, but not when only case does.
    const short = Math.min(word.length, candidate.length) <= 2;
    if (short && word.toLowerCase() !== candidate.toLowerCase()) continue;
    if (distance <= allowed && distance < least) {
      best = candidate;
      least = distance;
    }
  }
  return best;
}
