import type { Form, Property } from "../../../grammar/vocabulary/schema";
import type { Quantity } from "../../../grammar/units/quantity";
import type { Instance, Slot, SourceFile } from "../resolve/instance";
import type { Value } from "../../../grammar/vocabulary/value";
import type { Fix } from "../../../shared/finding";
import type { Problems, TextCode } from "../problems";
import type { Vec3 } from "../design/geometry";
import type { Expression } from "./expression";
import type { BlockRef } from "../resolve/names";
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
  /** The entry that gives a property in this loading, if any. */
  slot(block: Instance, name: string): Slot | undefined;
  /** A property of a block as its schema gives it; undefined when absent or broken. */
  read<T>(block: Instance, property: Property<T>): T | undefined;
  /** The value of a `let` of that file. */
  letValue(file: SourceFile, name: string): Value | undefined;
  /** A value that follows from the model, `main.span`; undefined if there is no such one. */
  derived(block: Instance, name: string): Quantity | undefined;
  /** The names `derived` knows for that block. */
  derivedNames(block: Instance): readonly string[];
  /** `point(surface, share of half-span, share of chord)`. */
  pointOn(surface: BlockRef, along: Quantity, chord: Quantity, holder: Instance): Vec3<Quantity> | undefined;
  /** A place of a block as seen from another: through the placings between. */
  seenFrom(ref: BlockRef, place: Vec3<Quantity>, holder: Instance): Vec3<Quantity>;
  /** What an expression at that site needs to be worked out. */
  expression(site: Site, form?: Form): Expression;
}

/** Says what is wrong with the value, where `span` stands in the file it is written in. */
export type Complain = (code: TextCode, span: Span, message: string, fixes?: readonly Fix[]) => undefined;
