import type { ValueNode } from "../../../grammar/tree";
import { relativeUri } from "../resolve/files";
import type { Instance, SourceFile } from "../resolve/instance";
import type { Reader } from "./reader";

export interface Beside {
  readonly text: string;
  /** What is wrong with it, to follow its name, said where that is written. */
  readonly complain: (fault: string) => void;
}

/** The text of the file that a property names; undefined, and said, if it is not there. */
export function textBeside(block: Instance, property: string, reader: Reader): Beside | undefined {
  const slot = block.slots.get(property);
  const path = reader.text(block, property);
  const node: ValueNode | undefined = slot?.entry.value;
  if (!slot || path === undefined || !node) return undefined;
  const file: SourceFile = slot.home.file;
  const uri = relativeUri(file.uri, path);
  const text = uri === undefined ? undefined : file.source.text(uri);
  const { problems } = reader.world;
  if (text === undefined) {
    problems.addFor(block, "file_not_found", file, node, `"${path}" is not there: no such file beside this one`);
    return undefined;
  }
  return { text, complain: (fault) => problems.addFor(block, "wrong_value", file, node, `"${path}" ${fault}`) };
}
