import type { Readable, Writable } from "node:stream";

export interface Message {
  readonly jsonrpc: "2.0";
  readonly id?: number | string;
  readonly method?: string;
  readonly params?: unknown;
  readonly result?: unknown;
  readonly error?: { readonly code: number; readonly message: string };
}

/** The base protocol of LSP 3.17: a header with Content-Length, then that many bytes of JSON. */
export function send(to: Writable, message: Omit<Message, "jsonrpc">): void {
  const body = Buffer.from(JSON.stringify({ jsonrpc: "2.0", ...message }));
  to.write(`Content-Length: ${body.length}\r\n\r\n`);
  to.write(body);
}

/** Calls `take` with each whole message; a header without a length is an error, as is text outside messages. */
export function receive(from: Readable, take: (message: Message) => void): void {
  let pending = Buffer.alloc(0);
  from.on("data", (chunk: Buffer) => {
    pending = Buffer.concat([pending, chunk]);
    for (;;) {
      const end = pending.indexOf("\r\n\r\n");
      if (end < 0) return;
      const header = pending.subarray(0, end).toString("ascii");
      const length = /(?:^|\r\n)Content-Length: (\d+)(?:\r\n|$)/i.exec(header);
      if (!length) throw new Error(`no Content-Length in ${JSON.stringify(header)}`);
      const start = end + 4;
      const stop = start + Number(length[1]);
      if (pending.length < stop) return;
      const body = pending.subarray(start, stop).toString("utf8");
      pending = pending.subarray(stop);
      take(JSON.parse(body) as Message);
    }
  });
}
