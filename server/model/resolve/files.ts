import type { LetNode, StringNode } from "../../../grammar/tree";
import type { Fix } from "../../../shared/finding";
import { rewrite, type Problems, type TextCode } from "../problems";
import { elaborateAll } from "./elaborate";
import type { Fault, Instance, SourceFile, TextSource } from "./instance";
import { openBody } from "./open";

/** The address of `path` seen from `uri`: both with `/`, `.` and `..` resolved; undefined if it leaves the root. */
export function relativeUri(uri: string, path: string): string | undefined {
  if (/^([a-z]+:|\/)/i.test(path)) return undefined;
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

/** Files being opened for one model: each is read once, and none may use one that it is used by. */
interface Opening {
  readonly source: TextSource;
  readonly problems: Problems;
  readonly opened: Map<string, SourceFile | undefined>;
  readonly chain: readonly string[];
}

/** Opens a file and those it uses, which are worked out; its own blocks are when first needed. Undefined if it can't be read. */
export function openFile(uri: string, source: TextSource, problems: Problems): SourceFile | undefined {
  return open(uri, { source, problems, opened: new Map(), chain: [uri] });
}

function open(uri: string, opening: Opening): SourceFile | undefined {
  const { source, problems, opened } = opening;
  if (opened.has(uri)) return opened.get(uri);
  const parsed = source.parsed(uri);
  opened.set(uri, undefined);
  if (!parsed) return undefined;
  const root: Instance = {
    kind: "file", key: "", named: false, file: undefined as unknown as SourceFile,
    children: new Map(), slots: new Map(), waives: [], state: "whole",
  };
  const file: SourceFile = { uri, parsed, tree: parsed.tree, lets: new Map(), uses: new Map(), root, source };
  (root as { file: SourceFile }).file = file;
  opened.set(uri, file);
  const mistakes = parsed.issues.length;
  if (mistakes > 0) file.fault = { code: "broken_file", message: `has ${mistakes === 1 ? "a mistake" : `${mistakes} mistakes`} in its text` };
  openBody(root, parsed.tree.items, problems);
  takeNames(file, opening);
  return file;
}

/** Takes up the names that `let` and `use` give, beside those of the blocks. */
function takeNames(file: SourceFile, opening: Opening): void {
  const lets = file.lets as Map<string, LetNode>;
  const uses = file.uses as Map<string, SourceFile>;
  const seen = new Set<string>();
  for (const item of file.tree.items) {
    if ((item.type !== "let" && item.type !== "use") || !item.name) continue;
    const { text } = item.name;
    const message = seen.has(text) ? "is named twice" : file.root.children.has(text) ? "names a block too" : undefined;
    if (message) opening.problems.add("name_twice", "error", file, item.name, `"${text}" ${message}; give one of the two another name`);
    if (seen.has(text)) continue;
    seen.add(text);
    if (item.type === "let") lets.set(text, item);
    else if (item.path) {
      const used = use(item.path, file, opening);
      if (used) uses.set(text, used);
    }
  }
}

/** Opens what `use` names; says on the path what is wrong with it, for whom `file` is used by too. */
function use(path: StringNode, file: SourceFile, opening: Opening): SourceFile | undefined {
  const { problems, chain } = opening;
  const named = `"${path.text}"`;
  const uri = relativeUri(file.uri, path.text);
  const fail = (code: TextCode, message: string, fault: Fault, fixes?: readonly Fix[]): undefined => {
    problems.add(code, "error", file, path, `${named} ${message}`, fixes);
    file.fault ??= { code: fault.code, message: `uses ${named}, which ${fault.message}` };
  };
  const missing: Fault = { code: "broken_file", message: "is not there" };
  if (uri === undefined) return fail("file_not_found", "lies outside the workspace; a path starts from the folder of this file", missing);
  if (chain.includes(uri)) {
    const message = uri === file.uri ? "is this file itself" : `uses this file in turn; ${noCircle}`;
    return fail("circle", message, { code: "circle", message: "uses it in turn" });
  }
  const used = open(uri, { ...opening, chain: [...chain, uri] });
  if (!used) {
    const mended = path.text.replaceAll("\\", "/");
    if (mended === path.text) return fail("file_not_found", "is not there: no such file beside this one", missing);
    return fail("file_not_found", "is not there; folders are parted by /", missing, [rewrite(file, path, "Write /", `"${mended}"`)]);
  }
  elaborateAll(used.root, problems);
  const { fault } = used;
  if (fault) {
    const circle = fault.code === "circle";
    problems.add(fault.code, circle ? "error" : "warning", file, path, `${named} ${fault.message}; ${circle ? noCircle : "what is whole in it is used"}`);
    file.fault ??= { code: fault.code, message: `uses ${named}, which ${fault.message}` };
  }
  return used;
}

const noCircle = "files can't use each other in a circle";
