import type { Connection } from "vscode-languageserver";

type Reporter = Awaited<ReturnType<Connection["window"]["createWorkDoneProgress"]>>;

/** Shows how far section polars are in a client that shows such things, where it can be called off. */
export class PolarProgress {
  private reporter?: Reporter;
  private line?: string;
  private asked = false;

  constructor(private readonly window: Pick<Connection["window"], "createWorkDoneProgress">, private readonly callOff: () => void) {}

  /** The line to be shown from now on; undefined when it is over. */
  tell(line: string | undefined): void {
    this.line = line;
    const { reporter } = this;
    if (line === undefined) {
      this.reporter = undefined;
      reporter?.done();
    } else if (reporter) reporter.report(line);
    else this.ask();
  }

  /** The client makes a place for it; by then it may be over. */
  private ask(): void {
    if (this.asked) return;
    this.asked = true;
    this.window.createWorkDoneProgress().then((reporter) => {
      this.asked = false;
      if (this.line === undefined) return;
      this.reporter = reporter;
      reporter.begin("Section polars", undefined, this.line, true);
      reporter.token.onCancellationRequested(() => this.callOff());
    }, () => (this.asked = false));
  }
}
