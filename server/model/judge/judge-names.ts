import { findUnit } from "../../../grammar/units/units";
import type { NameNode, ValueNode } from "../../../grammar/tree";
import { rewrite, type Problems } from "../problems";
import { descendants, type SourceFile } from "../resolve/instance";

/** Names that could be taken for something else, values nobody uses, waivers without a reason. */
export function judgeNames(file: SourceFile, problems: Problems): void {
  const used = usedNames(file);
  for (const [name, node] of file.lets) {
    if (!node.name || used.has(name)) continue;
    problems.add("unused_let", "hint", file, node.name, `nothing here uses "${name}"`, [rewrite(file, node, `Remove ${name}`, "")]);
  }
  for (const item of file.tree.items) if ((item.type === "let" || item.type === "use") && item.name) unitAsName(item.name, file, problems);
  const blocks = [file.root, ...descendants(file.root)];
  for (const block of blocks) if (block.file === file && block.node?.name) unitAsName(block.node.name, file, problems);
  for (const { node, file: written } of blocks.flatMap((block) => block.waives)) {
    const { check, because } = node;
    if (written !== file || !check || (because && because.text.trim() !== "")) continue;
    const add = because ?? { start: check.end, end: check.end };
    problems.add("waiver_without_reason", "warning", file, check, `say why ${check.text} may be waived: add because "…"`,
      [rewrite(file, add, "Add a reason", `${because ? "" : " because "}"why"`)]);
  }
}

function unitAsName(name: NameNode, file: SourceFile, problems: Problems): void {
  if (!findUnit(name.text)) return;
  problems.add("unit_as_name", "hint", file, name, `"${name.text}" is a unit too; another name reads better`);
}

/** The first names of all paths in the file's values: what they use. */
function usedNames(file: SourceFile): Set<string> {
  const names = new Set<string>();
  const take = (node: ValueNode | undefined): void => {
    if (!node) return;
    switch (node.type) {
      case "named":
        names.add(node.path.names[0].text);
        node.args?.forEach(take);
        break;
      case "pair":
      case "binary":
        take(node.left);
        take(node.right);
        break;
      case "negate":
      case "group":
        take(node.inner);
        break;
      case "power":
        take(node.base);
        break;
      case "point":
      case "list":
        node.items.forEach(take);
    }
  };
  for (const item of file.tree.items) {
    if (item.type === "let") take(item.value);
    if (item.type === "require" && item.condition) [item.condition.left, item.condition.right, item.condition.upper].forEach(take);
  }
  for (const block of [file.root, ...descendants(file.root)]) {
    for (const { entry, home } of block.slots.values()) if (home.file === file) take(entry.value);
  }
  return names;
}
