import { nearest } from "../../grammar/nearest";
import { buildDesign, type BuiltDesign, type LeftOut } from "./build/design";
import { geometry } from "./build/derived";
import { Reader } from "./build/reader";
import { Resolver, type Overlay } from "./evaluate/resolver";
import { rewrite, type Problems } from "./problems";
import type { Instance, Slot, SourceFile } from "./resolve/instance";

/** A loading with the design as it is in it. */
export interface Loading extends BuiltDesign {
  readonly name: string;
  /** The block that declares it; none when the design has no `loading` blocks. */
  readonly block?: Instance;
  readonly reader: Reader;
}

/** The name of the one loading of a design that declares none. */
export const theOnly = "all";

export function loadingBlocks(file: SourceFile): Instance[] {
  return [...file.root.children.values()].filter((block) => block.kind === "loading");
}

/** Every loading of a design, in the order written. */
export function buildLoadings(file: SourceFile, problems: Problems): Loading[] {
  const plain = new Reader(new Resolver(file, problems, geometry));
  const blocks = loadingBlocks(file);
  if (blocks.length === 0) return [{ name: theOnly, reader: plain, ...buildDesign(file.root, plain, (_, optional) => optional) }];
  return blocks.map((block) => {
    const overlay = overlayOf(block, file, problems);
    const reader = overlay.size === 0 ? plain : new Reader(new Resolver(file, problems, geometry, overlay));
    return { name: block.key, block, reader, ...buildDesign(file.root, reader, leftOutBy(block, plain)) };
  });
}

/** What a loading's `without` and `with` leave out. Optional parts are out unless named. */
function leftOutBy(block: Instance, reader: Reader): LeftOut {
  const without = reader.blocks(block, "without").map((b) => b.path);
  const included = reader.blocks(block, "with").map((b) => b.path);
  return (path, optional) =>
    without.some((name) => means(name, path)) || (optional && !included.some((name) => means(name, path)));
}

/** Does a name mean this part: itself, what it stands in, or either of its mirrored copies? */
export function means(name: string, path: string): boolean {
  const wanted = name.split(".");
  let next = 0;
  for (const part of path.split(".")) {
    if (next === wanted.length) return true;
    if (part === wanted[next]) next++;
    else if (part !== "right" && part !== "left") return false;
  }
  return next === wanted.length;
}

/** The properties that a loading's blocks put in the place of those of the parts with the same kind and name. */
function overlayOf(loading: Instance, file: SourceFile, problems: Problems): Overlay {
  const overlay = new Map<Instance, Map<string, Slot>>();
  const take = (from: Instance, under: Instance): void => {
    for (const child of from.children.values()) {
      const target = under.children.get(child.key);
      if (target?.kind === child.kind) {
        if (child.slots.size > 0) overlay.set(target, new Map(child.slots));
        take(child, target);
      } else if (child.node) lost(child, under, file, problems);
    }
  };
  take(loading, file.root);
  return overlay;
}

function lost(child: Instance, under: Instance, file: SourceFile, problems: Problems): void {
  const same = [...under.children.values()].filter((other) => other.kind === child.kind).map((other) => other.key);
  const near = nearest(child.key, same) ?? (same.length === 1 ? same[0] : undefined);
  const span = child.node!.name ?? child.node!.kind;
  const message = `a loading changes parts that stand in the design, and there is no ${child.kind} "${child.key}"`;
  problems.add("unknown_name", "error", file, span, near ? `${message}; did you mean ${near}?` : message,
    near && child.node!.name ? [rewrite(file, span, `Write ${near}`, near)] : undefined);
}
