import { type Exports, instantiate } from "../wasm";
import { luModule } from "./generated/lu-module";

/** What the compiled factoring offers; see `assembly/lu.ts`. Places are bytes in its memory. */
export interface Kernel extends Exports {
  reserve(size: number): number;
  rowAt(row: number): number;
  pivotsAt(): number;
  paddedSize(): number;
  blockSize(): number;
  largest(): number;
  factorBlock(from: number, least: number): number;
  updateRows(from: number, top: number, bottom: number): void;
}

/** A fresh one with a memory of its own; undefined where WebAssembly is missing. */
export const loadKernel = (): Kernel | undefined => instantiate<Kernel>(luModule);
