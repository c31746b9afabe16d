/**
 * Where a point lies from a panel, in its own axes: along it from either end, and off it to the outward side, which is on
 * the right of one who goes along.
 */
export interface Seen {
  /** From the first and from the second end. */
  x1: number;
  x2: number;
  off: number;
  /** Logarithms of the distances to the ends. */
  log1: number;
  log2: number;
  length: number;
}

export const seen = (): Seen => ({ x1: 0, x2: 0, off: 0, log1: 0, log2: 0, length: 0 });

/** Fills `out` for the point px, py and the panel that starts at x, y and goes `length` in the direction tx, ty. */
export function look(out: Seen, px: number, py: number, x: number, y: number, length: number, tx: number, ty: number): void {
  const dx = px - x;
  const dy = py - y;
  out.length = length;
  out.x1 = dx * tx + dy * ty;
  out.x2 = out.x1 - length;
  out.off = dx * ty - dy * tx;
  const r1 = out.x1 * out.x1 + out.off * out.off;
  const r2 = out.x2 * out.x2 + out.off * out.off;
  out.log1 = r1 > 1e-24 ? 0.5 * Math.log(r1) : 0;
  out.log2 = r2 > 1e-24 ? 0.5 * Math.log(r2) : 0;
}

const share = 1 / (2 * Math.PI);

/** Stream function of a clockwise vortex sheet whose strength is 1 at the first end, falling to 0 at the second (`a`), and the reverse (`b`). */
export function vortexStream(p: Seen, out: { a: number; b: number }): void {
  const reach = Math.abs(p.off);
  const turn = Math.atan2(p.x1, reach) - Math.atan2(p.x2, reach);
  const whole = p.x1 * p.log1 - p.x2 * p.log2 - p.length + reach * turn;
  const r1 = p.x1 * p.x1 + p.off * p.off;
  const r2 = p.x2 * p.x2 + p.off * p.off;
  const first = p.x1 * whole - 0.5 * (r1 * (p.log1 - 0.5) - r2 * (p.log2 - 0.5));
  out.b = (share * first) / p.length;
  out.a = share * whole - out.b;
}

/**
 * Stream function of a source sheet of strength 1. The jump that a source's stream function has somewhere is laid along
 * the outward normal, where no inner point meets it; with `downstream` along the panel's own direction.
 */
export function sourceStream(p: Seen, downstream: boolean): number {
  const angle1 = downstream ? Math.atan2(-p.off, -p.x1) : Math.atan2(p.x1, -p.off);
  const angle2 = downstream ? Math.atan2(-p.off, -p.x2) : Math.atan2(p.x2, -p.off);
  return -share * (p.x1 * angle1 - p.x2 * angle2 + p.off * (p.log1 - p.log2));
}

/** Velocity in panel axes: along and off. */
export interface Induced {
  along: number;
  off: number;
}

/** Velocity of the two vortex sheets of `vortexStream`. */
export function vortexVelocity(p: Seen, a: Induced, b: Induced): void {
  const reach = Math.abs(p.off);
  const turn = (Math.atan2(p.x1, reach) - Math.atan2(p.x2, reach)) * Math.sign(p.off);
  const log = p.log1 - p.log2;
  b.along = (-share * (p.x1 * turn - p.off * log)) / p.length;
  b.off = (share * (p.x1 * log - p.length + p.off * turn)) / p.length;
  a.along = -share * turn - b.along;
  a.off = share * log - b.off;
}

/** Velocity of a source sheet of strength 1, at a point off the panel. */
export function sourceVelocity(p: Seen, out: Induced): void {
  const reach = Math.abs(p.off);
  out.along = share * (p.log1 - p.log2);
  out.off = share * (Math.atan2(p.x1, reach) - Math.atan2(p.x2, reach)) * Math.sign(p.off);
}
