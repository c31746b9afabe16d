import type { Finding } from "../../shared/finding";
import type { Analysis } from "../analysis";
import type { SessionHost } from "./host";
import { moveFindings, type Change } from "./move";

/** Slow work done along with the quick, so that most texts are shown once and whole. */
const sameTurn = 12;
/** Slow work between two turns of the event loop. */
const oneTurn = 8;
/** Turns without a newer text before a pass begins: all that has come in is taken first. */
const quietTurns = 2;

export interface PassHost extends Pick<SessionHost, "now" | "later"> {
  /** The text worked out; undefined if it is closed, or must wait for a file. */
  analysis(uri: string): Analysis | undefined;
  /** Shows what is found. `whole` when no more is to come for this text. */
  show(uri: string, findings: readonly Finding[], whole: boolean): void;
  /** Something broke that shouldn't. */
  failed(uri: string, error: unknown): void;
}

interface Job {
  readonly analysis: Analysis;
  readonly steps: Generator<void, void>;
  readonly quick: readonly Finding[];
}

/**
 * Works texts out in two waves. The quick findings come at once; slow work runs in steps between which the event loop
 * turns, and is dropped when a newer text is there. Until it is done the slow findings of the text before stand where
 * they moved to.
 */
export class Passes {
  private readonly due = new Set<string>();
  private readonly jobs = new Map<string, Job>();
  private readonly late = new Map<string, readonly Finding[]>();
  private readonly waiting = new Map<string, (() => void)[]>();
  private running = false;
  private quiet = 0;

  constructor(private readonly host: PassHost) {}

  /** The text, or something it rests on, is new. */
  look(uri: string): void {
    this.due.add(uri);
    this.jobs.delete(uri);
    this.quiet = 0;
    this.run();
  }

  moved(uri: string, change: Change): void {
    const late = this.late.get(uri);
    if (late) this.late.set(uri, moveFindings(late, uri, change));
  }

  drop(uri: string): void {
    this.due.delete(uri);
    this.jobs.delete(uri);
    this.late.delete(uri);
    this.wake(uri);
  }

  /** Resolves when nothing is to be done for the text. */
  settled(uri: string): Promise<void> {
    if (!this.due.has(uri) && !this.jobs.has(uri)) return Promise.resolve();
    return new Promise((done) => this.waiting.set(uri, [...(this.waiting.get(uri) ?? []), done]));
  }

  private run(): void {
    if (this.running) return;
    this.running = true;
    this.host.later(() => this.turn());
  }

  private turn(): void {
    this.running = false;
    const [uri] = this.due;
    if (uri !== undefined && this.quiet++ < quietTurns) return this.run();
    const [job] = this.jobs;
    if (uri !== undefined) this.guarded(uri, () => this.begin(uri));
    else if (job) this.guarded(job[0], () => this.go(job[0], job[1], oneTurn));
    if (this.due.size > 0 || this.jobs.size > 0) this.run();
  }

  private guarded(uri: string, work: () => void): void {
    try {
      work();
    } catch (error) {
      this.due.delete(uri);
      this.jobs.delete(uri);
      this.host.failed(uri, error);
      this.wake(uri);
    }
  }

  private begin(uri: string): void {
    this.due.delete(uri);
    const analysis = this.host.analysis(uri);
    if (!analysis) return this.wake(uri);
    if (analysis.complete) return this.done(uri, analysis);
    const job = { analysis, steps: analysis.finish(), quick: analysis.findings };
    this.jobs.set(uri, job);
    this.go(uri, job, sameTurn);
    if (this.jobs.has(uri)) this.host.show(uri, [...job.quick, ...(this.late.get(uri) ?? [])], false);
  }

  private go(uri: string, job: Job, budget: number): void {
    const until = this.host.now() + budget;
    while (this.host.now() < until) {
      if (!job.steps.next().done) continue;
      this.jobs.delete(uri);
      const quick = new Set(job.quick.map(keyOf));
      this.late.set(uri, job.analysis.findings.filter((finding) => !quick.has(keyOf(finding))));
      return this.done(uri, job.analysis);
    }
  }

  private done(uri: string, analysis: Analysis): void {
    this.host.show(uri, analysis.findings, true);
    this.wake(uri);
  }

  private wake(uri: string): void {
    const waiting = this.waiting.get(uri) ?? [];
    this.waiting.delete(uri);
    for (const done of waiting) done();
  }
}

const keyOf = ({ code, place, message }: Finding): string => `${code} ${place.start} ${place.end} ${message}`;
