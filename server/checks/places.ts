import type { Span } from "../../grammar/tree";
import type { Place } from "../../shared/finding";
import { only } from "../model/build/design";
import type { FigureSet } from "../figures/figure-set";
import { writtenHere } from "../model/model";
import type { Instance, SourceFile } from "../model/resolve/instance";

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
    return slot?.entry.value && slot.home.file === this.file ? this.at(slot.entry.value) : this.block(block);
  }

  /** A part by its path in a loading, or one of its properties. */
  part(set: FigureSet, path: string, property?: string): Place {
    const block = this.blockOf(set, path);
    if (!block) return this.whole();
    return property ? this.property(block, property) : this.block(block);
  }

  /** The block a part came from: its own, or that of what holds it. */
  blockOf(set: FigureSet, path: string): Instance | undefined {
    for (let at = path; at; at = at.slice(0, Math.max(0, at.lastIndexOf(".")))) {
      const block = set.loading.blocks.get(at);
      if (block) return block;
    }
    return undefined;
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
