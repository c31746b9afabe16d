// What every script does first on a bare clone. Node's own modules only: nothing else is there yet.
import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";
import { fileURLToPath } from "node:url";

export const root = fileURLToPath(new URL("..", import.meta.url));

/** Runs a program in the project's root and gives its exit code. */
export function run(program, args, options = {}) {
  const result = spawnSync(program, args, { cwd: root, stdio: "inherit", ...options });
  if (result.error) throw result.error;
  return result.status ?? 1;
}

/** Runs a Node script of an installed package, `node_modules/vitest/vitest.mjs`. */
export const runNode = (script, args, options) => run(process.execPath, [script, ...args], options);

/** Installs the packages of the lock file where they are missing; ends the process if that fails. */
export function ensureInstalled() {
  if (Number(process.versions.node.split(".")[0]) < 20) {
    console.error(`Sparwright needs Node 20 or newer; this is ${process.version}.`);
    process.exit(1);
  }
  if (existsSync(new URL("../node_modules/.package-lock.json", import.meta.url))) return;
  console.log("Installing packages (once) …");
  // npm names its own script when it runs this one; that works on every system.
  const npm = process.env.npm_execpath;
  const code = npm ? runNode(npm, ["ci"]) : run("npm", ["ci"], { shell: process.platform === "win32" });
  if (code !== 0) process.exit(code);
}
