import { nearest } from "../../../grammar/nearest";
import type { NameNode, Span } from "../../../grammar/tree";
import { rewrite, type Problems } from "../problems";
import type { SourceFile } from "./instance";

type Name = Span & Pick<NameNode, "text">;

/** Says that a name stands for nothing, with the nearest that does. */
export function noSuchBlock(file: SourceFile, name: Name, message: string, candidates: readonly string[], problems: Problems): undefined {
  const near = nearest(name.text, candidates);
  problems.add("unknown_name", "error", file, name, near ? `${message}; did you mean ${near}?` : message,
    near ? [rewrite(file, name, `Write ${near}`, near)] : undefined);
  return undefined;
}
