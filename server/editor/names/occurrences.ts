import type { BlockNode, EntryNode, PathNode, RequireNode, WaiveNode } from "../../../grammar/tree";
import { findProperty, kinds } from "../../../grammar/vocabulary";
import type { Model } from "../../model/model";
import { loadingBlocks } from "../../model/loadings";
import type { World } from "../../model/evaluate/site";
import type { Instance } from "../../model/resolve/instance";
import { figurePath } from "./figure-path";
import type { Meaning, Occurrence } from "./meaning";
import { pathFrom } from "./path";
import { namesIn } from "./values";

const known = new WeakMap<Model, readonly Occurrence[]>();

/** Everything named in the model's own text, in its order; wider ones before those within them. */
export function occurrencesIn(model: Model): readonly Occurrence[] {
  let all = known.get(model);
  if (!all) {
    all = new Walk(model).file().sort((a, b) => a.start - b.start || b.end - a.end);
    known.set(model, all);
  }
  return all;
}

/** What stands at an offset, the narrowest first. A name reaches to the offset right after it. */
export function occurrencesAt(model: Model, offset: number): readonly Occurrence[] {
  const touching = occurrencesIn(model).filter((one) => one.start <= offset && offset <= one.end);
  // Between two names the one that begins here counts first.
  return touching.sort((a, b) => Number(a.end === offset) - Number(b.end === offset) || a.end - a.start - (b.end - b.start));
}

class Walk {
  private readonly world: World;

  constructor(private readonly model: Model) {
    this.world = model.loadings[0].reader.world;
  }

  file(): Occurrence[] {
    const { file } = this.model;
    return file.tree.items.flatMap((item): Occurrence[] => {
      switch (item.type) {
        case "block":
          return this.block(item, file.root);
        case "let":
          return [
            ...(item.name ? [mark(item.name, { type: "let", file, name: item.name.text }, true)] : []),
            ...namesIn(item.value, { block: file.root, world: this.world }),
          ];
        case "use":
          return item.name ? this.use(item.name.text, item) : [];
        case "require":
          return this.require(item);
        case "waive":
          return this.waive(item);
      }
    });
  }

  private use(name: string, item: { readonly name?: { start: number; end: number }; readonly path?: { start: number; end: number } }): Occurrence[] {
    const { file } = this.model;
    const used = file.uses.get(name);
    return [
      ...(item.path && used ? [mark(item.path, { type: "file", file: used })] : []),
      ...(item.name ? [mark(item.name, { type: "alias", file, name, used }, true)] : []),
    ];
  }

  private require({ condition, loadings }: RequireNode): Occurrence[] {
    const around = { block: this.model.file.root, world: this.world, figure: this.figure };
    const named = loadings.flatMap((name): Occurrence[] => {
      const block = loadingBlocks(this.model.file).find((each) => each.key === name.text);
      return block ? [mark(name, { type: "block", block })] : [];
    });
    if (!condition) return named;
    return [...[condition.left, condition.right, condition.upper].flatMap((side) => namesIn(side, around)), ...named];
  }

  private waive({ check }: WaiveNode): Occurrence[] {
    return check ? [mark(check, { type: "check", code: check.text })] : [];
  }

  private block(node: BlockNode, parent: Instance): Occurrence[] {
    const found = parent.children.get(node.name?.text ?? node.kind.text);
    const block = found?.node === node ? found : undefined;
    const own: Occurrence[] = kinds[node.kind.text] ? [mark(node.kind, { type: "kind", kind: node.kind.text })] : [];
    if (block && node.name) own.push(mark(node.name, { type: "block", block }, true));
    if (node.from) own.push(...this.origin(node.from, block ?? parent));
    const inner = (node.body?.items ?? []).flatMap((item): Occurrence[] => {
      if (item.type === "waive") return this.waive(item);
      if (!block) return [];
      return item.type === "block" ? this.block(item, block) : this.entry(item, block);
    });
    return [...own, ...inner];
  }

  /** What is copied is sought beside the block and outward, never in it. */
  private origin(path: PathNode, block: Instance): Occurrence[] {
    const found = pathFrom(block.parent ?? block, path.names);
    return found[0]?.meaning.type === "block" && found[0].meaning.block === block ? [] : found;
  }

  private entry(entry: EntryNode, block: Instance): Occurrence[] {
    const { path, value } = entry;
    const name = path.names.map((n) => n.text).join(".");
    const property = findProperty(block.kind, name);
    if (property) return [mark(path, { type: "property", property, block }), ...namesIn(value, { block, world: this.world, property })];
    const open = kinds[block.kind]?.open === true;
    const around = { block, world: this.world, figure: open ? this.figure : undefined };
    const left = !open ? [] : block.kind === "limits" ? [mark(path, { type: "check", code: name })] : this.figure(path) ?? [];
    return [...left, ...namesIn(value, around)];
  }

  private readonly figure = (path: PathNode): Occurrence[] | undefined => figurePath(path, this.model);
}

const mark = ({ start, end }: { readonly start: number; readonly end: number }, meaning: Meaning, declares = false): Occurrence =>
  ({ start, end, meaning, declares });
