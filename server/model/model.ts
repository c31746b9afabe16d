import { buildLoadings, type Loading } from "./loadings";
import { Problems } from "./problems";
import { elaborateAll } from "./resolve/elaborate";
import { openFile } from "./resolve/files";
import type { Instance, SourceFile, TextSource } from "./resolve/instance";
import { judgeFile } from "./judge/judge-file";

/** A text resolved: its blocks, its loadings with their designs, and what is wrong with it. */
export interface Model {
  readonly file: SourceFile;
  readonly problems: Problems;
  readonly loadings: readonly Loading[];
}

/** Resolves a file with all it uses. Undefined only if the file itself can't be read. */
export function resolveModel(uri: string, source: TextSource): Model | undefined {
  const problems = new Problems(uri);
  const file = openFile(uri, source, problems);
  if (!file) return undefined;
  for (const issue of file.parsed.issues) {
    const fixes = issue.fix && [{ title: issue.fix.title, edits: issue.fix.edits.map((edit) => ({ ...edit, file: uri })) }];
    problems.add("syntax", "error", file, issue, issue.message, fixes);
  }
  elaborateAll(file.root, problems);
  const { plain, loadings } = buildLoadings(file, problems);
  judgeFile(file, plain, loadings, problems);
  return { file, problems, loadings };
}

/** The nearest block around this one that is written in the file itself. */
export function writtenHere(block: Instance, file: SourceFile): Instance | undefined {
  for (let at: Instance | undefined = block; at?.node; at = at.parent) if (at.file === file) return at;
  return undefined;
}
