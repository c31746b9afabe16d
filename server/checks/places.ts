import type { Span } from "../../grammar/tree";
import type { Place } from "../../shared/finding";
import { only } from "../model/build/design";
import type { FigureSet } from "../figures/figure-set";
import { writtenHere } from "../model/model";
import type { Resolver } from "../model/evaluate/resolver";
import { pathOf, type Instance, type Slot, type SourceFile } from "../model/resolve/instance";

/** Finds where in the text a part, a property or the whole design stands. */
export class Places {
  constructor(private readonly file: SourceFile) {}

  private at(span: Span): Place {
    return { file: this.file.uri, start: span.start, end: span.end };
  }

  /** The name of a block, or of what brought it here. */
  block(block: Instance): Place {
    const here = writtenHere(block, this.file);
    const node = here?.node;
    return node ? this.at(node.name ?? node.kind) : this.whole();
  }

  /** The value of a block's property if it is written in this file, else its name. */
  property(block: Instance, name: string): Place {
    const slot = block.slots.get(name);
    return (slot && this.written(slot)) ?? this.block(block);
  }

  /** A part by its path in a loading, or one of its properties: where the loading changes it, there. */
  part(set: FigureSet, path: string, property?: string): Place {
    const block = this.blockOf(set, path);
    if (!block) return this.whole();
    const slot = property === undefined ? undefined : this.slot(set, block, property);
    return (slot && this.written(slot)) ?? this.block(block);
  }

  /** A part inside another that has no place of its own in the loading, such as a control surface; else what holds it. */
  inside(set: FigureSet, path: string): Place {
    let block = this.blockOf(set, path);
    if (!block) return this.whole();
    const names = path.split(".");
    for (const name of names.slice(names.lastIndexOf(block.key) + 1)) block = block.children.get(name) ?? block;
    return this.block(block);
  }

  /** A property as the loading has it: of its own block for the part, else of the part. */
  slot(set: FigureSet, block: Instance, property: string): Slot | undefined {
    return (set.loading.reader.world as Resolver).slot(block, property);
  }

  /** A value, if it is written in this file. */
  written({ entry, home }: Slot): Place | undefined {
    return entry.value && home.file === this.file ? this.at(entry.value) : undefined;
  }

  /** The block a part came from: its own, or that of what holds it. */
  blockOf(set: FigureSet, path: string): Instance | undefined {
    for (let at = path; at; at = at.slice(0, Math.max(0, at.lastIndexOf(".")))) {
      const block = set.loading.blocks.get(at);
      if (block) return block;
    }
    return undefined;
  }

  /** A part as it is called in the text: without the sides that mirroring gives it. */
  name(set: FigureSet, path: string): string {
    for (let at = path; at; at = at.slice(0, Math.max(0, at.lastIndexOf(".")))) {
      const block = set.loading.blocks.get(at);
      if (block) return pathOf(block) + path.slice(at.length);
    }
    return path;
  }

  /** The loading's own block, else the design as a whole. */
  loading(set: FigureSet): Place {
    return set.loading.block ? this.block(set.loading.block) : this.whole();
  }

  /** The airframe's word, else the first line that says anything. */
  whole(): Place {
    const airframe = only(this.file.root, "airframe")?.node;
    if (airframe) return this.at(airframe.kind);
    const first = this.file.tree.items[0];
    return this.at(first?.type === "block" ? first.kind : first ?? { start: 0, end: 0 });
  }
}
