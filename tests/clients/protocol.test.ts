import { readFileSync } from "node:fs";
import { join } from "node:path";
import { afterEach, expect, test, vi } from "vitest";
import type { StatusParams } from "../../shared/protocol";
import { type ClientOptions, LspClient, type RequestError } from "./lsp-client";
import { command, root, told, type Told } from "./server";
import { rangeOf } from "./views";

const uri = "file:///field/plover.airframe";
const text = readFileSync(join(root, "samples/plover.airframe"), "utf8");
const aft = { range: rangeOf(text, "(95 mm, 0 mm, -20 mm)"), text: "(395 mm, 0 mm, -20 mm)" };

// Each test starts a process, beside others on the same cores.
vi.setConfig({ testTimeout: 30_000 });

const started: LspClient[] = [];
afterEach(() => {
  for (const client of started.splice(0)) client.process.kill();
});

async function start(options: Omit<ClientOptions, "command"> = {}): Promise<LspClient> {
  const { client } = await LspClient.start({ command, ...options });
  started.push(client);
  return client;
}

/** Waits until the figures of that version are complete. */
const settled = (client: LspClient, version: number): Promise<StatusParams> =>
  client.notification<StatusParams>("sparwright/status", (each) => each.version === version && each.state !== "working");

test("a client that can nothing gets findings with their version, and is asked nothing", async () => {
  const client = await start();
  client.open(uri, text);
  await client.diagnostics(uri, 1);
  client.change(uri, 2, [aft]);
  const { diagnostics } = await client.diagnostics(uri, 2);
  expect(diagnostics.length).toBeGreaterThan(0);
  expect(client.asked).toEqual([]);
  expect(client.notifications.map((each) => each.method)).not.toContain("sparwright/status");
});

test("versions never go back, and the last one typed is answered", async () => {
  const client = await start({ initializationOptions: { status: true } });
  client.open(uri, text);
  for (let version = 2; version <= 40; version++) {
    client.change(uri, version, [{ range: { start: { line: 0, character: 0 }, end: { line: 0, character: 0 } }, text: "#" }]);
  }
  await settled(client, 40);
  const versions = client.published.map((each) => each.version ?? -1);
  expect(versions).toEqual([...versions].sort((a, b) => a - b));
  expect(versions.at(-1)).toBe(40);
});

test("a text come to by steps has the findings of the text opened whole", async () => {
  const client = await start({ initializationOptions: { status: true } });
  const top = { line: 0, character: 0 };
  client.open(uri, text);
  // Each change of one notification is of the text the one before it left.
  client.change(uri, 2, [aft, { range: { start: top, end: top }, text: "# 😀 ±\n\n" }]);
  client.change(uri, 3, [{ range: { start: { line: 1, character: 0 }, end: { line: 2, character: 0 } }, text: "" }]);
  await settled(client, 3);
  const whole = "file:///field/whole.airframe";
  client.open(whole, `# 😀 ±\n${text.replace("(95 mm, 0 mm, -20 mm)", aft.text)}`, 4);
  await settled(client, 4);
  const last = (of: string): readonly Told[] => told(client.published.filter((each) => each.uri === of).at(-1)?.diagnostics ?? []);
  expect(last(whole).length).toBeGreaterThan(0);
  expect(last(uri)).toEqual(last(whole));
});

test("a closed design leaves no findings behind", async () => {
  const client = await start();
  client.open(uri, text.replace("(95 mm, 0 mm, -20 mm)", aft.text));
  await client.diagnostics(uri, 1);
  client.close(uri);
  await client.until("empty findings", 5_000, () => client.published.at(-1)?.diagnostics.length === 0 || undefined);
});

test("settings are asked for by document, and a check can be turned off", async () => {
  let severities: Record<string, string> = {};
  const scopes: unknown[] = [];
  const client = await start({
    capabilities: { workspace: { configuration: true, didChangeConfiguration: { dynamicRegistration: true } } },
    initializationOptions: { status: true },
    answers: {
      "workspace/configuration": (params) => (params as { items: { scopeUri?: string }[] }).items.map((item) => {
        scopes.push(item.scopeUri);
        return { units: "metric", severities, loading: "" };
      }),
      "client/registerCapability": () => null,
    },
  });
  client.open(uri, text.replace("(95 mm, 0 mm, -20 mm)", aft.text));
  await settled(client, 1);
  const codes = (): readonly unknown[] => client.published.at(-1)?.diagnostics.map((each) => each.code) ?? [];
  expect(scopes).toContain(uri);
  expect(codes()).toContain("cg_aft_of_limit");
  severities = { cg_aft_of_limit: "off" };
  client.notify("workspace/didChangeConfiguration", { settings: null });
  await client.until("the check gone", 10_000, () => !codes().includes("cg_aft_of_limit") || undefined);
});

test("a request called off is answered all the same", async () => {
  const client = await start();
  client.open(uri, text);
  const { result, cancel } = client.cancellable("textDocument/hover", { textDocument: { uri }, position: rangeOf(text, "wing").start });
  cancel();
  const requestCancelled = -32800;
  const answer = await result.catch((error: unknown) => error);
  if (answer instanceof Error) expect((answer as RequestError).code).toBe(requestCancelled);
  else expect(answer).not.toBeUndefined();
});

test("nonsense gets an error or nothing, and the server lives on", async () => {
  const client = await start();
  client.open(uri, text);
  await expect(client.request("sparwright/noSuchThing", {})).rejects.toMatchObject({ code: -32601 });
  const far = { textDocument: { uri }, position: { line: 99_999, character: 5 } };
  expect(await client.request("textDocument/hover", far)).toBeNull();
  const unknown = { textDocument: { uri: "file:///field/never-opened.airframe" }, position: { line: 0, character: 0 } };
  expect(await client.request("textDocument/hover", unknown)).toBeNull();
  client.change(uri, 2, [{ text: "\u0000 { { \" ) = .. ±" }]);
  expect((await client.diagnostics(uri, 2)).diagnostics.length).toBeGreaterThan(0);
});

test("the process ends with 0 after shutdown", async () => {
  const client = await start();
  expect(await client.stop()).toBe(0);
  expect(client.errors).toBe("");
});
