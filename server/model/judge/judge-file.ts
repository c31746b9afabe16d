import { findProperty } from "../../../grammar/vocabulary";
import type { Reader } from "../build/reader";
import type { Loading } from "../loadings";
import type { Problems } from "../problems";
import type { Instance, SourceFile } from "../resolve/instance";
import { judgeBlock, judgeSingles } from "./judge-block";
import { judgeNames } from "./judge-names";

/** Says what is wrong with a file's words, and works out every value in it so that each mistake is met. */
export function judgeFile(file: SourceFile, plain: Reader, loadings: readonly Loading[], problems: Problems): void {
  judgeNames(file, problems);
  const judge = (block: Instance, changes: boolean): void => {
    judgeSingles(block, problems);
    for (const child of block.children.values()) {
      // What came along unchanged with a copy was judged where it is written.
      if (child.file === file && child.node !== child.copied?.node) judgeBlock(child, problems);
      // What a loading changes is worked out in that loading, where the part itself stands.
      if (!changes) readAll(child, child.slots.keys(), plain);
      judge(child, changes || child.kind === "loading");
    }
  };
  judge(file.root, false);
  for (const { overlay, reader } of loadings) for (const [block, slots] of overlay) readAll(block, slots.keys(), reader);
}

function readAll(block: Instance, names: Iterable<string>, reader: Reader): void {
  for (const name of names) {
    const property = findProperty(block.kind, name);
    if (property) reader.world.read(block, property);
  }
}
