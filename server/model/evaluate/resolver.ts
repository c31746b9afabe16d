import { sameDimension, dimensions } from "../../../grammar/units/dimension";
import type { Quantity } from "../../../grammar/units/quantity";
import { judge } from "../../../grammar/vocabulary/property";
import type { Property } from "../../../grammar/vocabulary/schema";
import type { Value } from "../../../grammar/vocabulary/value";
import type { Vec3 } from "../design/geometry";
import type { Problems } from "../problems";
import { pathOf, type Instance, type Slot, type SourceFile } from "../resolve/instance";
import type { BlockRef } from "../resolve/names";
import { defaultOf } from "./defaults";
import { evaluate, type Expression } from "./expression";
import { misfit } from "./misfit";
import type { Complain, Site, World } from "./site";
import { Work } from "./work";

/** Properties that a loading puts in the place of those written, by block; undefined where it takes one away. */
export type Overlay = ReadonlyMap<Instance, ReadonlyMap<string, Slot | undefined>>;

/** What the builders give back to expressions: places and sizes that follow from the model. */
export interface Geometry {
  derived(block: Instance, name: string, world: World): Quantity | undefined;
  derivedNames(block: Instance): readonly string[];
  pointOn(surface: BlockRef, along: Quantity, chord: Quantity, holder: Instance, world: World): Vec3<Quantity> | undefined;
  seenFrom(ref: BlockRef, place: Vec3<Quantity>, holder: Instance, world: World): Vec3<Quantity>;
}

/** Works properties out on demand, remembers them, and finds circles. One resolver serves one loading. */
export class Resolver implements World {
  private readonly properties = new Map<Instance, Map<string, unknown>>();
  private readonly lets = new Map<SourceFile, Map<string, unknown>>();
  private readonly derivedValues = new Map<Instance, Map<string, unknown>>();
  private readonly work = new Work();

  constructor(
    readonly file: SourceFile, readonly problems: Problems, private readonly geometry: Geometry, private readonly overlay: Overlay = new Map(),
  ) {}

  slot(block: Instance, name: string): Slot | undefined {
    const own = this.overlay.get(block);
    return own?.has(name) ? own.get(name) : block.slots.get(name);
  }

  read<T>(block: Instance, property: Property<T>): T | undefined {
    const { name } = property;
    const slot = this.slot(block, name);
    if (!slot) return defaultOf(property);
    return this.work.once(table(this.properties, block), name, {
      name: () => `${pathOf(block)}.${name}`,
      run: () => this.worked(block, slot, property),
      refuse: (message) => this.problems.addFor(block, "circle", slot.home.file, slot.entry.path, message),
    });
  }

  letValue(file: SourceFile, name: string): Value | undefined {
    const node = file.lets.get(name);
    if (!node?.value || !node.name) return undefined;
    const { value, name: span } = node;
    return this.work.once(table(this.lets, file), name, {
      name: () => name,
      run: () => evaluate(value, this.expression({ holder: file.root, home: file.root }, undefined, () => `let ${name}`)),
      refuse: (message) => this.problems.addFor(file.root, "circle", file, span, message),
    });
  }

  derived(block: Instance, name: string): Quantity | undefined {
    return this.work.once(table(this.derivedValues, block), name, {
      name: () => `${pathOf(block)}.${name}`,
      run: () => this.geometry.derived(block, name, this),
      refuse: (message) => block.node && this.problems.addFor(block, "circle", block.file, block.node.name ?? block.node.kind, message),
    });
  }

  derivedNames(block: Instance): readonly string[] {
    return this.geometry.derivedNames(block);
  }

  pointOn(surface: BlockRef, along: Quantity, chord: Quantity, holder: Instance): Vec3<Quantity> | undefined {
    return this.geometry.pointOn(surface, along, chord, holder, this);
  }

  seenFrom(ref: BlockRef, place: Vec3<Quantity>, holder: Instance): Vec3<Quantity> {
    return this.geometry.seenFrom(ref, place, holder, this);
  }

  expression(site: Site, form?: Expression["form"], subject?: () => string): Expression {
    const complain: Complain = (code, span, message, fixes) => {
      this.problems.addFor(site.holder, code, site.home.file, span, message, fixes);
      return undefined;
    };
    if (!subject) return { world: this, site, form, complain };
    let count = 0;
    return { world: this, site, form, complain, variable: () => `${site.home.file.uri} ${subject()} ${count++}` };
  }

  private worked<T>(block: Instance, slot: Slot, property: Property<T>): T | undefined {
    const node = slot.entry.value;
    const subject = () => `${slot.loading ?? ""} ${pathOf(slot.home)}.${property.name}`;
    const value = node && evaluate(node, this.expression({ holder: block, home: slot.home }, property.form, subject));
    if (!value) return undefined;
    const judged = judge(property, withUnitOfNothing(property, value));
    if (judged.fits) return judged.value;
    const finding = misfit(property, node, value, judged.message, slot.home.file);
    if (finding) this.problems.addFor(block, finding.code, slot.home.file, finding.span, finding.message, finding.fixes);
    return undefined;
  }
}

/** 0 stands for nothing in any unit; but no temperature is nothing. */
function withUnitOfNothing({ form }: Property, value: Value): Value {
  if (form.form !== "quantity" || form.dimension === "temperature") return value;
  const dimension = dimensions[form.dimension];
  const mend = (v: Value): Value => {
    if (v.form === "pair") return { ...v, left: mend(v.left), right: mend(v.right) };
    if (v.form !== "quantity" || v.quantity.value !== 0 || !sameDimension(v.quantity.dimension, dimensions.ratio)) return v;
    return { form: "quantity", quantity: { ...v.quantity, dimension } };
  };
  return mend(value);
}

function table<K, V>(of: Map<K, Map<string, V>>, key: K): Map<string, V> {
  let inner = of.get(key);
  if (!inner) of.set(key, (inner = new Map()));
  return inner;
}
