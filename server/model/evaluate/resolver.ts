import { parse } from "../../../grammar/parse";
import type { EntryNode, ValueNode } from "../../../grammar/tree";
import { dimensions, sameDimension } from "../../../grammar/units/dimension";
import type { Quantity } from "../../../grammar/units/quantity";
import { kinds } from "../../../grammar/vocabulary";
import { judge } from "../../../grammar/vocabulary/property";
import type { Property } from "../../../grammar/vocabulary/schema";
import type { Value } from "../../../grammar/vocabulary/value";
import type { Vec3 } from "../design/geometry";
import type { Problems } from "../problems";
import { pathOf, type Instance, type Slot, type SourceFile } from "../resolve/instance";
import { evaluate, type Expression } from "./expression";
import { misfit } from "./misfit";
import type { Complain, Site, World } from "./site";

/** Properties that a loading puts in the place of those written, by block. */
export type Overlay = ReadonlyMap<Instance, ReadonlyMap<string, Slot>>;

/** What the builders give back to expressions: places and sizes that follow from the model. */
export interface Geometry {
  derived(block: Instance, name: string, world: World): Quantity | Vec3<Quantity> | undefined;
  derivedNames(block: Instance): readonly string[];
  pointOn(surface: Instance, along: Quantity, chord: Quantity, holder: Instance, world: World): Vec3<Quantity> | undefined;
}

const busy = Symbol("busy");

/** Works properties out on demand, remembers them, and finds circles. One resolver serves one loading. */
export class Resolver implements World {
  private readonly properties = new Map<Instance, Map<string, unknown>>();
  private readonly lets = new Map<string, unknown>();
  private readonly derivedValues = new Map<Instance, Map<string, unknown>>();

  constructor(
    readonly file: SourceFile, readonly problems: Problems, private readonly geometry: Geometry, private readonly overlay: Overlay = new Map(),
  ) {}

  slot(block: Instance, name: string): Slot | undefined {
    return this.overlay.get(block)?.get(name) ?? block.slots.get(name);
  }

  read<T>(block: Instance, property: Property<T>): T | undefined {
    const known = table(this.properties, block);
    const slot = this.slot(block, property.name);
    const before = known.get(property.name);
    if (before === busy) {
      if (slot) this.circle(block, slot.home.file, slot.entry.path, `${pathOf(block)}.${property.name}`);
      return undefined;
    }
    if (known.has(property.name)) return before as T | undefined;
    known.set(property.name, busy);
    const value = slot ? this.work(block, slot, property) : defaultOf(property);
    known.set(property.name, value);
    return value;
  }

  letValue(file: SourceFile, name: string): Value | undefined {
    const node = file.lets.get(name);
    const key = `${file.uri} ${name}`;
    const before = this.lets.get(key);
    if (before === busy) {
      if (node?.name) this.circle(file.root, file, node.name, name);
      return undefined;
    }
    if (this.lets.has(key) || !node?.value) return before as Value | undefined;
    this.lets.set(key, busy);
    const value = evaluate(node.value, this.expression({ holder: file.root, home: file.root }));
    this.lets.set(key, value);
    return value;
  }

  derived(block: Instance, name: string): Quantity | Vec3<Quantity> | undefined {
    const known = table(this.derivedValues, block);
    const before = known.get(name);
    if (before === busy) {
      if (block.node) this.circle(block, block.file, block.node.name ?? block.node.kind, `${pathOf(block)}.${name}`);
      return undefined;
    }
    if (known.has(name)) return before as Quantity | undefined;
    known.set(name, busy);
    const value = this.geometry.derived(block, name, this);
    known.set(name, value);
    return value;
  }

  derivedNames(block: Instance): readonly string[] {
    return this.geometry.derivedNames(block);
  }

  pointOn(surface: Instance, along: Quantity, chord: Quantity, holder: Instance): Vec3<Quantity> | undefined {
    return this.geometry.pointOn(surface, along, chord, holder, this);
  }

  expression(site: Site, form?: Expression["form"]): Expression {
    const complain: Complain = (code, span, message) => {
      this.problems.addFor(site.holder, code, site.home.file, span, message);
      return undefined;
    };
    return { world: this, site, form, complain };
  }

  private work<T>(block: Instance, slot: Slot, property: Property<T>): T | undefined {
    const node = slot.entry.value;
    if (!node) return undefined;
    const at = this.expression({ holder: block, home: slot.home }, property.form);
    const value = evaluate(node, at);
    if (!value) return undefined;
    return this.judge(block, slot, property, node, value);
  }

  private judge<T>(block: Instance, slot: Slot, property: Property<T>, node: ValueNode, value: Value): T | undefined {
    const judged = judge(property, withUnitOfNothing(property, value));
    if (judged.fits) return judged.value;
    const finding = misfit(property, node, value, judged.message, slot.home.file);
    this.problems.addFor(block, finding.code, slot.home.file, finding.span, finding.message, finding.fixes);
    return undefined;
  }

  private circle(holder: Instance, file: SourceFile, span: { start: number; end: number }, name: string): void {
    this.problems.addFor(holder, "circle", file, span, `${name} rests on itself; values can't go round in a circle`);
  }
}

/** 0 stands for nothing in any unit. */
function withUnitOfNothing(property: Property, value: Value): Value {
  if (property.form.form !== "quantity" || value.form !== "quantity" || value.quantity.value !== 0) return value;
  if (!sameDimension(value.quantity.dimension, dimensions.ratio)) return value;
  return { form: "quantity", quantity: { ...value.quantity, dimension: dimensions[property.form.dimension] } };
}

function table<V>(of: Map<Instance, Map<string, V>>, block: Instance): Map<string, V> {
  let inner = of.get(block);
  if (!inner) of.set(block, (inner = new Map()));
  return inner;
}

const defaults = new WeakMap<Property, { value: unknown }>();

/** The default as the vocabulary writes it, worked out like any text. A default in words ("as the motor") is none. */
function defaultOf<T>(property: Property<T>): T | undefined {
  const known = defaults.get(property);
  if (known) return known.value as T | undefined;
  const value = property.default === "" ? undefined : fromText(property);
  defaults.set(property, { value });
  return value;
}

function fromText<T>(property: Property<T>): T | undefined {
  const { tree, issues } = parse(`${kindForDefaults} { ${property.name} = ${property.default} }`);
  const block = tree.items[0];
  const entry = block?.type === "block" ? (block.body?.items[0] as EntryNode | undefined) : undefined;
  if (issues.length > 0 || !entry?.value) return undefined;
  const failed: Complain = () => undefined;
  const at = { world: undefined as unknown as World, site: undefined as unknown as Site, form: property.form, complain: failed };
  if (entry.value.type === "named" && property.form.form !== "word") return undefined;
  const value = evaluate(entry.value, at);
  const judged = value && judge(property, value);
  return judged?.fits ? judged.value : undefined;
}

const kindForDefaults = Object.keys(kinds)[0];

