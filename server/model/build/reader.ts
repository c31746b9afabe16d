import { findProperty } from "../../../grammar/vocabulary";
import type { BlockName } from "../../../grammar/vocabulary/value";
import { isQuantity, type Quantity } from "../../../grammar/units/quantity";
import type { Vec3 } from "../design/geometry";
import type { Instance } from "../resolve/instance";
import type { World } from "../evaluate/site";

/** Reads a block's properties in the form the builders need; undefined where absent, broken or of another form. */
export class Reader {
  private readonly built = new Map<string, unknown>();

  constructor(readonly world: World) {}

  /** What was built from these values before under that name, else what `work` builds. */
  remember<T>(name: string, work: () => T): T {
    let built = this.built.get(name) as T | undefined;
    if (built === undefined) this.built.set(name, (built = work()));
    return built;
  }

  private value(block: Instance, name: string): unknown {
    const property = findProperty(block.kind, name);
    return property && this.world.read(block, property);
  }

  quantity(block: Instance, name: string): Quantity | undefined {
    const v = this.value(block, name);
    return isQuantity(v) ? v : undefined;
  }

  /** A value the block has of its own, rather than the vocabulary's default. */
  own(block: Instance, name: string): Quantity | undefined {
    return this.written(block, name) ? this.quantity(block, name) : undefined;
  }

  /** Is this written in the block, or in what the loading puts in its place? */
  written(block: Instance, name: string): boolean {
    return this.world.slot(block, name) !== undefined;
  }

  /** Both ends of a value that may go `to` another. */
  taper(block: Instance, name: string): readonly [Quantity, Quantity] | undefined {
    const v = this.value(block, name);
    if (isQuantity(v)) return [v, v];
    return Array.isArray(v) && v.length === 2 && v.every(isQuantity) ? (v as unknown as readonly [Quantity, Quantity]) : undefined;
  }

  point(block: Instance, name: string): Vec3<Quantity> | undefined {
    const v = this.value(block, name);
    return Array.isArray(v) && v.length === 3 && v.every(isQuantity) ? (v as unknown as Vec3<Quantity>) : undefined;
  }

  count(block: Instance, name: string): number | undefined {
    const v = this.value(block, name);
    return typeof v === "number" ? v : undefined;
  }

  flag(block: Instance, name: string): boolean | undefined {
    const v = this.value(block, name);
    return typeof v === "boolean" ? v : undefined;
  }

  text(block: Instance, name: string): string | undefined {
    const v = this.value(block, name);
    return typeof v === "string" ? v : undefined;
  }

  /** The block a property names. */
  block(block: Instance, name: string): { readonly target: Instance; readonly path: string } | undefined {
    const v = this.value(block, name);
    return isBlockName(v) ? { target: v.target as Instance, path: v.path } : undefined;
  }

  blocks(block: Instance, name: string): readonly { readonly target: Instance; readonly path: string }[] {
    const v = this.value(block, name);
    const list = Array.isArray(v) ? (v as unknown[]) : [v];
    return list.filter(isBlockName).map((b) => ({ target: b.target as Instance, path: b.path }));
  }

  raw(block: Instance, name: string): unknown {
    return this.value(block, name);
  }
}

export function isBlockName(v: unknown): v is BlockName {
  return typeof v === "object" && v !== null && "target" in v && "path" in v;
}
