import type { PolarStore } from "../compute/section-air/polar-shelf";

/** What the process around a session gives it: a clock, turns of the event loop, files. */
export interface SessionHost {
  /** Milliseconds from any start. */
  now(): number;
  /** Calls back after messages that have come in are handled. */
  later(work: () => void): void;
  /** The process's own files, where it has any. */
  readonly files?: OwnFiles;
  /** Where section polars are kept from one run to the next, if anywhere. */
  readonly polars?: PolarStore;
}

export interface OwnFiles {
  /** The text at an address, undefined if there is none that can be read. */
  read(uri: string): string | undefined;
  /** Changes when the file does; undefined where there is none. */
  stamp(uri: string): string | undefined;
  /** Addresses of the designs in these folders. */
  designs(folders: readonly string[]): readonly string[];
}
