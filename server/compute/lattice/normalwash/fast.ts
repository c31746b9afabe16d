import type { Elements } from "../elements";
import { type Exports, instantiate } from "../wasm";
import { normalwashModule } from "./generated/normalwash-module";

/** See `assembly/normalwash.ts`. Places are bytes in its memory. */
interface Kernel extends Exports {
  reserve(count: number): number;
  columnAt(column: number): number;
  normalwash(core: number, x: number, y: number, z: number, ny: number, nz: number): void;
}

/** One kernel and the horseshoes that stand in its memory: those of the last call, as many calls are about the same. */
export class Normalwash {
  private held: Elements | undefined;
  private out = new Float64Array(0);

  constructor(private readonly kernel: Kernel) {}

  /** Velocities along the normal at a point, by horseshoe, good until the next call; undefined if there is no room. */
  at(e: Elements, core: number, x: number, y: number, z: number, ny: number, nz: number): Float64Array | undefined {
    if (this.held !== e && !this.hold(e)) return undefined;
    this.kernel.normalwash(core, x, y, z, ny, nz);
    return this.out;
  }

  private hold(e: Elements): boolean {
    this.held = undefined;
    if (!this.kernel.reserve(e.count)) return false;
    // Growing the memory cuts off all earlier views of it, so they are made anew.
    const column = (place: number) => new Float64Array(this.kernel.memory.buffer, this.kernel.columnAt(place), e.count);
    [e.ax, e.ay, e.az, e.bx, e.by, e.bz, e.legA, e.legB].forEach((values, place) => column(place).set(values));
    this.out = column(8);
    this.held = e;
    return true;
  }
}

/** A fresh one; undefined where WebAssembly is missing. */
export function loadNormalwash(): Normalwash | undefined {
  const kernel = instantiate<Kernel>(normalwashModule);
  return kernel && new Normalwash(kernel);
}
