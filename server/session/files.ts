import type { OwnFiles } from "./host";

interface Known {
  readonly text?: string;
  readonly stamp?: string;
}

/** How a client is asked for a file it has no editor for. */
export type Ask = (uri: string) => Promise<string | undefined>;

/** Texts of files that aren't open: from the client if it answers for them, else from the process's own files. */
export class Files {
  private readonly known = new Map<string, Known>();
  private readonly asked = new Set<string>();
  private ask?: Ask;

  /** `arrived` is called when a file asked of the client has come. */
  constructor(private readonly own: OwnFiles | undefined, private readonly arrived: (uri: string) => void) {}

  /** From now on the client is asked, and nothing is read from the process's own files. */
  askClient(ask: Ask): void {
    this.ask = ask;
  }

  text(uri: string): string | undefined {
    const known = this.known.get(uri);
    if (known) return known.text;
    if (this.ask) return this.request(uri, this.ask);
    const read = { text: this.own?.read(uri), stamp: this.own?.stamp(uri) };
    this.known.set(uri, read);
    return read.text;
  }

  /** Are some of these still to come from the client? */
  pending(uris: Iterable<string>): boolean {
    for (const uri of uris) if (this.asked.has(uri)) return true;
    return false;
  }

  /** Gives up waiting: what has not come isn't there. */
  giveUp(uris: Iterable<string>): void {
    for (const uri of uris) if (this.asked.delete(uri)) this.known.set(uri, {});
  }

  forget(uri: string): void {
    this.known.delete(uri);
  }

  /** Those that are no longer as they were read, for clients that watch no files. */
  changed(): string[] {
    const { own } = this;
    if (this.ask || !own) return [];
    return [...this.known].filter(([uri, { stamp }]) => stamp !== own.stamp(uri)).map(([uri]) => uri);
  }

  private request(uri: string, ask: Ask): undefined {
    if (this.asked.has(uri)) return undefined;
    this.asked.add(uri);
    const take = (text: string | undefined): void => {
      this.asked.delete(uri);
      this.known.set(uri, { text });
      this.arrived(uri);
    };
    ask(uri).then(take, () => take(undefined));
    return undefined;
  }
}
