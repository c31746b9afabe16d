import { rmSync } from "node:fs";
import { dirname } from "node:path";
import { afterAll, afterEach, beforeAll, expect, test, vi } from "vitest";
import type { FileText, StatusParams } from "../../../shared/protocol";
import { figuresTextRequest } from "../../../shared/protocol";
import { LspClient } from "../../clients/lsp-client";
import { bundle } from "../bundle";

// Starts processes that work polars out, beside others on the same cores.
vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });

const uri = "file:///field/dunlin.airframe";
const design = `airframe "Dunlin" { class = sport }
wing main { at = (200 mm, 0 mm, 0 mm) ; foil = naca("2412") ; weight = 120 g ; panel half { span = 500 mm ; chord = 200 mm } }
`;

let server = "";
const started: LspClient[] = [];
beforeAll(() => {
  server = bundle("tests/server/polars/server.ts");
});
afterEach(() => {
  for (const client of started.splice(0)) client.process.kill();
});
afterAll(() => rmSync(dirname(server), { recursive: true, force: true }));

async function start(capabilities: object): Promise<LspClient> {
  const { client } = await LspClient.start({
    command: [process.execPath, server, "--stdio"], capabilities, initializationOptions: { status: true },
    answers: { "window/workDoneProgress/create": () => null },
  });
  started.push(client);
  return client;
}

interface Progress {
  readonly token: string;
  readonly value: { readonly kind: "begin" | "report" | "end"; readonly title?: string; readonly message?: string; readonly cancellable?: boolean };
}

const progress = (client: LspClient): readonly Progress[] =>
  client.notifications.filter(({ method }) => method === "$/progress").map(({ params }) => params as Progress);

const settled = (client: LspClient, version: number): Promise<StatusParams> =>
  client.notification<StatusParams>("sparwright/status", (each) => each.version === version && each.state !== "working");

test("polars that take long are told of, and may be called off; the text says so, and stays answered", async () => {
  const client = await start({ window: { workDoneProgress: true } });
  client.open(uri, design);
  const { token, value } = await client.notification<Progress>("$/progress");
  expect(value).toMatchObject({ kind: "begin", title: "Section polars", cancellable: true });
  expect(value.message).toMatch(/^naca 2412 at [0-9,]+ \(\d of 9\)$/);
  // All but what rests on polars is there; text and features are answered between the steps.
  const hover = await client.request<{ contents: { value: string } }>("textDocument/hover", { textDocument: { uri }, position: { line: 1, character: 6 } });
  expect(hover.contents.value).toContain("main");
  client.notify("window/workDoneProgress/cancel", { token });
  expect((await settled(client, 1)).state).toBe("ok");
  await client.until("the end", 10_000, () => progress(client).find((each) => each.value.kind === "end"));
  expect(client.published.at(-1)?.diagnostics.map(({ code }) => code)).toContain("called_off");
  const { text } = await client.request<FileText>(figuresTextRequest, { uri });
  expect(text).toContain("stability.neutral_point");
  expect(text).toContain("was called off");
  // A section without polars needs none.
  client.change(uri, 2, [{ text: design.replace('naca("2412")', "flat(3 %)") }]);
  await settled(client, 2);
  expect(client.published.at(-1)?.diagnostics.map(({ code }) => code)).not.toContain("called_off");
  expect(progress(client).every((each) => each.token === token)).toBe(true);
  expect(client.errors).toBe("");
});

test("a client that shows no progress is asked for none", async () => {
  const client = await start({});
  client.open(uri, design);
  await client.notification<StatusParams>("sparwright/status", ({ version }) => version === 1);
  await new Promise((done) => setTimeout(done, 2000));
  expect([client.asked, progress(client)]).toEqual([[], []]);
});
