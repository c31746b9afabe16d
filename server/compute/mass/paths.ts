const sides: ReadonlySet<string> = new Set(["right", "left"]);

/**
 * Every path a part counts under: its own, each it stands in, and the same without the sides of mirrored things, so
 * `ail.right` counts under `ail`, and `pods.left.motor` under `pods.left`, `pods.motor` and `pods` too.
 */
export function pathsOver(path: string): Iterable<string> {
  if (!path.includes(".")) return [path];
  const found = new Set<string>();
  let open: string[] = [];
  for (const name of path.split(".")) {
    const longer = open.length ? open.map((p) => `${p}.${name}`) : [name];
    open = sides.has(name) && open.length ? [...open, ...longer] : longer;
    for (const p of open) found.add(p);
  }
  return found;
}
