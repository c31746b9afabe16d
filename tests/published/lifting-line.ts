/** Straight-tapered wing without sweep by H. Glauert's monoplane equation (Aerofoil and Airscrew Theory, ch. XI), slope 2π. */
export interface LiftingLine {
  /** Local lift coefficient at a share of the half-span, −1 to 1. */
  readonly local: (share: number) => number;
  readonly lift: number;
  /** Rolling moment coefficient, left wing down where the right one lifts more. */
  readonly roll: number;
}

/** `angle` is the local angle to the angle of no lift, rad, at a share of the half-span. */
export function liftingLine(aspectRatio: number, taper: number, angle: (share: number) => number, terms = 160): LiftingLine {
  const chord = (share: number) => ((2 / (1 + taper)) * (1 - (1 - taper) * Math.abs(share))) / aspectRatio; // over span
  const rows = Array.from({ length: terms }, (_, i) => {
    const theta = (Math.PI * (i + 0.5)) / terms;
    const mu = (2 * Math.PI * chord(Math.cos(theta))) / 4;
    const row = Array.from({ length: terms }, (_, n) => Math.sin((n + 1) * theta) * (Math.sin(theta) + (n + 1) * mu));
    return [...row, mu * angle(Math.cos(theta)) * Math.sin(theta)];
  });
  const a = solved(rows);
  return {
    local: (share) => {
      const theta = Math.acos(share);
      return (4 * a.reduce((sum, value, n) => sum + value * Math.sin((n + 1) * theta), 0)) / chord(share);
    },
    lift: Math.PI * aspectRatio * a[0],
    roll: (Math.PI * aspectRatio * a[1]) / 4,
  };
}

/** Gauss, with the right-hand side as last column. */
function solved(rows: number[][]): number[] {
  const n = rows.length;
  for (let c = 0; c < n; c++) {
    let pivot = c;
    for (let i = c + 1; i < n; i++) if (Math.abs(rows[i][c]) > Math.abs(rows[pivot][c])) pivot = i;
    [rows[c], rows[pivot]] = [rows[pivot], rows[c]];
    for (let i = c + 1; i < n; i++) {
      const factor = rows[i][c] / rows[c][c];
      if (factor !== 0) for (let k = c; k <= n; k++) rows[i][k] -= factor * rows[c][k];
    }
  }
  const x = new Array<number>(n).fill(0);
  for (let i = n - 1; i >= 0; i--) x[i] = (rows[i][n] - rows[i].reduce((sum, value, k) => (k > i && k < n ? sum + value * x[k] : sum), 0)) / rows[i][i];
  return x;
}
