import type { Finding } from "../../shared/finding";
import type { Analysis } from "../analysis";
import type { PolarShelf } from "../compute/section-air/polar-shelf";
import { PolarWave } from "../polar-wave";
import type { SessionHost } from "./host";
import { moveFindings, type Change } from "./move";

/** Slow work done along with the quick, so that most texts are shown once and whole. */
const sameTurn = 12;
/** Slow work between two turns of the event loop. */
const oneTurn = 8;
/** Turns without a newer text before a pass begins: all that has come in is taken first. */
const quietTurns = 2;

export interface PassHost extends Pick<SessionHost, "now" | "later"> {
  readonly polars: Pick<PolarShelf, "want" | "wanted" | "workSteps">;
  /** The text worked out; undefined if it is closed, or must wait for a file. */
  analysis(uri: string): Analysis | undefined;
  /** Shows what is found. `whole` when no more is to come for this text. */
  show(uri: string, findings: readonly Finding[], whole: boolean): void;
  /** Tells how far the polars are, if they take long; undefined when they are there. */
  progress(line: string | undefined): void;
  /** Something broke that shouldn't. */
  failed(uri: string, error: unknown): void;
}

interface Job {
  readonly analysis: Analysis;
  readonly quick: readonly Finding[];
  /** Figures being worked out; none while the text waits for polars. */
  steps?: Generator<void, void>;
}

/**
 * Works texts out in three waves. The quick findings come at once; slow work runs in steps between which the event loop
 * turns, and is dropped when a newer text is there. Section polars, which take longest, are worked out when no text has
 * anything else to do; one that is begun goes on as long as some text waits for it. Until a wave is done its findings in the
 * text before stand where they moved to.
 */
export class Passes {
  private readonly due = new Set<string>();
  private readonly jobs = new Map<string, Job>();
  private readonly late = new Map<string, readonly Finding[]>();
  private readonly waiting = new Map<string, (() => void)[]>();
  private readonly wave: PolarWave;
  private running = false;
  private quiet = 0;

  constructor(private readonly host: PassHost) {
    this.wave = new PolarWave(host.polars, () => host.now(), (line) => host.progress(line));
  }

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
    this.rest();
  }

  /** Leaves texts that wait for polars at what is known of them. */
  callOff(): void {
    for (const [uri, { analysis, quick, steps }] of this.jobs) {
      if (steps) continue;
      analysis.stop();
      this.jobs.delete(uri);
      this.done(uri, analysis, quick);
    }
    this.rest();
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
    const active = [...this.jobs].find(([, { steps }]) => steps);
    if (uri !== undefined) this.guarded([uri], () => this.begin(uri));
    else if (active) this.guarded([active[0]], () => this.go(active[0], active[1], oneTurn));
    else this.guarded([...this.jobs.keys()], () => this.workPolars());
    if (this.due.size > 0 || this.jobs.size > 0) this.run();
    else this.rest();
  }

  private guarded(uris: readonly string[], work: () => void): void {
    try {
      work();
    } catch (error) {
      for (const uri of uris) {
        this.due.delete(uri);
        this.jobs.delete(uri);
        this.host.failed(uri, error);
        this.wake(uri);
      }
    }
  }

  private begin(uri: string): void {
    this.due.delete(uri);
    const analysis = this.host.analysis(uri);
    if (!analysis) return this.wake(uri);
    const late = new Set(this.late.get(uri)?.map(keyOf));
    const fresh = analysis.reached === "quick";
    const quick = fresh ? analysis.findings : analysis.findings.filter((finding) => !late.has(keyOf(finding)));
    if (analysis.complete || analysis.stopped) return this.done(uri, analysis, quick);
    const job: Job = { analysis, quick, steps: fresh ? analysis.finish() : undefined };
    this.jobs.set(uri, job);
    if (fresh) this.go(uri, job, sameTurn);
    if (job.steps || !fresh) this.host.show(uri, this.shown(uri, analysis), false);
  }

  private go(uri: string, job: Job, budget: number): void {
    const { analysis, steps, quick } = job;
    const until = this.host.now() + budget;
    while (this.host.now() < until) {
      if (!steps?.next().done) continue;
      job.steps = undefined;
      if (analysis.complete) {
        this.jobs.delete(uri);
        return this.done(uri, analysis, quick);
      }
      const shown = this.shown(uri, analysis);
      this.late.set(uri, without(shown, quick));
      return this.host.show(uri, shown, false);
    }
  }

  private workPolars(): void {
    this.wave.work([...this.jobs.values()].flatMap(({ analysis }) => analysis.wanted), oneTurn);
    for (const job of this.jobs.values()) if (this.wave.has(job.analysis.wanted)) job.steps = job.analysis.finish();
  }

  /** What is found so far, and what of the text before may still be found. */
  private shown(uri: string, analysis: Analysis): readonly Finding[] {
    const { findings } = analysis;
    return [...findings, ...without(this.late.get(uri) ?? [], findings).filter((finding) => analysis.awaits(finding))];
  }

  private done(uri: string, { findings }: Analysis, quick: readonly Finding[]): void {
    this.late.set(uri, without(findings, quick));
    this.host.show(uri, findings, true);
    this.wake(uri);
  }

  private rest(): void {
    if (this.due.size === 0 && this.jobs.size === 0) this.wave.end();
  }

  private wake(uri: string): void {
    const waiting = this.waiting.get(uri) ?? [];
    this.waiting.delete(uri);
    for (const done of waiting) done();
  }
}

const keyOf = ({ code, place, message }: Finding): string => `${code} ${place.start} ${place.end} ${message}`;

function without(findings: readonly Finding[], others: readonly Finding[]): readonly Finding[] {
  const keys = new Set(others.map(keyOf));
  return findings.filter((finding) => !keys.has(keyOf(finding)));
}
