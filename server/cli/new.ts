import { writeFileSync } from "node:fs";
import { basename, relative, resolve } from "node:path";
import { Failure, type Io } from "./io";
import { starter } from "./starter";

/** Writes a design to begin from; never over a file that is there. */
export function newDesign(name: string, io: Io): number {
  const path = resolve(io.folder, name.endsWith(".airframe") ? name : `${name}.airframe`);
  const shown = relative(io.folder, path);
  try {
    writeFileSync(path, starter(titleOf(path)), { flag: "wx" });
  } catch (error) {
    const { code, message } = error as NodeJS.ErrnoException;
    if (code === "EEXIST") throw new Failure(`${shown} is there already; nothing was written`);
    throw new Failure(code === "ENOENT" ? `there is no folder for ${shown}` : `${shown} can't be written: ${message}`);
  }
  io.out(`Wrote ${shown}.\n`);
  return 0;
}

/** `old-goose` of `old-goose.airframe`, as people write it: "Old goose". */
function titleOf(path: string): string {
  const words = basename(path, ".airframe").replace(/[-_]+/g, " ").trim();
  return words ? words[0].toUpperCase() + words.slice(1) : "New design";
}
