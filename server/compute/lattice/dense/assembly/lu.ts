// AssemblyScript, compiled by `npm run generate`. LU with partial pivoting, right-looking by blocks of columns, recursive
// within a block (S. Toledo, SIAM J. Matrix Anal. Appl. 18, 1997), in a matrix by rows at a fixed place of the memory.

/** Columns of a block. */
const block: i32 = 32;
/** Rows whose part of a block stays in the nearest cache while it is used for all columns. */
const near: i32 = 32;

let size: i32 = 0;
/** The size to whole fours: rows and columns beyond it hold zeros, so that every tile is whole. */
let padded: i32 = 0;
/** Bytes from row to row: an odd number of cache lines, so that a column's entries do not all fall into the same few. */
let stride: usize = 0;
let base: usize = 0;
let pivots: usize = 0;

function at(i: i32, j: i32): usize { return base + <usize>i * stride + (<usize>j << 3); }
function entry(i: i32, j: i32): f64 { return load<f64>(at(i, j)); }

/** Makes room for a matrix; false if there is none. What stands in the memory is then of no matrix. */
export function reserve(count: i32): bool {
  size = count;
  padded = (count + 3) & ~3;
  stride = <usize>(((padded + 7) >> 3) | 1) << 6;
  pivots = __heap_base;
  base = (pivots + (<usize>padded << 2) + 63) & ~63;
  const pages = <i32>((base + <usize>padded * stride + 0xffff) >> 16) - memory.size();
  return pages <= 0 || memory.grow(pages) >= 0;
}

/** Where row i begins, in bytes. */
export function rowAt(i: i32): usize { return at(i, 0); }
/** Where the rows stand that each column's was exchanged with. */
export function pivotsAt(): usize { return pivots; }
export function paddedSize(): i32 { return padded; }
export function blockSize(): i32 { return block; }

/** The largest magnitude; not finite if any entry isn't. */
export function largest(): f64 {
  let most = f64x2.splat(0);
  let wrong = most;
  for (let i = 0; i < size; i++) {
    for (let p = at(i, 0), end = at(i, padded); p < end; p += 16) {
      const values = v128.load(p);
      most = f64x2.pmax(most, f64x2.abs(values));
      wrong = f64x2.add(wrong, f64x2.mul(values, f64x2.splat(0)));
    }
  }
  return max(f64x2.extract_lane(most, 0), f64x2.extract_lane(most, 1)) + f64x2.extract_lane(wrong, 0) + f64x2.extract_lane(wrong, 1);
}

/** Factors a block of columns and finishes its rows; false where no pivot is above `least`. */
export function factorBlock(from: i32, least: f64): bool {
  const to = min(from + block, padded);
  if (!factorColumns(from, to, least)) return false;
  finishRows(from, to, to, padded);
  return true;
}

/** What the block of columns from `from` on does to some rows below it. */
export function updateRows(from: i32, top: i32, bottom: i32): void {
  const to = min(from + block, padded);
  subtract(top, min(bottom, padded), to, padded, from, to);
}

function factorColumns(from: i32, to: i32, least: f64): bool {
  if (to - from <= 4) return factorFour(from, min(to, size), least);
  const middle = from + ((to - from + 4) >> 3 << 2);
  if (!factorColumns(from, middle, least)) return false;
  finishRows(from, middle, middle, to);
  subtract(middle, padded, middle, to, from, middle);
  return factorColumns(middle, to, least);
}

function factorFour(from: i32, to: i32, least: f64): bool {
  for (let c = from; c < to; c++) {
    let pivot = c;
    let best = abs(entry(c, c));
    for (let i = c + 1; i < size; i++) {
      const value = abs(entry(i, c));
      if (value > best) {
        best = value;
        pivot = i;
      }
    }
    if (!(best > least)) return false;
    store<i32>(pivots + (<usize>c << 2), pivot);
    if (pivot !== c) exchange(c, pivot);
    const scale = 1 / entry(c, c);
    for (let i = c + 1; i < size; i++) {
      const l = entry(i, c) * scale;
      store<f64>(at(i, c), l);
      for (let k = c + 1; k < to; k++) store<f64>(at(i, k), entry(i, k) - l * entry(c, k));
    }
  }
  return true;
}

