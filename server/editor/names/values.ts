import type { NamedNode, PathNode, ValueNode } from "../../../grammar/tree";
import { functions } from "../../../grammar/vocabulary";
import { wordsOfForm, type Form, type Property } from "../../../grammar/vocabulary/schema";
import type { World } from "../../model/evaluate/site";
import type { Instance } from "../../model/resolve/instance";
import type { Occurrence } from "./meaning";
import { declaresAlias, pathBelow, pathFrom } from "./path";

/** Where a value stands, as far as the meaning of its names goes. */
export interface Around {
  readonly block: Instance;
  readonly world: World;
  readonly property?: Property;
  /** In `require`, `limits` and `weighed`: the figure that a path is, if it is one. */
  readonly figure?: (path: PathNode) => Occurrence[] | undefined;
}

/** Everything named in a value. */
export function namesIn(node: ValueNode | undefined, around: Around): Occurrence[] {
  if (!node) return [];
  const inner: Around = { ...around, property: undefined };
  switch (node.type) {
    case "named":
      return node.args ? callNames(node, node.args, inner) : pathNames(node, around);
    case "binary":
      return [...namesIn(node.left, inner), ...namesIn(node.right, inner)];
    case "pair":
      return [...namesIn(node.left, around), ...namesIn(node.right, around)];
    case "negate":
      return namesIn(node.inner, inner);
    case "group":
      return namesIn(node.inner, around);
    case "power":
      return namesIn(node.base, inner);
    case "point":
      return node.items.flatMap((item) => namesIn(item, inner));
    case "list":
      return node.items.flatMap((item) => namesIn(item, around));
    default:
      return [];
  }
}

function callNames(node: NamedNode, args: readonly ValueNode[], around: Around): Occurrence[] {
  const { start, end, names } = node.path;
  const name = names.map((n) => n.text).join(".");
  const known = Object.hasOwn(functions, name);
  const own: Occurrence[] = known ? [{ start, end, meaning: { type: "function", name }, declares: false }] : [];
  const [first, ...rest] = args;
  if (name !== "point" || first?.type !== "named" || first.args) return [...own, ...args.flatMap((arg) => namesIn(arg, around))];
  return [...own, ...pathFrom(around.block, first.path.names, around.world), ...rest.flatMap((arg) => namesIn(arg, around))];
}

const takesBlock = (form: Form["form"] | undefined) => form === "reference" || form === "outputs";

function pathNames(node: NamedNode, around: Around): Occurrence[] {
  const { block, world, property } = around;
  const figure = around.figure?.(node.path);
  if (figure) return figure;
  const { names } = node.path;
  const form = property?.form.form;
  if (form === "word" || (names.length === 1 && wordsOfForm(property?.form).includes(names[0].text))) return [{ ...span(node), meaning: { type: "word", property: property!, block, word: names[0].text }, declares: false }];
  if (form === "names") return block.origin ? pathBelow(block.origin, names) : [];
  const letHere = block.file.lets.has(names[0].text) ? letName(node, block) : undefined;
  if (form === "section" && letHere && names.length === 1) return letHere;
  const path = pathFrom(block, names, world);
  // A value is sought among blocks, then `let`s, then files; a block among blocks, then files.
  const isAlias = path[0]?.meaning.type === "alias" && declaresAlias(block.file, names[0].text);
  if (!takesBlock(form) && letHere && (path.length === 0 || isAlias)) return letHere;
  return path;
}

const span = ({ start, end }: { start: number; end: number }) => ({ start, end });

function letName(node: NamedNode, block: Instance): Occurrence[] {
  const [head] = node.path.names;
  return [{ ...span(head), meaning: { type: "let", file: block.file, name: head.text }, declares: false }];
}
