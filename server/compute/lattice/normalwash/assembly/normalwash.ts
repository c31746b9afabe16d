// AssemblyScript, compiled by `npm run generate`: the sums of `../plain.ts`, two horseshoes at a time.

/** Bytes of each column of the horseshoes, to whole pairs, and where the first one begins. */
let stride: usize = 0;
const base: usize = (__heap_base + 63) & ~63;

/** Columns: ax, ay, az, bx, by, bz, legA, legB, and the velocities. */
const columns: i32 = 9;

/** Makes room for so many horseshoes; false if there is none. */
export function reserve(count: i32): bool {
  stride = <usize>((count + 1) & ~1) << 3;
  const pages = <i32>((base + columns * stride + 0xffff) >> 16) - memory.size();
  return pages <= 0 || memory.grow(pages) >= 0;
}

/** Where a column begins, in bytes. */
export function columnAt(column: i32): usize { return base + <usize>column * stride; }

/** Puts the velocity along the normal at a point for each horseshoe into the last column. */
export function normalwash(core: f64, x: f64, y: f64, z: f64, ny: f64, nz: f64): void {
  const px = f64x2.splat(x), py = f64x2.splat(y), pz = f64x2.splat(z), n = f64x2.splat(ny), m = f64x2.splat(nz), c = f64x2.splat(core);
  const over4Pi = f64x2.splat(1 / (4 * Math.PI));
  const cc = f64x2.mul(c, c);
  const s1 = stride, s2 = s1 + stride, s3 = s2 + stride, s4 = s3 + stride, s5 = s4 + stride, s6 = s5 + stride, s7 = s6 + stride, s8 = s7 + stride;
  for (let p = base, end = base + stride; p < end; p += 16) {
    const dx = f64x2.sub(px, v128.load(p)), dy = f64x2.sub(py, v128.load(p + s1)), dz = f64x2.sub(pz, v128.load(p + s2));
    const ex = f64x2.sub(px, v128.load(p + s3)), ey = f64x2.sub(py, v128.load(p + s4)), ez = f64x2.sub(pz, v128.load(p + s5));
    const acrossA = f64x2.add(f64x2.add(f64x2.mul(dy, dy), f64x2.mul(dz, dz)), c);
    const acrossB = f64x2.add(f64x2.add(f64x2.mul(ey, ey), f64x2.mul(ez, ez)), c);
    const r = f64x2.sqrt(f64x2.add(f64x2.mul(dx, dx), acrossA));
    const s = f64x2.sqrt(f64x2.add(f64x2.mul(ex, ex), acrossB));
    const rs = f64x2.mul(r, s);
    const turn = f64x2.add(
      f64x2.mul(n, f64x2.sub(f64x2.mul(dz, ex), f64x2.mul(dx, ez))), f64x2.mul(m, f64x2.sub(f64x2.mul(dx, ey), f64x2.mul(dy, ex))));
    const near = f64x2.add(f64x2.add(f64x2.add(rs, f64x2.mul(dx, ex)), f64x2.mul(dy, ey)), f64x2.mul(dz, ez));
    const bound = f64x2.div(f64x2.mul(f64x2.add(r, s), turn), f64x2.add(f64x2.mul(rs, near), cc));
    const a = f64x2.mul(v128.load(p + s6), f64x2.sub(f64x2.mul(m, dy), f64x2.mul(n, dz)));
    const b = f64x2.mul(v128.load(p + s7), f64x2.sub(f64x2.mul(m, ey), f64x2.mul(n, ez)));
    const legs = f64x2.sub(f64x2.add(bound, leg(b, s, ex, acrossB)), leg(a, r, dx, acrossA));
    v128.store(p + s8, f64x2.mul(over4Pi, legs));
  }
}

/** a (r + dx) / (r across) behind the vortex, and a / (r (r − dx)) ahead of it. */
function leg(a: v128, r: v128, dx: v128, across: v128): v128 {
  const one = f64x2.splat(1);
  const behind = f64x2.gt(dx, f64x2.splat(0));
  const long = f64x2.add(r, f64x2.abs(dx));
  return f64x2.div(f64x2.mul(a, v128.bitselect(long, one, behind)), f64x2.mul(r, v128.bitselect(across, long, behind)));
}
