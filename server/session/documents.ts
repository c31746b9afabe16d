import { TextDocument } from "vscode-languageserver-textdocument";
import type { TextDocumentContentChangeEvent } from "vscode-languageserver";
import type { Change } from "./move";

/** The texts that are open in the client, kept as it changes them. */
export class Documents {
  private readonly open = new Map<string, TextDocument>();

  set(uri: string, version: number, text: string): void {
    this.open.set(uri, TextDocument.create(uri, "airframe", version, text));
  }

  get(uri: string): TextDocument | undefined {
    return this.open.get(uri);
  }

  delete(uri: string): void {
    this.open.delete(uri);
  }

  uris(): string[] {
    return [...this.open.keys()];
  }

  /** Takes changes, each of the text the one before it left; gives them as offsets. Undefined for a text that isn't open. */
  change(uri: string, version: number, changes: readonly TextDocumentContentChangeEvent[]): readonly Change[] | undefined {
    const document = this.open.get(uri);
    if (!document) return undefined;
    return changes.map((change) => {
      const size = document.getText().length;
      const [a, b] = "range" in change ? [document.offsetAt(change.range.start), document.offsetAt(change.range.end)] : [0, size];
      TextDocument.update(document, [change], version);
      return { start: Math.min(a, b), end: Math.max(a, b), length: change.text.length };
    });
  }
}
