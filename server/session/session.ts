import type { Connection, InitializeParams, TextDocumentContentChangeEvent } from "vscode-languageserver";
import { type FileText, type InitializationOptions, readFileRequest, settingsSection } from "../../shared/protocol";
import type { Finding } from "../../shared/finding";
import type { Analysis } from "../analysis";
import { viewOf, type View } from "../editor/view";
import { createAirframeService, type AirframeService } from "../service";
import { type Client, clientOf } from "./capabilities";
import { Documents } from "./documents";
import { Files } from "./files";
import type { SessionHost } from "./host";
import { Passes } from "./passes";
import { PolarProgress } from "./polar-progress";
import { Publisher } from "./publisher";
import { SettingsStore } from "./settings";

/** How long a first look waits for files that the client was asked for. */
const fileWait = 1000;

/** All that stands between one client and the engine: its texts, files, settings, and what it is shown. */
export class Session {
  readonly settings = new SettingsStore();
  readonly service: AirframeService;
  client: Client = clientOf({});
  /** Our own client tells of changed files by itself. */
  watchedByClient = false;
  private readonly documents = new Documents();
  private readonly files: Files;
  private readonly passes: Passes;
  private readonly publisher: Publisher;
  private folders: readonly string[] = [];

  constructor(private readonly connection: Connection, private readonly host: SessionHost, engine = createAirframeService) {
    this.files = new Files(host.files, (uri) => this.fileChanged(uri, false));
    this.service = engine({ text: (uri) => (this.mayRead(uri) ? this.files.text(uri) : undefined), polars: host.polars });
    const progress = new PolarProgress(connection.window, () => this.passes.callOff());
    this.passes = new Passes({
      now: () => host.now(),
      later: (work) => host.later(work),
      polars: this.service.polars,
      analysis: (uri) => this.analysis(uri),
      show: (uri, findings, whole) => this.show(uri, findings, whole),
      progress: (line) => progress.tell(line),
      failed: (uri, error) => this.publisher.failed(uri, this.version(uri), error),
    });
    this.publisher = new Publisher(connection);
  }

  initialize({ capabilities, initializationOptions, workspaceFolders, rootUri }: InitializeParams): void {
    this.client = clientOf(capabilities);
    const options = (initializationOptions ?? {}) as InitializationOptions;
    this.settings.takeAll(options.settings);
    this.publisher.wantsStatus = options.status === true;
    this.folders = workspaceFolders?.map((folder) => folder.uri) ?? (rootUri ? [rootUri] : []);
    this.watchedByClient = options.readFile === true;
    if (!this.watchedByClient) return;
    this.files.askClient(async (uri) => (await this.connection.sendRequest<FileText | null>(readFileRequest, { uri }))?.text);
  }

  open(uri: string, version: number, text: string): void {
    this.documents.set(uri, version, text);
    this.update(uri);
    void this.askSettings(uri);
  }

  change(uri: string, version: number, changes: readonly TextDocumentContentChangeEvent[]): void {
    for (const change of this.documents.change(uri, version, changes) ?? []) this.passes.moved(uri, change);
    this.update(uri);
  }

  close(uri: string): void {
    this.documents.delete(uri);
    this.passes.drop(uri);
    this.settings.forget(uri);
    const users = this.service.usersOf(uri);
    this.files.forget(uri);
    this.service.close(uri);
    this.lookAgain(users);
    this.publisher.clear(uri);
  }

  /** A file on disk is new, gone or other than it was. `reread`: what is known of it no longer holds. */
  fileChanged(uri: string, reread = true): void {
    if (reread) this.files.forget(uri);
    const users = this.service.usersOf(uri);
    this.service.forget(uri);
    this.lookAgain(users);
  }

  foldersChanged(added: readonly string[], removed: readonly string[]): void {
    this.folders = [...this.folders.filter((folder) => !removed.includes(folder)), ...added];
    for (const uri of this.documents.uris()) this.update(uri);
  }

  /** The client's settings are new. `given` for those that can't be asked. */
  settingsChanged(given: unknown): void {
    if (!this.client.configuration) this.settings.takeAll(given);
    for (const uri of this.documents.uris()) {
      if (this.client.configuration) void this.askSettings(uri);
      else this.update(uri);
    }
  }

  /** An open text as a feature sees it. */
  view(uri: string): View | undefined {
    return this.documents.get(uri) ? viewOf(this.service, uri, this.settings.of(uri).loading) : undefined;
  }

  version(uri: string): number | undefined {
    return this.documents.get(uri)?.version;
  }

  /** Designs that may name what others declare: the open ones, and those in the folders where they can be listed. */
  designs(): readonly string[] {
    const open = this.documents.uris();
    return [...new Set([...open, ...(this.host.files?.designs(this.folders) ?? [])])];
  }

  /** Resolves when all figures of the text are there. */
  settled(uri: string): Promise<void> {
    return this.passes.settled(uri);
  }

  private update(uri: string): void {
    const document = this.documents.get(uri);
    if (!document) return;
    const users = this.service.usersOf(uri);
    this.service.update({ uri, version: document.version, text: document.getText(), units: this.settings.of(uri).units });
    this.passes.look(uri);
    this.lookAgain(users);
  }

  private lookAgain(users: readonly string[]): void {
    for (const user of users) if (this.documents.get(user)) this.passes.look(user);
  }

  private async askSettings(uri: string): Promise<void> {
    if (!this.client.configuration) return;
    try {
      const given: unknown = await this.connection.workspace.getConfiguration({ scopeUri: uri, section: settingsSection });
      if (this.documents.get(uri) && this.settings.take(uri, given)) this.update(uri);
    } catch {
      // A client that doesn't answer is shown what it was shown before.
    }
  }

  /** Files outside the folders and those of open texts are nobody's business. */
  private mayRead(uri: string): boolean {
    const inside = (folder: string) => uri.startsWith(folder.endsWith("/") ? folder : `${folder}/`);
    if (uri.split("/").includes("..")) return false;
    return this.folders.some(inside) || this.documents.uris().some((open) => inside(open.slice(0, open.lastIndexOf("/"))));
  }

  private analysis(uri: string): Analysis | undefined {
    for (const changed of this.files.changed()) this.fileChanged(changed);
    const analysis = this.documents.get(uri) && this.service.analysis(uri);
    const asked = this.service.askedBy(uri);
    if (!analysis || !this.files.pending(asked)) return analysis;
    // What a file still to come would mend is not shown first. Its arrival brings the next look.
    setTimeout(() => {
      if (!this.files.pending(asked)) return;
      this.files.giveUp(asked);
      this.passes.look(uri);
    }, fileWait);
    return undefined;
  }

  private show(uri: string, findings: readonly Finding[], whole: boolean): void {
    const view = this.view(uri);
    const version = this.version(uri);
    if (view && version !== undefined) this.publisher.show(view, version, findings, this.settings.of(uri), this.client, whole);
  }
}
