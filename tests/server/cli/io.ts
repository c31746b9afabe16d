import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { run } from "../../../server/cli/run";
import { userPolarStore } from "../../../server/polar-store";

export interface Ran {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

/** A folder of its own with these files, for the command line to run in. */
export class Folder {
  readonly path = mkdtempSync(join(tmpdir(), "sparwright-cli-"));

  constructor(files: Readonly<Record<string, string>> = {}) {
    for (const [name, text] of Object.entries(files)) writeFileSync(join(this.path, name), text);
  }

  async run(argv: readonly string[], { stdin = "", colour = false } = {}): Promise<Ran> {
    let out = "";
    let err = "";
    const code = await run(argv, {
      out: (text) => (out += text), err: (text) => (err += text), stdin: () => Promise.resolve(stdin), folder: this.path, colour,
      polars: userPolarStore(),
    });
    return { code, out, err };
  }

  remove(): void {
    rmSync(this.path, { recursive: true, force: true });
  }
}
