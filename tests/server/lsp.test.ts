import * as fc from "fast-check";
import { rmSync } from "node:fs";
import { dirname } from "node:path";
import { afterAll, afterEach, beforeAll, expect, test, vi } from "vitest";
import { TextDocument } from "vscode-languageserver-textdocument";
import type { CodeAction, CompletionItem, WorkspaceEdit } from "vscode-languageserver";
import { type FileText, figuresTextRequest, type StatusParams } from "../../shared/protocol";
import { type ClientOptions, LspClient, type Range } from "../clients/lsp-client";
import { bundle } from "./bundle";
import { glider } from "./editor/designs";

// Each test starts a process, beside others on the same cores.
vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });

const uri = "file:///field/glider.airframe";
let server = "";
const started: LspClient[] = [];

beforeAll(() => {
  server = bundle("server/main.ts");
});
afterEach(() => {
  for (const client of started.splice(0)) client.process.kill();
});
afterAll(() => rmSync(dirname(server), { recursive: true, force: true }));

async function start(options: Omit<ClientOptions, "command"> = {}): Promise<LspClient> {
  const { client } = await LspClient.start({ command: [process.execPath, server, "--stdio"], ...options });
  started.push(client);
  return client;
}

const withStatus = { initializationOptions: { status: true } };

const settled = (client: LspClient, version: number, of = uri): Promise<StatusParams> =>
  client.notification<StatusParams>("sparwright/status", (each) => each.uri === of && each.version === version && each.state !== "working");

const codes = (client: LspClient, of = uri): unknown[] =>
  client.published.filter((each) => each.uri === of).at(-1)?.diagnostics.map((each) => each.code) ?? [];

function rangeIn(text: string, part: string): Range {
  const document = TextDocument.create(uri, "airframe", 1, text);
  const start = text.indexOf(part);
  return { start: document.positionAt(start), end: document.positionAt(start + part.length) };
}

test("each publication carries the version of its text", async () => {
  const client = await start(withStatus);
  client.open(uri, glider, 7);
  await settled(client, 7);
  client.change(uri, 8, [{ range: rangeIn(glider, "12 g"), text: "12 mm" }]);
  await settled(client, 8);
  expect(client.published.map((each) => each.version)).toEqual(client.published.map((each) => each.version).sort());
  expect(client.published.at(-1)?.version).toBe(8);
  expect(codes(client)).toContain("wrong_dimension");
});

test("the first wave comes before the slow work is done, and both are of one text", async () => {
  // Surfaces in plenty: several hundred milliseconds of slow work on any machine.
  const many = Array.from({ length: 6 }, (_, i) => glider.slice(glider.indexOf("wing main"), glider.indexOf("tailplane"))
    .replace("wing main", `wing w${i}`).replace("30 mm)", `${30 + 40 * i} mm)`)).join("");
  const client = await start(withStatus);
  client.open(uri, `${glider}${many}item odd { weight = 3 mm ; at = (0 mm, 0 mm, 0 mm) }\n`);
  await settled(client, 1);
  const states = client.notifications.filter((each) => each.method === "sparwright/status").map((each) => (each.params as StatusParams).state);
  expect(states).toEqual(["working", "error"]);
  const [first, second] = client.published;
  expect(first.diagnostics.map((each) => each.code)).toContain("wrong_dimension");
  expect([first.version, second.version]).toEqual([1, 1]);
});

test("passes over texts that are no longer there are dropped, and the last one is answered", async () => {
  const client = await start(withStatus);
  client.open(uri, glider);
  for (let version = 2; version <= 80; version++) {
    client.change(uri, version, [{ range: rangeIn(glider, "wing main"), text: "wing main" }]);
  }
  await settled(client, 80);
  expect(client.published.at(-1)?.version).toBe(80);
  expect(client.published.length).toBeLessThan(20);
});

