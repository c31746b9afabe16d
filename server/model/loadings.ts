import type { ValueNode } from "../../grammar/tree";
import { buildDesign, isPart, type BuiltDesign, type LeftOut } from "./build/design";
import { geometry } from "./build/derived";
import { Reader } from "./build/reader";
import { Resolver, type Overlay } from "./evaluate/resolver";
import { overlayOf } from "./overlay";
import type { Problems } from "./problems";
import { descendants, type Instance, type SourceFile } from "./resolve/instance";
import { withArticle } from "./words";

/** A loading with the design as it is in it. */
export interface Loading extends BuiltDesign {
  readonly name: string;
  /** The block that declares it; none when the design has no `loading` blocks. */
  readonly block?: Instance;
  readonly reader: Reader;
  /** What it changes of its parts. */
  readonly overlay: Overlay;
}

/** The name of the one loading of a design that declares none. */
export const theOnly = "all";

export function loadingBlocks(file: SourceFile): Instance[] {
  return [...file.root.children.values()].filter((block) => block.kind === "loading");
}

/** Every loading of a design, in the order written, and the reader of what is written, whatever a loading changes. */
export function buildLoadings(file: SourceFile, problems: Problems): { readonly plain: Reader; readonly loadings: readonly Loading[] } {
  const plain = readerOf(file, problems);
  const blocks = loadingBlocks(file);
  if (blocks.length === 0) {
    const built = buildDesign(file.root, plain, (_, optional) => optional);
    return { plain, loadings: [{ name: theOnly, reader: plain, overlay: new Map(), ...built }] };
  }
  const loadings = blocks.map((block): Loading => {
    const overlay = overlayOf(block, file, problems);
    const reader = overlay.size === 0 ? plain : readerOf(file, problems, overlay);
    judgeChoice(block, plain, problems);
    return { name: block.key, block, reader, overlay, ...buildDesign(file.root, reader, leftOutBy(block, plain), block) };
  });
  return { plain, loadings };
}

/** Values rest on those written before them more often than not: in that order none rests on a long row of others. */
function readerOf(file: SourceFile, problems: Problems, overlay?: Overlay): Reader {
  const resolver = new Resolver(file, problems, geometry, overlay);
  for (const name of file.lets.keys()) resolver.letValue(file, name);
  return new Reader(resolver);
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

/** Only whole parts are left out, and only optional ones brought in. */
function judgeChoice(loading: Instance, reader: Reader, problems: Problems): void {
  for (const name of ["without", "with"]) {
    const slot = loading.slots.get(name);
    const value = slot?.entry.value;
    if (!slot || !value) continue;
    const nodes: readonly ValueNode[] = value.type === "list" ? value.items : [value];
    for (const [i, { target, path }] of reader.blocks(loading, name).entries()) {
      const fault = !isPart(target.kind) ? `${name} takes whole parts; ${path} is ${withArticle(target.kind)}`
        : name === "with" && !isOptional(target, reader) ? `with brings in optional parts; ${path} is always in, for it has no optional = yes`
        : undefined;
      if (fault) problems.addFor(loading, "wrong_value", slot.home.file, nodes[i] ?? value, fault);
    }
  }
}

const isOptional = (block: Instance, reader: Reader) => [block, ...descendants(block)].some((part) => reader.flag(part, "optional"));
