import { luModule } from "./generated/lu-module";

/** What the compiled factoring offers; see `assembly/lu.ts`. Places are bytes in its memory. */
export interface Kernel {
  readonly memory: { readonly buffer: ArrayBuffer };
  reserve(size: number): number;
  rowAt(row: number): number;
  pivotsAt(): number;
  paddedSize(): number;
  blockSize(): number;
  largest(): number;
  factorBlock(from: number, least: number): number;
  updateRows(from: number, top: number, bottom: number): void;
}

/** Of WebAssembly's own interface, which no library of types here declares, what is used. */
interface WebAssemblyLike {
  readonly Module: new (bytes: Uint8Array) => object;
  readonly Instance: new (module: object, imports: object) => { readonly exports: object };
}

/** A fresh instance with a memory of its own; undefined where WebAssembly or its vectors of two numbers are missing. */
export function loadKernel(): Kernel | undefined {
  const { WebAssembly } = globalThis as { WebAssembly?: WebAssemblyLike };
  if (!WebAssembly) return undefined;
  try {
    const bytes = Uint8Array.from(atob(luModule), (letter) => letter.charCodeAt(0));
    return new WebAssembly.Instance(new WebAssembly.Module(bytes), {}).exports as Kernel;
  } catch {
    return undefined;
  }
}
