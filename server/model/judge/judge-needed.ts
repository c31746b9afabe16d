import type { BlockNode } from "../../../grammar/tree";
import { missingProperties } from "../../../grammar/vocabulary";
import { surfaceKinds } from "../../../grammar/vocabulary/places";
import type { Kind, Property } from "../../../grammar/vocabulary/schema";
import type { Fix } from "../../../shared/finding";
import { bodyKinds } from "../build/bodies";
import type { Problems } from "../problems";
import { pathOf, type Instance } from "../resolve/instance";
import { andList, orList } from "../words";
import { entriesOf } from "./entries";
import { insertInto } from "./insert";
import { judgeLeg, judgeSortie } from "./judge-sortie";

const isSurface = (kind: string) => (surfaceKinds as readonly string[]).includes(kind);

const titleOf = (block: Instance) => (block.named ? `${block.kind} ${block.key}` : block.kind);

/** Has the block all it needs, in properties and in blocks? `meant`: words that a mistyped one in it stands for. */
export function judgeNeeded(block: Instance, node: BlockNode, kind: Kind, meant: ReadonlySet<string>, problems: Problems): void {
  // A copy of something that isn't there lacks what it would have brought; that has been said.
  if (lacksOrigin(block)) return;
  const inside = [...block.children.values()].map((child) => child.kind);
  const there = new Set([...entriesOf(node).keys(), ...block.slots.keys(), ...inside, ...meant]);
  const missing = missingProperties(kind, there, block.kind === "panel" && (block.origin !== undefined || !isFirst(block)));
  const span = node.name ?? node.kind;
  if (missing.length > 0) {
    const names = andList(missing.map((p) => p.name));
    const said = block.kind === "leg" ? orList(["time", "distance", "height"]) : names;
    problems.add("missing_property", "error", block.file, span, `${titleOf(block)} needs ${said}`, fill(block, node, names, missing));
  }
  if (block.kind === "sortie") judgeSortie(block, node, titleOf(block), there, problems);
  if (block.kind === "leg") judgeLeg(block, node, titleOf(block), there, problems);
  if (isSurface(block.kind)) judgeSurface(block, node, there, problems);
  if (bodyKinds.has(block.kind) && inside.filter((k) => k === "station").length === 1 && !(there.has("length") && there.has("width"))) {
    problems.add("missing_property", "error", block.file, span, `${titleOf(block)} has one station; its outline takes two or more, or length and width`);
  }
  if (block.kind === "place" && !node.from) {
    problems.add("missing_property", "error", block.file, span, `${titleOf(block)} names no assembly to put here; write place ${block.named ? block.key : "NAME"} from ASSEMBLY { }`);
  }
}

function judgeSurface(block: Instance, node: BlockNode, there: ReadonlySet<string>, problems: Problems): void {
  const span = node.name ?? node.kind;
  const first = [...block.children.values()].find((child) => child.kind === "panel");
  if (!first) {
    if (there.has("panel")) return;
    const panel = block.kind === "fin" ? "panel only { span = 190 mm ; chord = 170 mm to 110 mm }" : "panel half { span = 420 mm ; chord = 245 mm }";
    problems.add("missing_property", "error", block.file, span, `${titleOf(block)} has no panel; it takes one or more, from root to tip`,
      insertInto(node, block.file, [panel], "last", "Add a panel"));
    return;
  }
  if (there.has("foil") || first.slots.has("foil") || first.node?.from) return;
  problems.add("foil_missing", "hint", block.file, span,
    `${titleOf(block)} has no foil, so a flat plate of 3 % is taken; write foil = naca("2412") or the like`,
    fill(block, node, "foil", [{ name: "foil", example: "flat(3 %)" }]));
}

/** Is it, or what it was copied from, a copy of something that isn't there? */
function lacksOrigin(block: Instance): boolean {
  for (let at: Instance | undefined = block; at; at = at.copied) if (at.node?.from && !at.origin) return true;
  return false;
}

function isFirst(panel: Instance): boolean {
  for (const other of panel.parent?.children.values() ?? []) if (other.kind === "panel") return other === panel;
  return true;
}

/** Writes what is missing with the vocabulary's examples, before all else in the block. */
function fill(block: Instance, node: BlockNode, names: string, missing: readonly Pick<Property, "name" | "example">[]): Fix[] | undefined {
  return insertInto(node, block.file, missing.map((p) => `${p.name} = ${p.example}`), "first", `Add ${names} to ${pathOf(block)}`);
}
