import type { NamedNode } from "../../../grammar/tree";
import { kinds } from "../../../grammar/vocabulary";
import type { Fix } from "../../../shared/finding";
import { lineOf, pathOf, type Instance, type SourceFile } from "../resolve/instance";
import type { BlockRef } from "../resolve/names";
import { withArticle } from "../words";
import type { Expression } from "./expression";

/** Says that a block named in what was copied must be declared in the file that copies, and offers the line that does so. */
export function undeclared(there: BlockRef, node: NamedNode, at: Expression): undefined {
  const { holder, home } = at.site;
  const { file } = at.world;
  const [first, second] = node.path.names;
  // A single name can't be behind an alias: it was found beside what was copied.
  const throughAlias = home.file === file && second !== undefined && file.uses.has(first.text);
  const { kind } = there.block;
  const why = kinds[kind]?.massive ? "what has weight is declared in the file it flies in" : "it must be declared in this file";
  const what = throughAlias ? `${there.path} stands in another file` : `the copy needs ${withArticle(kind)} "${there.path}" that is not here`;
  const fix = declaration(there, holder, file);
  const rename = throughAlias && fix ? [{ file: file.uri, start: node.path.start, end: second.end, text: there.head.key }] : [];
  return at.complain("not_declared_here", node.path, `${what}; ${why}`, fix && [{ ...fix, edits: [...fix.edits, ...rename] }]);
}

/** `servo ail from single.ail { }` before the block that copies, in the assembly it belongs to or at the top. */
function declaration({ head }: Pick<BlockRef, "head">, holder: Instance, file: SourceFile): Fix | undefined {
  const source = head.file === file ? "" : [...file.uses].find(([, used]) => used === head.file)?.[0];
  if (source === undefined) return undefined;
  const line = lineOf(holder);
  // What stands in a placed copy is declared in the assembly it was placed from.
  if (holder.copied?.file === holder.file && line.some((block) => block.kind === "place")) return declaration({ head }, holder.copied, file);
  const around = line.map((block) => block.kind).lastIndexOf("assembly");
  const node = line[around + 1]?.file === file ? line[around + 1].node : undefined;
  if (!node) return undefined;
  const name = head.named ? `${head.kind} ${head.key}` : head.kind;
  const text = `${name} from ${source ? `${source}.` : ""}${pathOf(head)} { }`;
  const indent = /[ \t]*$/.exec(file.parsed.text.slice(0, node.start))?.[0] ?? "";
  return { title: `Declare ${text}`, edits: [{ file: file.uri, start: node.start, end: node.start, text: `${text}\n${indent}` }] };
}
