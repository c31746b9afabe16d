import type { PolarStore } from "../compute/section-air/polar-shelf";
import { userPolarStore } from "../polar-store";

/** What the command line needs of the process around it. */
export interface Io {
  out(text: string): void;
  err(text: string): void;
  stdin(): Promise<string>;
  /** The folder that file names are seen from. */
  readonly folder: string;
  readonly colour: boolean;
  /** Shows a line that the next one replaces, undefined takes it away; absent where nobody would see it. */
  readonly progress?: (line: string | undefined) => void;
  /** Where section polars are kept from one run to the next, if anywhere. */
  readonly polars?: PolarStore;
}

/** Ends a command with a message on the error stream; 2: bad use, or a file that can't be read. */
export class Failure extends Error {
  constructor(message: string, readonly code: 1 | 2 = 2) {
    super(message);
  }
}

/** The process itself. Colour only on a terminal whose user has not said no (no-color.org). */
export function processIo(): Io {
  const ignoreClosedPipe = (error: NodeJS.ErrnoException): void => {
    if (error.code !== "EPIPE") throw error;
  };
  process.stdout.on("error", ignoreClosedPipe);
  process.stderr.on("error", ignoreClosedPipe);
  return {
    out: (text) => void process.stdout.write(text),
    err: (text) => void process.stderr.write(text),
    stdin: async () => {
      const chunks: Buffer[] = [];
      for await (const chunk of process.stdin) chunks.push(chunk as Buffer);
      return Buffer.concat(chunks).toString("utf8");
    },
    folder: process.cwd(),
    colour: process.stdout.isTTY === true && !process.env.NO_COLOR && process.env.TERM !== "dumb",
    progress: process.stderr.isTTY === true && process.env.TERM !== "dumb" ? (line = "") => void process.stderr.write(`\r\u001b[K${line}`) : undefined,
    polars: userPolarStore(),
  };
}
