import { createConnection } from "vscode-languageserver/node";
import { reynoldsGrid } from "../../../server/compute/section-air/reynolds-grid";
import { serve } from "../../../server/connection";
import { createAirframeService } from "../../../server/service";
import { flown } from "./flown";

/** A language server with a figure that rests on nine polars, and no store. */
serve(createConnection(process.stdin, process.stdout), { now: () => performance.now(), later: (work) => setImmediate(work) },
  (host) => createAirframeService(host, flown(reynoldsGrid)));
