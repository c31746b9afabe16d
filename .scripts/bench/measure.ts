import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import type { StatusParams } from "../../shared/protocol";
import { LspClient } from "../../tests/clients/lsp-client";
import { command, root } from "../../tests/clients/server";
import { rangeOf } from "../../tests/clients/views";

export interface Spread {
  readonly p50: number;
  readonly p95: number;
}

/** Of the times in ms, by the nearest rank. */
export function spread(times: readonly number[]): Spread {
  const sorted = [...times].sort((a, b) => a - b);
  const rank = (share: number): number => sorted[Math.max(0, Math.ceil(share * sorted.length) - 1)] ?? NaN;
  return { p50: rank(0.5), p95: rank(0.95) };
}

/** Resident memory of a process in MB; undefined where the system doesn't tell this way. */
export function memory(pid: number | undefined): number | undefined {
  try {
    const line = /VmRSS:\s+(\d+) kB/.exec(readFileSync(`/proc/${pid}/status`, "utf8"));
    return line ? Number(line[1]) / 1024 : undefined;
  } catch {
    return undefined;
  }
}

/** A place within one line whose words are swapped for others again and again, as typing does. */
export interface Edit {
  readonly name: string;
  readonly from: string;
  /** What stands there after the n-th keystroke. */
  to(n: number): string;
}

export interface EditTimes {
  readonly name: string;
  /** From the keystroke to the first diagnostics of that text, and to its complete figures. */
  readonly first: Spread;
  readonly last: Spread;
}

export interface DesignTimes {
  readonly lines: number;
  /** From starting the process to the complete figures of the opened design. */
  readonly coldFirst: number;
  readonly coldLast: number;
  /** The same where no section polar is known yet; all other times are with polars remembered. */
  readonly unknownLast: number;
  readonly edits: readonly EditTimes[];
  /** From the last of 30 keystrokes, 10 ms apart, to its complete figures. */
  readonly burst: number;
  readonly memory: number | undefined;
  /** What stands in the text that should not, when all is done: the design must be sound for its times to mean anything. */
  readonly errors: readonly string[];
}

const uri = pathToFileURL(`${root}/bench.airframe`).href;
const limit = 300_000;

/** Starts the server and opens the design. */
async function start(text: string): Promise<{ readonly client: LspClient; readonly first: number; readonly last: number }> {
  const started = performance.now();
  const { client } = await LspClient.start({ command, rootUri: pathToFileURL(root).href, initializationOptions: { status: true } });
  client.open(uri, text);
  return { client, ...(await waves(client, 1, started)) };
}

/** Times the server over its standard streams on one design: once without any polar known, then with all that it took. */
export async function measureDesign(text: string, edits: readonly Edit[], keystrokes: number): Promise<DesignTimes> {
  const cache = mkdtempSync(join(tmpdir(), "sparwright-bench-"));
  process.env.SPARWRIGHT_CACHE = cache;
  try {
    const unknown = await start(text);
    await unknown.client.stop();
    return await measureKnown(text, edits, keystrokes, unknown.last);
  } finally {
    rmSync(cache, { recursive: true, force: true });
  }
}

async function measureKnown(text: string, edits: readonly Edit[], keystrokes: number, unknownLast: number): Promise<DesignTimes> {
  const { client, ...cold } = await start(text);
  let version = 1;
  // Each edit stands on a line of its own, so only its own end moves.
  const ranges = edits.map((edit) => rangeOf(text, edit.from));
  const type = (edit: number, n: number): number => {
    const { start } = ranges[edit];
    const next = edits[edit].to(n);
    version++;
    client.change(uri, version, [{ range: ranges[edit], text: next }]);
    ranges[edit] = { start, end: { line: start.line, character: start.character + next.length } };
    return performance.now();
  };

  const times: EditTimes[] = [];
  for (const [i, edit] of edits.entries()) {
    const first: number[] = [];
    const whole: number[] = [];
    for (let n = 0; n < keystrokes; n++) {
      const at = type(i, n);
      const wave = await waves(client, version, at);
      first.push(wave.first);
      whole.push(wave.last);
    }
    times.push({ name: edit.name, first: spread(first), last: spread(whole) });
  }

  let at = 0;
  for (let n = 0; n < 30; n++) {
    at = type(n % edits.length, keystrokes + n);
    await new Promise((done) => setTimeout(done, 10));
  }
  const burst = (await waves(client, version, at)).last;
  const used = memory(client.process.pid);
  const errors = (client.published.at(-1)?.diagnostics ?? []).filter((each) => each.severity === 1).map((each) => each.message);
  await client.stop();
  return {
    lines: text.split("\n").length - 1, coldFirst: cold.first, coldLast: cold.last, unknownLast, edits: times, burst, memory: used, errors,
  };
}

async function waves(client: LspClient, version: number, since: number): Promise<{ first: number; last: number }> {
  const published = await client.diagnostics(uri, version, limit);
  const fits = (each: { method: string; params: unknown }): boolean => {
    const status = each.params as StatusParams;
    return each.method === "sparwright/status" && status.version === version && status.state !== "working";
  };
  const done = await client.until("complete figures", limit, () => client.notifications.find(fits));
  return { first: published.at - since, last: done.at - since };
}
