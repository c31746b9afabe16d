import { loadKernel, type Kernel } from "./kernel";

/** Multiplications between two yields: a millisecond or two. */
const stretch = 8e6;

/** Rows updated by one call: a part of that. */
const rows = 128;

/** A matrix being factored, and where it is kept while another one has the memory. */
interface Work {
  readonly size: number;
  kept: Float64Array;
}

/** The memory of one kernel, in which several factorings may take turns. */
export class Workspace {
  private holder: Work | undefined;

  constructor(private readonly kernel: Kernel) {}

  /**
   * LU with partial pivoting in place. Gives the order of the rows; undefined for a matrix that is singular to the last bits,
   * false if there is no room for it. Yields between stretches of work; `values` change only at the end.
   */
  *factor(values: Float64Array, size: number): Generator<void, Int32Array | undefined | false> {
    const { kernel } = this;
    const own: Work = { size, kept: values };
    if (!this.hold(own)) return false;
    try {
      const order = Int32Array.from({ length: size }, (_, i) => i);
      const largest = kernel.largest();
      if (!(largest > 0 && largest < Infinity)) return undefined;
      const block = kernel.blockSize();
      let work = 0;
      for (let from = 0; from < size; from += block) {
        if (!this.hold(own)) return false;
        if (!kernel.factorBlock(from, largest * size * 1e-16)) return undefined;
        this.exchange(order, from, Math.min(size, from + block));
        for (let top = from + block; top < size; top += rows) {
          if (!this.hold(own)) return false;
          kernel.updateRows(from, top, top + rows);
          work += Math.min(rows, size - top) * (size - from) * block;
          if (work < stretch) continue;
          work = 0;
          yield;
        }
      }
      this.copyOut(values, size);
      return order;
    } finally {
      if (this.holder === own) this.holder = undefined;
    }
  }

  /** Brings a matrix into the memory unless it is there since last time; what stood there goes to a place of its own. */
  private hold(work: Work): boolean {
    if (this.holder === work) return true;
    if (this.holder) {
      // Not to the caller's array: a factoring that was given up must not write to it later.
      this.holder.kept = new Float64Array(this.holder.size ** 2);
      this.copyOut(this.holder.kept, this.holder.size);
    }
    this.holder = undefined;
    if (!this.kernel.reserve(work.size)) return false;
    this.copyIn(work.kept, work.size);
    this.holder = work;
    return true;
  }

  private copyIn(values: Float64Array, size: number): void {
    const { rows, padded, stride } = this.whole();
    for (let i = 0, from = 0; i < padded; i++) {
      const at = i * stride;
      const length = i < size ? size : 0;
      for (let j = 0; j < length; j++) rows[at + j] = values[from++];
      for (let j = length; j < padded; j++) rows[at + j] = 0;
    }
  }

  private copyOut(values: Float64Array, size: number): void {
    const { rows, stride } = this.whole();
    for (let i = 0, to = 0; i < size; i++) for (let j = 0, at = i * stride; j < size; j++) values[to++] = rows[at + j];
  }

  /** All rows, `stride` apart. Growing the memory cuts off earlier views of it, so it is made anew each time. */
  private whole(): { readonly rows: Float64Array; readonly padded: number; readonly stride: number } {
    const { kernel } = this;
    const padded = kernel.paddedSize();
    const stride = (kernel.rowAt(1) - kernel.rowAt(0)) / 8;
    return { rows: new Float64Array(kernel.memory.buffer, kernel.rowAt(0), padded * stride), padded, stride };
  }

  private exchange(order: Int32Array, from: number, to: number): void {
    const pivots = new Int32Array(this.kernel.memory.buffer, this.kernel.pivotsAt(), to);
    for (let c = from; c < to; c++) [order[c], order[pivots[c]]] = [order[pivots[c]], order[c]];
  }
}

let workspace: Workspace | undefined | false;

/** The one that all factorings share, made when first asked for; undefined where this machine can't have one. */
export function sharedWorkspace(): Workspace | undefined {
  if (workspace === undefined) {
    const kernel = loadKernel();
    workspace = kernel ? new Workspace(kernel) : false;
  }
  return workspace || undefined;
}
