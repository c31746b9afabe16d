import { EventEmitter, type Memento, type Uri } from "vscode";

const key = "loadingByDesign";

/** The loading chosen for each design, kept with the workspace and not in its settings file. */
export class LoadingChoice {
  private readonly changed = new EventEmitter<Uri>();
  readonly onDidChange = this.changed.event;

  constructor(private readonly memory: Memento) {}

  /** Of the design at this address; undefined where none was chosen. */
  of(uri: string): string | undefined {
    return this.all()[uri];
  }

  async choose(uri: Uri, loading: string): Promise<void> {
    await this.memory.update(key, { ...this.all(), [uri.toString()]: loading });
    this.changed.fire(uri);
  }

  private all(): Readonly<Record<string, string>> {
    return this.memory.get<Record<string, string>>(key, {});
  }
}
