import type { BlockNode, EntryNode } from "../../../grammar/tree";

/** What is written in the block by name; a word that stands without a value counts, for it has had its message. */
export function entriesOf(node: BlockNode): Map<string, EntryNode> {
  const entries = (node.body?.items ?? []).filter((item): item is EntryNode => item.type === "entry");
  return new Map(entries.map((entry) => [entry.path.names[0].text, entry]));
}
