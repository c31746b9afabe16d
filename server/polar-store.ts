import { randomUUID } from "node:crypto";
import { mkdirSync, readdirSync, readFileSync, renameSync, statSync, unlinkSync, writeFileSync } from "node:fs";
import { homedir } from "node:os";
import { isAbsolute, join, resolve } from "node:path";
import type { PolarStore } from "./compute/section-air/polar-shelf";

/** Names the code that polars come from; the bundler puts it in. What other code worked out is never read. */
declare const polarMethod: string;

/** Files kept, the oldest going first: some ten megabytes. */
const most = 2000;
/** Polars are some kilobytes; anything this large is none. */
const largest = 64 * 1024;
/** Files written until the folder is looked through again. */
const round = 50;

type Environment = Readonly<Record<string, string | undefined>>;

/** Where the user's programs keep what can be made again; `SPARWRIGHT_CACHE` names another folder, or none. */
export function cacheFolder(environment: Environment, platform: string, home: string): string | undefined {
  const { SPARWRIGHT_CACHE: own, XDG_CACHE_HOME: usual, LOCALAPPDATA: local } = environment;
  if (own !== undefined) return own === "" ? undefined : resolve(own);
  if (platform === "win32") return join(local || join(home, "AppData", "Local"), "sparwright", "cache");
  if (platform === "darwin") return join(home, "Library", "Caches", "sparwright");
  return join(usual && isAbsolute(usual) ? usual : join(home, ".cache"), "sparwright");
}

/** The store of this process's user; undefined where it is switched off, or the code that polars come from isn't named. */
export function userPolarStore(): PolarStore | undefined {
  const folder = cacheFolder(process.env, process.platform, homedir());
  return folder === undefined || typeof polarMethod === "undefined" ? undefined : polarStore(join(folder, "polars"), polarMethod);
}

/**
 * Keeps polars in a folder, one small file each, for polars of one `method`. Files of others count until they are the oldest.
 * A folder that can't be written keeps nothing; nothing here ever fails.
 */
export function polarStore(folder: string, method: string, limit = most): PolarStore {
  const pathOf = (key: string): string => join(folder, `${method}-${key}.json`);
  let written = 0;
  return {
    read: (key) => tried(() => {
      const path = pathOf(key);
      const stat = statSync(path, { throwIfNoEntry: false });
      return stat?.isFile() && stat.size <= largest ? readFileSync(path, "utf8") : undefined;
    }),
    write: (key, text) => tried(() => {
      mkdirSync(folder, { recursive: true });
      // Whoever reads meanwhile finds the whole file or none.
      const draft = join(folder, `${randomUUID()}.draft`);
      writeFileSync(draft, text);
      renameSync(draft, pathOf(key));
      if (written++ % round === 0) thinOut(folder, limit);
    }),
  };
}

function thinOut(folder: string, limit: number): void {
  const names = readdirSync(folder).filter((name) => /\.(json|draft)$/.test(name));
  if (names.length <= limit) return;
  const age = (path: string): number => statSync(path, { throwIfNoEntry: false })?.mtimeMs ?? 0;
  const oldest = names.map((name) => join(folder, name)).map((path) => ({ path, at: age(path) })).sort((a, b) => a.at - b.at);
  for (const { path } of oldest.slice(0, names.length - limit)) tried(() => unlinkSync(path));
}

function tried<T>(work: () => T): T | undefined {
  try {
    return work();
  } catch {
    return undefined;
  }
}