test("a text come to by any edits has the findings of the text opened whole", async () => {
  const client = await start(withStatus);
  const piece = fc.constantFrom("}", "{", "(", "= 3", " mm", "wing x {", "\n", "# ", "\"", "😀", "± 4 g", "", "", "let arm = 2 m\n", "weight = 3 kg\n", ";");
  const edit = fc.record({ at: fc.nat({ max: glider.length }), length: fc.nat({ max: 30 }), text: piece });
  let run = 0;
  await fc.assert(fc.asyncProperty(fc.array(edit, { minLength: 1, maxLength: 8 }), async (edits) => {
    const [typed, whole] = [`file:///field/typed${++run}.airframe`, `file:///field/whole${run}.airframe`];
    const document = TextDocument.create(typed, "airframe", 1, glider);
    client.open(typed, glider);
    edits.forEach(({ at, length, text }, i) => {
      const range = { start: document.positionAt(at), end: document.positionAt(at + length) };
      client.change(typed, i + 2, [{ range, text }]);
      TextDocument.update(document, [{ range, text }], i + 2);
    });
    await settled(client, edits.length + 1, typed);
    client.open(whole, document.getText());
    await settled(client, 1, whole);
    const last = (of: string) => client.published.filter((each) => each.uri === of).at(-1)?.diagnostics;
    expect(last(typed)).toEqual(last(whole));
    client.close(typed);
    client.close(whole);
  }), { numRuns: 25 });
});

test("a request that is called off while figures are worked out ends as called off", async () => {
  const client = await start();
  client.open(uri, glider);
  const { result, cancel } = client.cancellable<FileText | null>(figuresTextRequest, { uri });
  cancel();
  const answer = await result.catch((error: { code: number }) => error.code);
  if (typeof answer === "number") expect(answer).toBe(-32800);
  else expect(answer?.text).toContain("mass.total");
});

test("the text of figures is of the loading and in the units that were asked for", async () => {
  const client = await start({ initializationOptions: { status: true, settings: { loading: "filming", units: "imperial" } } });
  client.open(uri, glider);
  const answer = await client.request<FileText>(figuresTextRequest, { uri });
  expect(answer.text).toContain("Loading filming");
  expect(answer.text).not.toContain("Loading bare");
  expect(answer.text).toMatch(/mass\.total +20\.00 oz/);
  expect(answer.text.trimEnd().split("\n").at(-1)).toContain("Estimates for model aircraft");
  expect((await settled(client, 1)).loading).toBe("filming");
});

test("settings told, not asked for, change what is shown", async () => {
  const client = await start(withStatus);
  client.open(uri, "let arm = 1 m\n");
  await settled(client, 1);
  expect(codes(client)).toContain("unused_let");
  client.notify("workspace/didChangeConfiguration", { settings: { sparwright: { severities: { unused_let: "off" } } } });
  await client.until("the finding gone", 10_000, () => !codes(client).includes("unused_let") || undefined);
});

const user = 'use "part.airframe" as part\nservo a from part.s { at = (0 mm, 0 mm, 0 mm) }\n';
const part = "servo s { weight = 9 g ; torque = 1 kgf*cm ; at = (0 mm, 0 mm, 0 mm) }\n";

test("used files are read through a client that offers it, and nothing is said too early", async () => {
  const client = await start({
    initializationOptions: { status: true, readFile: true },
    answers: { "sparwright/readFile": (params) => ((params as { uri: string }).uri === "file:///field/part.airframe" ? { text: part } : null) },
  });
  client.open(uri, user);
  expect((await settled(client, 1)).mass?.text).toBe("9 g");
  expect(client.published.flatMap((each) => each.diagnostics).map((each) => each.code)).not.toContain("file_not_found");
});

test("a used file that turns up later mends what rests on it", async () => {
  let there = false;
  const client = await start({
    initializationOptions: { status: true, readFile: true },
    answers: { "sparwright/readFile": () => (there ? { text: part } : null) },
  });
  client.open(uri, user);
  await settled(client, 1);
  expect(codes(client)).toContain("file_not_found");
  there = true;
  client.notify("workspace/didChangeWatchedFiles", { changes: [{ uri: "file:///field/part.airframe", type: 1 }] });
  await client.until("the file found", 10_000, () => !codes(client).includes("file_not_found") || undefined);
});

