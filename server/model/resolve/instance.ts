import type { BlockNode, EntryNode, FileNode, LetNode, ParsedFile, WaiveNode } from "../../../grammar/tree";

/** A file as parsed, with its names. `uses` maps each alias to the file it stands for, where that could be read. */
export interface SourceFile {
  readonly uri: string;
  readonly parsed: ParsedFile;
  readonly tree: FileNode;
  readonly lets: ReadonlyMap<string, LetNode>;
  readonly uses: ReadonlyMap<string, SourceFile>;
  readonly root: Instance;
  readonly source: TextSource;
  /** Why not all of it can be used: it, or a file it uses, has mistakes. Completes "`plover.airframe` …". */
  fault?: Fault;
}

export interface Fault {
  readonly code: "broken_file" | "circle";
  readonly message: string;
}

/** A waiver and the file it is written in: a copy brings those of its original. */
export interface Waiver {
  readonly node: WaiveNode;
  readonly file: SourceFile;
}

/** Where texts come from. The engine knows no file system: hosts give it this. */
export interface TextSource {
  /** The parsed text of a design, or undefined if it can't be read. Asked again for the same text, gives the same object. */
  parsed(uri: string): ParsedFile | undefined;
  /** Any other text the design names: coordinates, a measured table. */
  text(uri: string): string | undefined;
}

/** A property as written: its entry, and the block it was written in, where its numbers are worked out. */
export interface Slot {
  readonly entry: EntryNode;
  readonly home: Instance;
  /** The loading that puts it in the place of another. */
  readonly loading?: string;
}

/** A block after copying: what it holds, whether written here or brought by `from`. */
export interface Instance {
  readonly kind: string;
  /** Its name, or its kind where it has none. */
  readonly key: string;
  readonly named: boolean;
  readonly file: SourceFile;
  /** The block as written, in `file`. For a child that came with a copy: the copied original's. The root has none. */
  readonly node?: BlockNode;
  readonly parent?: Instance;
  readonly children: Map<string, Instance>;
  readonly slots: Map<string, Slot>;
  readonly waives: Waiver[];
  /** What it was copied from, if the copy was asked for on this very block. */
  origin?: Instance;
  /** What it is a copy of, asked for or brought along with the block it stands in. */
  copied?: Instance;
  state: "fresh" | "busy" | "whole";
}

/** Names from the file down to this block: `main.outer.tip`. The file itself is empty. */
export function pathOf(instance: Instance): string {
  return instance.parent?.parent ? `${pathOf(instance.parent)}.${instance.key}` : instance.key;
}

/** All blocks below, parents before children. */
export function descendants(instance: Instance, found: Instance[] = []): readonly Instance[] {
  for (const child of instance.children.values()) {
    found.push(child);
    descendants(child, found);
  }
  return found;
}

/** The block and what it stands in, from the file's own children down to it. */
export function lineOf(instance: Instance): readonly Instance[] {
  const line: Instance[] = [];
  for (let at: Instance | undefined = instance; at?.parent; at = at.parent) line.unshift(at);
  return line;
}

/** Is the block, or one it stands in, of that kind? */
export function isInside(instance: Instance, kind: string): boolean {
  for (let at: Instance | undefined = instance; at; at = at.parent) if (at.kind === kind) return true;
  return false;
}
