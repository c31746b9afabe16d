import { execFileSync } from "node:child_process";
import { existsSync, mkdirSync, readdirSync, renameSync, rmSync, symlinkSync } from "node:fs";
import { delimiter, join, resolve } from "node:path";

/** The last release whose VS Code (1.100.3) runs on Node 20. */
const release = "4.100.3";

export const root = resolve(import.meta.dirname, "../..");

/** The folder of a whole VS Code web build with its Node extension host; fetched once, about 145 MB, into `.cache/`. */
export function fetchWorkbench(): string {
  const cache = join(root, ".cache");
  const ready = join(cache, `vscode-${release}`);
  if (existsSync(ready)) return ready;
  mkdirSync(cache, { recursive: true });
  const archive = join(cache, `code-server-${release}.tgz`);
  if (!existsSync(archive)) npm(["pack", `code-server@${release}`, "--pack-destination", cache], cache);
  const unpacked = join(cache, "unpacked");
  rmSync(unpacked, { recursive: true, force: true });
  mkdirSync(unpacked);
  execFileSync("tar", ["xzf", archive, "-C", unpacked, "package/lib/vscode"]);
  const folder = join(unpacked, "package/lib/vscode");
  for (const file of readdirSync(folder, { recursive: true, encoding: "utf8" })) {
    if (file.endsWith(".map")) rmSync(join(folder, file));
  }
  npm(["install", "--omit=dev", "--ignore-scripts"], folder);
  symlinkSync("node_modules", join(folder, "node_modules.asar"));
  const search = join(folder, "node_modules/@vscode/ripgrep/bin");
  mkdirSync(search, { recursive: true });
  symlinkSync(find("rg"), join(search, "rg"));
  renameSync(folder, ready);
  rmSync(unpacked, { recursive: true });
  return ready;
}

function npm(args: readonly string[], cwd: string): void {
  execFileSync("npm", [...args], { cwd, stdio: ["ignore", "ignore", "inherit"] });
}

/** Where a program is installed. */
export function find(program: string): string {
  const path = (process.env.PATH ?? "").split(delimiter).map((folder) => join(folder, program)).find(existsSync);
  if (!path) throw new Error(`The editor tests need ${program} on the PATH.`);
  return path;
}
