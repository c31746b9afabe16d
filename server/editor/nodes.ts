import type { FileNode, Span } from "../../grammar/tree";

/** Any node of the tree. */
export interface AnyNode extends Span {
  readonly type: string;
}

const isNode = (x: unknown): x is AnyNode =>
  typeof x === "object" && x !== null && "type" in x && "start" in x && typeof x.start === "number";

/** The direct parts of a node that are nodes themselves. */
function parts(node: AnyNode): AnyNode[] {
  return Object.values(node).flatMap((value: unknown) => (Array.isArray(value) ? value.filter(isNode) : isNode(value) ? [value] : []));
}

/**
 * The nodes around an offset, the file first and the narrowest last. Between two that touch there, the one that begins
 * at the offset is taken.
 */
export function nodesAt(tree: FileNode, offset: number): readonly AnyNode[] {
  const chain: AnyNode[] = [tree];
  for (;;) {
    const touching = parts(chain[chain.length - 1]).filter((node) => node.start <= offset && offset <= node.end && node.end > node.start);
    const next = touching.find((node) => offset < node.end) ?? touching[0];
    if (!next) return chain;
    chain.push(next);
  }
}
