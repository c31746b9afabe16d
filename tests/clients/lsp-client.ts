import { type ChildProcess, spawn } from "node:child_process";
import { type Message, receive, send } from "./wire";

export interface Position {
  readonly line: number;
  readonly character: number;
}

export interface Range {
  readonly start: Position;
  readonly end: Position;
}

export interface Diagnostic {
  readonly range: Range;
  readonly severity?: number;
  readonly code?: string | number;
  readonly source?: string;
  readonly message: string;
}

export interface Published {
  readonly uri: string;
  readonly version?: number;
  readonly diagnostics: readonly Diagnostic[];
  /** When it came, in ms of `performance.now()`. */
  readonly at: number;
}

export interface ClientOptions {
  /** Program and arguments of the server; it speaks over its standard streams. */
  readonly command: readonly [string, ...string[]];
  /** As sent in `initialize`; none at all for a client that can nothing. */
  readonly capabilities?: object;
  readonly initializationOptions?: unknown;
  readonly rootUri?: string;
  /** Answers to the server's requests by method; the rest get "method not found". */
  readonly answers?: Readonly<Record<string, (params: unknown) => unknown>>;
}

export class RequestError extends Error {
  constructor(readonly code: number, message: string) {
    super(message);
  }
}

const methodNotFound = -32601;

/** A language client of our own, without any library: what the server says to it, it says to anyone. */
export class LspClient {
  readonly process: ChildProcess;
  readonly notifications: { readonly method: string; readonly params: unknown; readonly at: number }[] = [];
  readonly published: Published[] = [];
  /** Methods the server asked of the client. */
  readonly asked: string[] = [];
  /** What the server wrote beside the protocol. */
  errors = "";
  private readonly waiting = new Map<number, { done(result: unknown): void; fail(error: Error): void }>();
  private readonly watchers = new Set<() => void>();
  private lastId = 0;

  private constructor(private readonly options: ClientOptions) {
    const [program, ...args] = options.command;
    this.process = spawn(program, args, { stdio: ["pipe", "pipe", "pipe"] });
    this.process.stderr?.on("data", (chunk: Buffer) => (this.errors += chunk.toString()));
    this.process.once("exit", (code) => this.ended(`the server ended with code ${code}\n${this.errors}`));
    receive(this.process.stdout!, (message) => this.take(message));
  }

  /** Starts the server and goes through `initialize` and `initialized`. Gives the client and the server's answer. */
  static async start(options: ClientOptions): Promise<{ client: LspClient; capabilities: Record<string, unknown> }> {
    const client = new LspClient(options);
    const result = await client.request<{ capabilities: Record<string, unknown> }>("initialize", {
      processId: process.pid,
      rootUri: options.rootUri ?? null,
      capabilities: options.capabilities ?? {},
      initializationOptions: options.initializationOptions,
    });
    client.notify("initialized", {});
    return { client, capabilities: result.capabilities };
  }

  request<R = unknown>(method: string, params: unknown): Promise<R> {
    return this.cancellable<R>(method, params).result;
  }

  /** A request that can be called off: `cancel` sends `$/cancelRequest`, the answer is still waited for. */
  cancellable<R = unknown>(method: string, params: unknown): { readonly result: Promise<R>; cancel(): void } {
    const id = ++this.lastId;
    const result = new Promise<R>((done, fail) => {
      this.waiting.set(id, { done: (value) => done(value as R), fail });
    });
    send(this.process.stdin!, { id, method, params });
    return { result, cancel: () => this.notify("$/cancelRequest", { id }) };
  }

  notify(method: string, params: unknown): void {
    send(this.process.stdin!, { method, params });
  }

  open(uri: string, text: string, version = 1): void {
    this.notify("textDocument/didOpen", { textDocument: { uri, languageId: "airframe", version, text } });
  }

  /** An incremental change; without a range the whole text. */
  change(uri: string, version: number, changes: readonly { readonly range?: Range; readonly text: string }[]): void {
    this.notify("textDocument/didChange", { textDocument: { uri, version }, contentChanges: changes });
  }

  close(uri: string): void {
    this.notify("textDocument/didClose", { textDocument: { uri } });
  }

  /** The first diagnostics of that version of the text, from those that have come or will come. */
  diagnostics(uri: string, version: number, limit = 20_000): Promise<Published> {
    return this.until(`diagnostics of ${uri}, version ${version}`, limit, () =>
      this.published.find((each) => each.uri === uri && each.version === version));
  }

  /** Waits for a notification that `fits`. */
  notification<P>(method: string, fits: (params: P) => boolean = () => true, limit = 20_000): Promise<P> {
    return this.until(method, limit, () =>
      this.notifications.find((each) => each.method === method && fits(each.params as P))?.params as P | undefined);
  }

  /** Looks again after each message until `look` gives something. */
  until<T>(what: string, limit: number, look: () => T | undefined): Promise<T> {
    return new Promise((done, fail) => {
      const stop = (): void => {
        clearTimeout(timer);
        this.watchers.delete(check);
      };
      const check = (): void => {
        const found = look();
        if (found !== undefined) {
          stop();
          done(found);
        }
      };
      const timer = setTimeout(() => {
        stop();
        fail(new Error(`waited ${limit} ms for ${what}\n${this.errors}`));
      }, limit);
      this.watchers.add(check);
      check();
    });
  }

  /** `shutdown` and `exit`; gives the exit code. */
  async stop(): Promise<number | null> {
    const ended = new Promise<number | null>((done) => this.process.once("exit", done));
    await this.request("shutdown", null);
    this.notify("exit", null);
    return ended;
  }

  private take(message: Message): void {
    if (message.method !== undefined && message.id !== undefined) this.answer(message.id, message.method, message.params);
    else if (message.method !== undefined) this.heard(message.method, message.params);
    else if (typeof message.id === "number") {
      const waiting = this.waiting.get(message.id);
      this.waiting.delete(message.id);
      if (message.error) waiting?.fail(new RequestError(message.error.code, message.error.message));
      else waiting?.done(message.result);
    }
    for (const check of [...this.watchers]) check();
  }

  private heard(method: string, params: unknown): void {
    const at = performance.now();
    this.notifications.push({ method, params, at });
    if (method === "textDocument/publishDiagnostics") this.published.push({ ...(params as Published), at });
  }

  private answer(id: number | string, method: string, params: unknown): void {
    this.asked.push(method);
    const answer = this.options.answers?.[method];
    if (answer) send(this.process.stdin!, { id, result: answer(params) ?? null });
    else send(this.process.stdin!, { id, error: { code: methodNotFound, message: `this client has no ${method}` } });
  }

  private ended(why: string): void {
    for (const { fail } of this.waiting.values()) fail(new Error(why));
    this.waiting.clear();
  }
}
