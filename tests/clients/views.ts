import { spawn } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import type { StatusParams } from "../../shared/protocol";
import { LspClient, type Position, type Range } from "./lsp-client";
import { command, sorted, told, type Told } from "./server";

/** One walk through a design that every client takes: open, edit, hover, format. */
export interface Walk {
  readonly file: string;
  readonly edit: { readonly from: string; readonly to: string };
  readonly hover: Position;
}

/** What a client saw on the way. */
export interface View {
  readonly opened: readonly Told[];
  readonly edited: readonly Told[];
  readonly hover: string;
  readonly formatted: string;
}

/** Runs another editor with the walk in SPARWRIGHT_REQUEST; it writes its view to the file named there. */
export async function viewOf(program: string, args: readonly string[], walk: Walk): Promise<View> {
  const folder = mkdtempSync(join(tmpdir(), "sparwright-client-"));
  try {
    const file = join(folder, "design.airframe");
    const out = join(folder, "seen.json");
    writeFileSync(file, readFileSync(walk.file));
    const request = { ...walk, file, out, root: folder, command };
    await finished(program, args.map((arg) => (arg === "FILE" ? file : arg)), {
      ...process.env, HOME: folder, SPARWRIGHT_REQUEST: JSON.stringify(request),
    });
    const seen = JSON.parse(readFileSync(out, "utf8")) as View & { failed?: string };
    if (seen.failed) throw new Error(`${program}: ${seen.failed}`);
    // Lua and Lisp write an empty list as an empty object or nothing.
    const list = (value: unknown): readonly Told[] => (Array.isArray(value) ? sorted(value as Told[]) : []);
    return { ...seen, opened: list(seen.opened), edited: list(seen.edited) };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function finished(program: string, args: readonly string[], env: NodeJS.ProcessEnv): Promise<void> {
  return new Promise((done, fail) => {
    const child = spawn(program, args, { env, stdio: ["ignore", "pipe", "pipe"] });
    let output = "";
    child.stdout.on("data", (chunk: Buffer) => (output += chunk.toString()));
    child.stderr.on("data", (chunk: Buffer) => (output += chunk.toString()));
    const timer = setTimeout(() => child.kill("SIGKILL"), 60_000);
    child.once("error", fail);
    child.once("exit", (code) => {
      clearTimeout(timer);
      if (code === 0) done();
      else fail(new Error(`${program} ended with code ${code}\n${output}`));
    });
  });
}

/** The same walk by our own client, with what the other editor says it can. */
export async function ownView(walk: Walk, capabilities: object = {}): Promise<View> {
  const folder = mkdtempSync(join(tmpdir(), "sparwright-client-"));
  const uri = pathToFileURL(join(folder, "design.airframe")).href;
  const text = readFileSync(walk.file, "utf8");
  const { client } = await LspClient.start({
    command, capabilities, rootUri: pathToFileURL(folder).href, initializationOptions: { status: true },
  });
  const settled = async (version: number): Promise<readonly Told[]> => {
    await client.notification<StatusParams>("sparwright/status", (each) => each.version === version && each.state !== "working");
    return told(client.published.filter((each) => each.uri === uri).at(-1)?.diagnostics ?? []);
  };
  client.open(uri, text);
  const opened = await settled(1);
  client.change(uri, 2, [{ range: rangeOf(text, walk.edit.from), text: walk.edit.to }]);
  const edited = await settled(2);
  const hover = await client.request<{ contents: { value: string } } | null>("textDocument/hover", {
    textDocument: { uri }, position: walk.hover,
  });
  const edits = await client.request<{ range: Range; newText: string }[] | null>("textDocument/formatting", {
    textDocument: { uri }, options: { tabSize: 2, insertSpaces: true },
  });
  await client.stop();
  rmSync(folder, { recursive: true });
  return { opened, edited, hover: hover?.contents.value ?? "", formatted: applied(text.replace(walk.edit.from, walk.edit.to), edits ?? []) };
}

/** Where the first `part` of the text stands. */
export function rangeOf(text: string, part: string): Range {
  const start = text.indexOf(part);
  if (start < 0) throw new Error(`no "${part}" in the text`);
  return { start: positionAt(text, start), end: positionAt(text, start + part.length) };
}

export function positionAt(text: string, offset: number): Position {
  const before = text.slice(0, offset).split("\n");
  return { line: before.length - 1, character: before.at(-1)!.length };
}

/** The text after edits of it, none of which overlap. */
export function applied(text: string, edits: readonly { readonly range: Range; readonly newText: string }[]): string {
  const lines = text.split("\n");
  const starts = lines.map((_, i) => lines.slice(0, i).reduce((sum, line) => sum + line.length + 1, 0));
  const offset = ({ line, character }: Position): number =>
    line >= lines.length ? text.length : Math.min(starts[line] + character, starts[line] + lines[line].length);
  return [...edits]
    .map(({ range, newText }) => ({ start: offset(range.start), end: offset(range.end), newText }))
    .sort((a, b) => b.start - a.start)
    .reduce((out, edit) => out.slice(0, edit.start) + edit.newText + out.slice(edit.end), text);
}
