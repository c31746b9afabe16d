/**
 * A zero of `f` between `low` and `high`, where its signs must differ; undefined where they don't. Inverse quadratic
 * interpolation where that is safe, halving elsewhere: never slower than halving by much, never outside the bracket
 * (T. R. Chandrupatla, Advances in Engineering Software 28(3), 1997). Stops within `tolerance` of x, or at `f` of 0.
 */
export function bracketedRoot(f: (x: number) => number, low: number, high: number, tolerance: number): number | undefined {
  let [a, b] = [low, high];
  let [fa, fb] = [f(a), f(b)];
  if (fa === 0) return a;
  if (fb === 0) return b;
  if (!(fa * fb < 0)) return undefined;
  let share = 0.5;
  for (let step = 0; step < 100; step++) {
    const x = a + share * (b - a);
    const fx = f(x);
    let [c, fc] = [b, fb];
    if (fx * fa > 0) [c, fc] = [a, fa];
    else [b, fb] = [a, fa];
    [a, fa] = [x, fx];
    const best = Math.abs(fa) < Math.abs(fb) ? a : b;
    const least = tolerance / Math.abs(b - a);
    if (fx === 0 || least >= 0.5) return best;
    share = interpolated(a, fa, b, fb, c, fc) ?? 0.5;
    share = Math.min(1 - least, Math.max(least, share));
  }
  return a;
}

function interpolated(a: number, fa: number, b: number, fb: number, c: number, fc: number): number | undefined {
  const place = (a - b) / (c - b);
  const height = (fa - fb) / (fc - fb);
  if (!(height * height < place && (1 - height) ** 2 < 1 - place)) return undefined;
  return (fa / (fb - fa)) * (fc / (fb - fc)) + ((c - a) / (b - a)) * (fa / (fc - fa)) * (fb / (fc - fb));
}
