import type { LetNode, UseNode } from "../../../grammar/tree";
import type { Problems } from "../problems";
import type { Instance, SourceFile, TextSource } from "./instance";
import { openBody } from "./elaborate";

/** The address of `path` seen from `uri`: both with `/`, `.` and `..` resolved; undefined if it leaves the root. */
export function relativeUri(uri: string, path: string): string | undefined {
  const scheme = /^[a-z][a-z0-9+.-]*:\/\/[^/]*/i.exec(uri)?.[0] ?? "";
  const parts = uri.slice(scheme.length).split("/").slice(0, -1);
  for (const part of path.split("/")) {
    if (part === "" || part === ".") continue;
    if (part !== "..") parts.push(scheme ? encodeURIComponent(part) : part);
    else if (parts.length > 0 && parts.at(-1) !== "" && parts.at(-1) !== "..") parts.pop();
    else if (scheme) return undefined;
    else parts.push("..");
  }
  return scheme + parts.join("/");
}

/** Opens a file and those it uses. Names are read; blocks are worked out when first needed. */
export function openFile(uri: string, source: TextSource, problems: Problems, above: readonly string[] = []): SourceFile | undefined {
  const parsed = source.parsed(uri);
  if (!parsed) return undefined;
  const lets = new Map<string, LetNode>();
  const uses = new Map<string, SourceFile>();
  const root: Instance = {
    kind: "file", key: "", named: false, file: undefined as unknown as SourceFile,
    children: new Map(), slots: new Map(), waives: [], state: "whole",
  };
  const file: SourceFile = { uri, parsed, tree: parsed.tree, lets, uses, root, source };
  (root as { file: SourceFile }).file = file;
  const chain = [...above, uri];
  for (const item of parsed.tree.items) {
    if (item.type === "let" && item.name) {
      if (lets.has(item.name.text)) problems.add("name_twice", "error", file, item.name, `"${item.name.text}" is named twice; names must differ`);
      else lets.set(item.name.text, item);
    } else if (item.type === "use") openUse(item, file, uses, source, problems, chain);
  }
  openBody(root, parsed.tree.items, problems);
  for (const [name, node] of lets) {
    if (root.children.has(name) && node.name) {
      problems.add("name_twice", "error", file, node.name, `"${name}" names a block too; names must differ`);
    }
  }
  return file;
}

function openUse(
  node: UseNode, file: SourceFile, uses: Map<string, SourceFile>, source: TextSource, problems: Problems, chain: readonly string[],
): void {
  if (!node.path || !node.name) return;
  const uri = relativeUri(file.uri, node.path.text);
  if (uri === undefined) {
    problems.add("file_not_found", "error", file, node.path, `"${node.path.text}" lies outside the workspace`);
    return;
  }
  if (chain.includes(uri)) {
    problems.add("circle", "error", file, node.path, `"${node.path.text}" uses this file in turn; files can't use each other in a circle`);
    return;
  }
  const used = openFile(uri, source, problems, chain);
  if (!used) {
    problems.add("file_not_found", "error", file, node.path, `there is no file "${node.path.text}" beside this one`);
    return;
  }
  const broken = used.parsed.issues.length;
  if (broken > 0) {
    problems.add("broken_file", "warning", file, node.path,
      `"${node.path.text}" has ${broken === 1 ? "a mistake" : `${broken} mistakes`} in its text; what is whole in it is used`);
  }
  if (uses.has(node.name.text)) problems.add("name_twice", "error", file, node.name, `"${node.name.text}" is named twice; names must differ`);
  else uses.set(node.name.text, used);
}
