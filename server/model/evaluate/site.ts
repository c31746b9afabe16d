import type { Property } from "../../../grammar/vocabulary/schema";
import type { Quantity } from "../../../grammar/units/quantity";
import type { SourceFile, Instance } from "../resolve/instance";
import type { Problems } from "../problems";
import type { Vec3 } from "../design/geometry";
import type { Span } from "../../../grammar/tree";

/**
 * Where a value is worked out. Numbers (`let`s, values of blocks) are sought from `home`, where they were written;
 * names of blocks from `holder`, the block (perhaps a copy) that has the property.
 */
export interface Site {
  readonly holder: Instance;
  readonly home: Instance;
}

/** What an expression may ask of the rest of the model. */
export interface World {
  readonly file: SourceFile;
  readonly problems: Problems;
  /** A property of a block as its schema gives it; undefined when absent or broken. */
  read<T>(block: Instance, property: Property<T>): T | undefined;
  /** The value of a `let` of that file. */
  letValue(file: SourceFile, name: string): import("../../../grammar/vocabulary/value").Value | undefined;
  /** A value that follows from the model, `main.span`; undefined if there is no such one. */
  derived(block: Instance, name: string): Quantity | Vec3<Quantity> | undefined;
  /** The names `derived` knows for that block. */
  derivedNames(block: Instance): readonly string[];
  /** `point(surface, share of half-span, share of chord)`. */
  pointOn(surface: Instance, along: Quantity, chord: Quantity, holder: Instance): Vec3<Quantity> | undefined;
}

export type Complain = (code: import("../problems").TextCode, span: Span, message: string) => undefined;
