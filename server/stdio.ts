import { createConnection } from "vscode-languageserver/node";
import { serve } from "./connection";
import { nodeFiles } from "./node-files";
import { userPolarStore } from "./polar-store";

/** Serves the client at the other end of the process's standard streams. */
export function serveStdio(): void {
  serve(createConnection(process.stdin, process.stdout), {
    now: () => performance.now(),
    later: (work) => setImmediate(work),
    files: nodeFiles,
    polars: userPolarStore(),
  });
}
