import type { ListNode, NamedNode, ValueNode } from "../../../grammar/tree";
import type { FigureSet } from "../../figures/figure-set";
import { means } from "../../model/loadings";
import type { Instance } from "../../model/resolve/instance";
import type { Subject } from "../check";

/** One name on one output of a receiver. */
export interface Plug {
  readonly receiver: string;
  /** From 1. */
  readonly output: number;
  /** As the model has it: `ail`, `ail.left`, `nose.esc`. */
  readonly name: string;
  /** The parts it stands for: both of a mirrored pair. */
  readonly parts: readonly string[];
  /** Where it is written, if in this file. */
  readonly node?: NamedNode;
}

export interface Wiring {
  readonly plugs: readonly Plug[];
  /** Servos and controllers of the loading. */
  readonly driven: readonly { readonly path: string; readonly kind: string }[];
  /** The lists of outputs that are written out in this file, with the receiver each belongs to. */
  readonly lists: readonly { readonly receiver: string; readonly list: ListNode; readonly block: Instance }[];
}

/** What is plugged in where; undefined while no receiver says anything of its outputs. */
export function wiringOf(subject: Subject, set: FigureSet): Wiring | undefined {
  const { receivers, loads, wheels } = set.loading.design;
  if (!receivers.some(({ outputs }) => outputs.length > 0)) return undefined;
  const paths = [...loads, ...wheels].map(({ path }) => path);
  const lists: Wiring["lists"][number][] = [];
  const plugs = receivers.flatMap(({ path, outputs }) => {
    const block = set.loading.blocks.get(path);
    const list = block && listOf(subject, set, block);
    if (block && list) lists.push({ receiver: path, list, block });
    return outputs.flatMap((names, channel) => names.map((name, i): Plug => {
      const parts = paths.filter((part) => means(name, part));
      return { receiver: path, output: channel + 1, name, parts: parts.length > 0 ? parts : [name], node: namedAt(list?.items[channel], i) };
    }));
  });
  return { plugs, lists, driven: loads.filter(({ kind }) => kind === "servo" || kind === "esc").map(({ path, kind }) => ({ path, kind })) };
}

function listOf(subject: Subject, set: FigureSet, block: Instance): ListNode | undefined {
  const slot = subject.places.slot(set, block, "outputs");
  return slot && slot.home.file === subject.file && slot.entry.value?.type === "list" ? slot.entry.value : undefined;
}

function namedAt(node: ValueNode | undefined, i: number): NamedNode | undefined {
  const inner = node?.type === "list" ? node.items[i] : i === 0 ? node : undefined;
  return inner?.type === "named" ? inner : undefined;
}
