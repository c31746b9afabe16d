import { readdirSync, readFileSync, statSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import type { OwnFiles } from "./session/host";

/** Coordinate files and tables are a few kilobytes; anything this large was named by mistake. */
const largest = 4 * 1024 * 1024;
/** Folders looked through for designs that use one another: enough for any, and no endless walk through a home folder. */
const mostFolders = 500;

function pathOf(uri: string): string | undefined {
  try {
    return uri.startsWith("file:") ? fileURLToPath(uri) : undefined;
  } catch {
    return undefined;
  }
}

function statOf(path: string | undefined) {
  const stat = path === undefined ? undefined : statSync(path, { throwIfNoEntry: false });
  return stat?.isFile() && stat.size <= largest ? stat : undefined;
}

function guarded<T>(work: () => T | undefined): T | undefined {
  try {
    return work();
  } catch {
    return undefined;
  }
}

/** Files of this machine, by `file:` address. */
export const nodeFiles: OwnFiles = {
  read: (uri) => guarded(() => {
    const path = pathOf(uri);
    return path !== undefined && statOf(path) ? readFileSync(path, "utf8").replace(/^\uFEFF/, "") : undefined;
  }),
  stamp: (uri) => guarded(() => {
    const stat = statOf(pathOf(uri));
    return stat && `${stat.mtimeMs} ${stat.size}`;
  }),
  designs: (folders) => folders.flatMap((uri) => {
    const path = pathOf(uri);
    return path === undefined ? [] : designsBelow(path);
  }),
};

function designsBelow(root: string): string[] {
  const found: string[] = [];
  const queue = [root];
  for (let looked = 0; queue.length > 0 && looked < mostFolders; looked++) {
    const folder = queue.shift()!;
    for (const entry of guarded(() => readdirSync(folder, { withFileTypes: true })) ?? []) {
      if (entry.name.startsWith(".") || entry.name === "node_modules") continue;
      if (entry.isDirectory()) queue.push(join(folder, entry.name));
      else if (entry.name.endsWith(".airframe")) found.push(pathToFileURL(join(folder, entry.name)).href);
    }
  }
  return found;
}
