import type { BlockNode } from "../../../grammar/tree";
import type { FixEdit } from "../../../shared/finding";
import { only } from "../../model/build/design";
import { literalText } from "./literal";
import type { Instance, SourceFile } from "../../model/resolve/instance";

/** Writes a property of a block: over its value if it is written there, else as the block's first entry. */
export function setProperty(file: SourceFile, block: Instance, name: string, text: string): FixEdit | undefined {
  const { node } = block;
  if (!node || block.file !== file) return undefined;
  const slot = block.slots.get(name);
  if (slot?.home === block && slot.entry.value) return { file: file.uri, start: slot.entry.value.start, end: slot.entry.value.end, text };
  return { file: file.uri, ...insertion(node, `${name} = ${text}`) };
}

function insertion({ body, end }: BlockNode, entry: string): { start: number; end: number; text: string } {
  if (!body) return { start: end, end, text: ` { ${entry} }` };
  const at = body.open.end;
  return { start: at, end: at, text: body.items.length > 0 ? ` ${entry} ;` : ` ${entry} ` };
}

/** Puts a new block after the airframe's, or at the end of a file that has none. */
export function newBlock(file: SourceFile, text: string): FixEdit {
  const airframe = only(file.root, "airframe")?.node;
  const { text: all } = file.parsed;
  const end = airframe?.end ?? all.length;
  // A comment on the airframe's line stays with it.
  const at = end + (/^[ \t;]*(#[^\r\n]*)?(?=\r?\n|$)/.exec(all.slice(end))?.[0].length ?? 0);
  const line = all.includes("\r\n") ? "\r\n" : "\n";
  return { file: file.uri, start: at, end: at, text: airframe ? `${line}${line}${text}` : `${line}${text}${line}` };
}

/** A place as a fix writes it, to the millimetre. */
export const pointText = (point: readonly [number, number, number]): string =>
  `(${point.map((metres) => literalText(metres, "mm", 1e-3)).join(", ")})`;

/** A name that no block or value at the top of the file has yet. */
export function freeName(file: SourceFile, wanted: string): string {
  const taken = (name: string) => file.root.children.has(name) || file.lets.has(name) || file.uses.has(name);
  if (!taken(wanted)) return wanted;
  let n = 2;
  while (taken(`${wanted}_${n}`)) n++;
  return `${wanted}_${n}`;
}