test("a change of an open file is seen in those that use it", async () => {
  const client = await start(withStatus);
  const own = "file:///field/part.airframe";
  client.open(own, part);
  client.open(uri, user);
  await settled(client, 1);
  client.change(own, 2, [{ range: rangeIn(part, "9 g"), text: "19 g" }]);
  await client.notification<StatusParams>("sparwright/status", (each) => each.uri === uri && each.mass?.text === "19 g");
});

test("a client that takes no Markdown, no snippets and no levels gets none", async () => {
  const client = await start();
  client.open(uri, glider);
  const at = { textDocument: { uri }, position: rangeIn(glider, "main").start };
  expect(await client.request("textDocument/hover", at)).toMatchObject({ contents: { kind: "plaintext" } });
  const end = { textDocument: { uri }, position: { line: 999, character: 0 } };
  const items = await client.request<CompletionItem[]>("textDocument/completion", end);
  expect(items.every((item) => item.insertTextFormat === 1)).toBe(true);
  expect(await client.request("textDocument/documentSymbol", at)).toContainEqual(expect.objectContaining({ name: "main", location: expect.anything() as unknown }));
});

test("a client that takes more gets more, and edits are stamped with their version", async () => {
  const client = await start({
    capabilities: {
      workspace: { workspaceEdit: { documentChanges: true } },
      textDocument: {
        hover: { contentFormat: ["markdown"] },
        completion: { completionItem: { snippetSupport: true, documentationFormat: ["markdown"] } },
        documentSymbol: { hierarchicalDocumentSymbolSupport: true },
      },
    },
  });
  const text = `${glider}item odd { weight = 3 ; at = (0 mm, 0 mm, 0 mm) }\n`;
  client.open(uri, text, 5);
  const at = { textDocument: { uri }, position: rangeIn(glider, "main").start };
  expect(await client.request("textDocument/hover", at)).toMatchObject({ contents: { kind: "markdown" } });
  const items = await client.request<CompletionItem[]>("textDocument/completion", { textDocument: { uri }, position: { line: 999, character: 0 } });
  const wing = items.find((item) => item.label === "wing")!;
  expect(wing.insertTextFormat).toBe(2);
  expect(wing.documentation).toBeUndefined();
  expect(await client.request("completionItem/resolve", wing)).toMatchObject({ documentation: { kind: "markdown" } });
  const edit = await client.request<WorkspaceEdit>("textDocument/rename", { ...at, newName: "left_wing" });
  expect(edit.documentChanges).toMatchObject([{ textDocument: { uri, version: 5 } }]);
  await expect(client.request("textDocument/rename", { ...at, newName: "stab" })).rejects.toThrow('there is a "stab" already');
  const actions = await client.request<CodeAction[]>("textDocument/codeAction", { textDocument: { uri }, range: rangeIn(text, "= 3 ;"), context: { diagnostics: [] } });
  expect(actions.map((action) => action.title)).toContain("Write 3 g");
  expect(actions[0].edit?.documentChanges).toMatchObject([{ textDocument: { version: 5 } }]);
});

test("every feature answers a text cut anywhere, and the log stays empty", async () => {
  const client = await start();
  client.open(uri, glider);
  const all = { textDocument: { uri }, range: { start: { line: 0, character: 0 }, end: { line: 999, character: 0 } }, context: { diagnostics: [], includeDeclaration: true } };
  const methods = ["hover", "completion", "definition", "references", "documentHighlight", "documentSymbol", "foldingRange", "documentLink", "codeAction", "inlayHint",
    "prepareRename", "formatting", "rangeFormatting"];
  for (let end = 0, version = 2; end < glider.length; end += 97, version++) {
    client.change(uri, version, [{ text: glider.slice(0, end) }]);
    const position = TextDocument.create(uri, "airframe", 1, glider.slice(0, end)).positionAt(end);
    const options = { tabSize: 2, insertSpaces: true };
    for (const method of methods) await client.request(`textDocument/${method}`, { ...all, position, options });
    await client.request("textDocument/semanticTokens/full", { textDocument: { uri } });
  }
  expect(client.notifications.filter((each) => each.method === "window/logMessage")).toEqual([]);
  expect(client.errors).toBe("");
});