function exchange(i: i32, j: i32): void {
  for (let p = at(i, 0), q = at(j, 0), end = at(i, padded); p < end; p += 16, q += 16) {
    const held = v128.load(p);
    v128.store(p, v128.load(q));
    v128.store(q, held);
  }
}

/** Solves the unit lower triangle of the columns and rows from..to for their rows in the columns left..right. */
function finishRows(from: i32, to: i32, left: i32, right: i32): void {
  for (let r = from; r < to; r += 4) {
    if (r > from) subtract(r, r + 4, left, right, from, r);
    const l10 = f64x2.splat(entry(r + 1, r)), l20 = f64x2.splat(entry(r + 2, r)), l21 = f64x2.splat(entry(r + 2, r + 1));
    const l30 = f64x2.splat(entry(r + 3, r)), l31 = f64x2.splat(entry(r + 3, r + 1)), l32 = f64x2.splat(entry(r + 3, r + 2));
    for (let p = at(r, left), end = at(r, right); p < end; p += 16) {
      const q = p + stride, s = q + stride, t = s + stride;
      const x0 = v128.load(p);
      const x1 = f64x2.sub(v128.load(q), f64x2.mul(l10, x0));
      const x2 = f64x2.sub(f64x2.sub(v128.load(s), f64x2.mul(l20, x0)), f64x2.mul(l21, x1));
      const x3 = f64x2.sub(f64x2.sub(f64x2.sub(v128.load(t), f64x2.mul(l30, x0)), f64x2.mul(l31, x1)), f64x2.mul(l32, x2));
      v128.store(q, x1);
      v128.store(s, x2);
      v128.store(t, x3);
    }
  }
}

/** Rows top..bottom, columns left..right, less the product of (top..bottom, from..to) and (from..to, left..right). */
function subtract(top: i32, bottom: i32, left: i32, right: i32, from: i32, to: i32): void {
  for (let first = top; first < bottom; first += near) {
    const last = min(first + near, bottom);
    for (let j = left; j < right; j += 4) for (let i = first; i < last; i += 4) subtractTile(i, j, from, to);
  }
}

/** The same for a tile of four rows and columns, which stays in registers. */
function subtractTile(i: i32, j: i32, from: i32, to: i32): void {
  const p0 = at(i, j), p1 = p0 + stride, p2 = p1 + stride, p3 = p2 + stride;
  let x0 = v128.load(p0), y0 = v128.load(p0, 16);
  let x1 = v128.load(p1), y1 = v128.load(p1, 16);
  let x2 = v128.load(p2), y2 = v128.load(p2, 16);
  let x3 = v128.load(p3), y3 = v128.load(p3, 16);
  let u = at(from, j);
  let l0 = at(i, from), l1 = l0 + stride, l2 = l1 + stride, l3 = l2 + stride;
  for (const end = l0 + (<usize>(to - from) << 3); l0 < end; l0 += 8, l1 += 8, l2 += 8, l3 += 8, u += stride) {
    const x = v128.load(u), y = v128.load(u, 16);
    let l = v128.load_splat<f64>(l0);
    x0 = f64x2.sub(x0, f64x2.mul(l, x));
    y0 = f64x2.sub(y0, f64x2.mul(l, y));
    l = v128.load_splat<f64>(l1);
    x1 = f64x2.sub(x1, f64x2.mul(l, x));
    y1 = f64x2.sub(y1, f64x2.mul(l, y));
    l = v128.load_splat<f64>(l2);
    x2 = f64x2.sub(x2, f64x2.mul(l, x));
    y2 = f64x2.sub(y2, f64x2.mul(l, y));
    l = v128.load_splat<f64>(l3);
    x3 = f64x2.sub(x3, f64x2.mul(l, x));
    y3 = f64x2.sub(y3, f64x2.mul(l, y));
  }
  v128.store(p0, x0);
  v128.store(p0, y0, 16);
  v128.store(p1, x1);
  v128.store(p1, y1, 16);
  v128.store(p2, x2);
  v128.store(p2, y2, 16);
  v128.store(p3, x3);
  v128.store(p3, y3, 16);
}
