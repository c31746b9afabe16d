import { nearest } from "../../grammar/nearest";
import { kinds } from "../../grammar/vocabulary";
import type { Overlay } from "./evaluate/resolver";
import { rewrite, type Problems } from "./problems";
import { rivals } from "./resolve/copy";
import type { Instance, Slot, SourceFile } from "./resolve/instance";

/** The properties that a loading's blocks put in the place of those of the parts with the same kind and name. */
export function overlayOf(loading: Instance, file: SourceFile, problems: Problems): Overlay {
  const overlay = new Map<Instance, Map<string, Slot | undefined>>();
  const take = (from: Instance, under: Instance): void => {
    for (const child of from.children.values()) {
      const part = under.children.get(child.key);
      if (part?.kind !== child.kind) lost(child, under, file, problems);
      else if (part.kind === "assembly") plan(child, file, problems);
      else {
        if (child.slots.size > 0) overlay.set(part, changes(child, part, loading.key));
        take(child, part);
      }
    }
  };
  take(loading, file.root);
  return overlay;
}

/** What is written anew is worked out where the part itself stands, and replaces what says the same in another way. */
function changes(child: Instance, part: Instance, loading: string): Map<string, Slot | undefined> {
  const slots = new Map<string, Slot | undefined>();
  for (const name of child.slots.keys()) for (const rival of rivals(part.kind, name)) slots.set(rival, undefined);
  for (const [name, { entry, home }] of child.slots) {
    slots.set(name, { entry, home: { ...home, parent: part.parent, children: part.children }, loading });
  }
  return slots;
}

function plan(child: Instance, file: SourceFile, problems: Problems): void {
  if (!child.node) return;
  problems.add("misplaced", "error", file, child.node.kind,
    `assembly ${child.key} is only a plan; a loading changes what is placed from it, by the name of its place`);
}

function lost(child: Instance, under: Instance, file: SourceFile, problems: Problems): void {
  // A word that isn't known has a message of its own.
  if (!child.node || !Object.hasOwn(kinds, child.kind)) return;
  const same = [...under.children.values()].filter((other) => other.kind === child.kind && other.named).map((other) => other.key);
  const near = nearest(child.key, same) ?? (same.length === 1 ? same[0] : undefined);
  const { kind, name } = child.node;
  const missing = child.named ? `there is no ${child.kind} "${child.key}" in it` : `it has no ${child.kind} without a name`;
  const fix = near && (name ? rewrite(file, name, `Write ${near}`, near) : rewrite(file, { start: kind.end, end: kind.end }, `Write ${child.kind} ${near}`, ` ${near}`));
  problems.add("unknown_name", "error", file, name ?? kind, `a loading changes parts of the design: ${missing}${near ? `; did you mean ${near}?` : ""}`, fix ? [fix] : undefined);
}
