import { join } from "node:path";
import { LspClient } from "../../tests/clients/lsp-client";
import { rangeOf } from "../../tests/clients/views";
import { fetchWorkbench } from "../../tests/editor/fetch";
import { memory, spread, type Spread } from "./measure";

export interface JsonTimes {
  readonly lines: number;
  readonly cold: number;
  /** From the keystroke to the diagnostics, asked for at once: without the half second its pushed ones wait. */
  readonly edit: Spread;
  readonly memory: number | undefined;
}

const uri = "file:///bench.json";

/** Times VS Code's own JSON server, out of the workbench the editor tests use, on a document of as many lines. */
export async function measureJson(lines: number, keystrokes: number): Promise<JsonTimes> {
  const main = join(fetchWorkbench(), "extensions/json-language-features/server/dist/node/jsonServerMain.js");
  const text = generateJson(lines);
  const started = performance.now();
  const { client } = await LspClient.start({
    command: [process.execPath, main, "--stdio"],
    capabilities: { textDocument: { diagnostic: {} } },
    initializationOptions: { provideFormatter: true },
  });
  client.notify("textDocument/didOpen", { textDocument: { uri, languageId: "json", version: 1, text } });
  const pull = (): Promise<unknown> => client.request("textDocument/diagnostic", { textDocument: { uri } });
  await pull();
  const cold = performance.now() - started;
  const range = rangeOf(text, "95.0");
  const times: number[] = [];
  for (let n = 0; n < keystrokes; n++) {
    const at = performance.now();
    client.change(uri, n + 2, [{ range, text: `${90 + (n % 9)}.5` }]);
    await pull();
    times.push(performance.now() - at);
  }
  const used = memory(client.process.pid);
  client.process.kill();
  return { lines, cold, edit: spread(times), memory: used };
}

/** An array of objects of the same lines as a design's items. */
function generateJson(lines: number): string {
  const out = ["[", '  { "name": "pack", "at": [95.0, 0, -20] }'];
  for (let n = 1; out.length + 6 < lines; n++) {
    out[out.length - 1] += ",";
    out.push("  {", `    "name": "label_${n}",`, '    "weight": 0.3,', `    "at": [${100 + n}, 12, -8],`, '    "size": [12, 8, 2]', "  }");
  }
  while (out.length < lines - 1) out.push("");
  return `${[...out, "]"].join("\n")}\n`;
}
