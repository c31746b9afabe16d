import { writeFileSync } from "node:fs";
import { resolve } from "node:path";
import { format } from "../../grammar/printer/format";
import { Failure, type Io } from "./io";
import { readText } from "./open";

/**
 * Writes designs in the usual layout, in place; `-` from standard input to standard output. With `check` nothing is
 * written, and 1 is given if any would change.
 */
export async function formatFiles(files: readonly string[], check: boolean, io: Io): Promise<number> {
  let changed = 0;
  for (const name of files) {
    const text = await readText(name, io);
    const formatted = format(text);
    if (name === "-" && !check) io.out(formatted);
    if (formatted === text) continue;
    changed++;
    if (check) io.out(`${name} would change\n`);
    else if (name !== "-") write(name, formatted, io);
  }
  return check && changed > 0 ? 1 : 0;
}

function write(name: string, text: string, io: Io): void {
  try {
    writeFileSync(resolve(io.folder, name), text);
  } catch (error) {
    throw new Failure(`${name} can't be written: ${error instanceof Error ? error.message : String(error)}`);
  }
  io.out(`${name} formatted\n`);
}
