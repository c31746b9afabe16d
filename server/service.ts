import { parse } from "../grammar/parse";
import type { ParsedFile } from "../grammar/tree";
import { Analysis, type Workshop } from "./analysis";
import type { System } from "./checks/say";
import { PolarShelf, type PolarStore } from "./compute/section-air/polar-shelf";
import { putSlowFigures, type SlowFigures } from "./figures/groups";
import { Memory } from "./figures/memory";
import { resolveModel } from "./model/model";

/** What a host gives the engine: texts by address. It knows no file system, no connection and no clock of its own. */
export interface Host {
  /** The text of a file that isn't open, or undefined if there is none. */
  text(uri: string): string | undefined;
  /** Where section polars are kept from one run to the next, if anywhere. */
  readonly polars?: PolarStore;
}

export interface Document {
  readonly uri: string;
  readonly version: number;
  readonly text: string;
  /** How its figures are said; as the service's own where not given. */
  readonly units?: System;
}

interface Worked {
  readonly analysis: Analysis;
  /** Addresses it asked for, whether there was anything or not. */
  readonly asked: Set<string>;
}

/** All operations on texts, the same for the editor, the command line and the tests. */
export class AirframeService {
  private readonly open = new Map<string, Document>();
  private readonly parses = new Map<string, ParsedFile>();
  /** The last text of each open file that had nothing wrong: what is read again begins from it. */
  private readonly sound = new Map<string, ParsedFile>();
  private readonly analyses = new Map<string, Worked>();
  /** What was last worked out of each open text, outdated or not. */
  private readonly latest = new Map<string, Worked>();
  /** Section polars, known and wanted, of all texts. */
  readonly polars: PolarShelf;
  private readonly workshop: Workshop;
  private system: System = "metric";

  constructor(private readonly host: Host, figures: SlowFigures = putSlowFigures) {
    this.polars = new PolarShelf(host.polars);
    this.workshop = { memory: new Memory(64, () => this.polars.misses), polars: this.polars, figures };
  }

  /** Opens a text or takes its newer version. What was worked out of files that use it is forgotten. */
  update(document: Document): void {
    this.open.set(document.uri, document);
    this.forget(document.uri);
  }

  close(uri: string): void {
    this.open.delete(uri);
    this.latest.delete(uri);
    this.sound.delete(uri);
    this.forget(uri);
  }

  /** A file on disk, used by open ones, has changed. */
  forget(uri: string): void {
    this.parses.delete(uri);
    for (const [own, { asked }] of this.analyses) if (asked.has(uri)) this.analyses.delete(own);
    // A table or a section read from a file stands in no text that could be compared.
    for (const [own, { asked }] of this.latest) if (own !== uri && asked.has(uri)) this.latest.delete(own);
  }

  set units(system: System) {
    if (system === this.system) return;
    this.system = system;
    this.analyses.clear();
  }

  get units(): System {
    return this.system;
  }

  document(uri: string): Document | undefined {
    return this.open.get(uri);
  }

  /** All texts but this one that rest on it, or asked for it in vain: to be looked at again when it changes. */
  usersOf(uri: string): string[] {
    return [...this.analyses].filter(([own, { asked }]) => own !== uri && asked.has(uri)).map(([own]) => own);
  }

  parsed(uri: string, asked?: Set<string>): ParsedFile | undefined {
    asked?.add(uri);
    const known = this.parses.get(uri);
    if (known) return known;
    const text = this.textOf(uri);
    if (text === undefined) return undefined;
    const parsed = parse(text, this.sound.get(uri));
    this.parses.set(uri, parsed);
    if (parsed.issues.length === 0 && this.open.has(uri)) this.sound.set(uri, parsed);
    return parsed;
  }

  /** The text worked out as far as is quick; `finish()` of it does the rest. The same object while nothing changes. */
  analysis(uri: string): Analysis | undefined {
    const known = this.analyses.get(uri);
    if (known) return known.analysis;
    const asked = new Set<string>();
    const source = {
      parsed: (other: string) => this.parsed(other, asked),
      text: (other: string) => this.textOf(other, asked),
    };
    const model = resolveModel(uri, source);
    if (!model) return undefined;
    const analysis = new Analysis(model, this.workshop, this.open.get(uri)?.units ?? this.system, this.latest.get(uri)?.analysis);
    const worked = { analysis, asked };
    this.analyses.set(uri, worked);
    this.latest.set(uri, worked);
    return analysis;
  }

  /** What the analysis of that text has asked for, itself included; nothing while there is none. */
  askedBy(uri: string): ReadonlySet<string> {
    return this.analyses.get(uri)?.asked ?? new Set();
  }

  private textOf(uri: string, asked?: Set<string>): string | undefined {
    asked?.add(uri);
    return this.open.get(uri)?.text ?? this.host.text(uri);
  }
}

/** `figures` works the slow figures of a loading out: the project's own. */
export const createAirframeService = (host: Host, figures?: SlowFigures): AirframeService => new AirframeService(host, figures);
