import { type Disposable, EventEmitter, type TextDocumentContentProvider, Uri, ViewColumn, window, workspace } from "vscode";
import type { BaseLanguageClient } from "vscode-languageclient";
import { type FileText, type FiguresTextParams, figuresTextRequest } from "../shared/protocol";

const scheme = "sparwright-figures";

/** The address of a design's figures: its name in the tab, the design's own address kept whole in the query. */
export function figuresUri(design: Uri): Uri {
  const path = design.path.startsWith("/") ? design.path : `/${design.path}`;
  return Uri.from({ scheme, path: `${path.replace(/\.airframe$/, "")} figures.txt`, query: design.toString() });
}

/** The design a figures document is about; any other address is its own. */
export function designOf(uri: Uri): Uri {
  return uri.scheme === scheme ? Uri.parse(uri.query) : uri;
}

/** A read-only text of all figures of a design, beside it, that follows while it is typed. */
export class FiguresView implements TextDocumentContentProvider, Disposable {
  private readonly changed = new EventEmitter<Uri>();
  readonly onDidChange = this.changed.event;
  private readonly registration = workspace.registerTextDocumentContentProvider(scheme, this);

  constructor(private readonly client: BaseLanguageClient) {}

  async provideTextDocumentContent(uri: Uri): Promise<string> {
    const params: FiguresTextParams = { uri: designOf(uri).toString() };
    const answer = await this.client.sendRequest<FileText | null>(figuresTextRequest, params);
    return answer?.text ?? "";
  }

  async open(design: Uri): Promise<void> {
    const document = await workspace.openTextDocument(figuresUri(design));
    await window.showTextDocument(document, { viewColumn: ViewColumn.Beside, preserveFocus: true, preview: false });
  }

  refresh(design: Uri): void {
    const uri = figuresUri(design);
    const shown = workspace.textDocuments.some((document) => document.uri.toString() === uri.toString());
    if (shown) this.changed.fire(uri);
  }

  dispose(): void {
    this.registration.dispose();
    this.changed.dispose();
  }
}
