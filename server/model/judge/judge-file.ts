import { findProperty } from "../../../grammar/vocabulary";
import type { Loading } from "../loadings";
import type { Problems } from "../problems";
import { descendants, isInside, type SourceFile } from "../resolve/instance";
import { judgeBlock } from "./judge-block";
import { judgeNames } from "./judge-names";

/** Says what is wrong with a file's words, and works out every value in it so that each mistake is met. */
export function judgeFile(file: SourceFile, loadings: readonly Loading[], problems: Problems): void {
  judgeNames(file, problems);
  const plain = loadings[0].reader;
  for (const block of descendants(file.root)) {
    if (block.file !== file || !block.node) continue;
    judgeBlock(block, problems);
    // What a loading changes is worked out in that loading, where the part itself stands.
    if (isInside(block, "loading") && block.kind !== "loading") continue;
    for (const name of block.slots.keys()) if (findProperty(block.kind, name)) plain.raw(block, name);
  }
  for (const name of file.lets.keys()) plain.world.letValue(file, name);
}
