import type { Severity } from "./finding";

/**
 * What client and server say to each other beyond the language server protocol. A client that knows none of it still
 * gets all findings, hovers and fixes.
 */

/**
 * Server to client: the headline of one document, right after the diagnostics of the same pass. Only to clients that
 * announce it: others warn their users of notifications they don't know.
 */
export const statusNotification = "sparwright/status";

/** Client's answer to the server's wish for a file it has no editor for; `null` if it can't or mustn't be read. */
export const readFileRequest = "sparwright/readFile";

/** Server's figures of one document as text for people, in the active loading and the chosen units. */
export const figuresTextRequest = "sparwright/figuresText";

/** A figure as it is shown, `2.31 kg ± 0.02 kg`. */
export interface ShownFigure {
  readonly text: string;
}

export interface StatusParams {
  readonly uri: string;
  /** Of the text the figures are of. */
  readonly version: number;
  /** The active loading. */
  readonly loading: string;
  readonly loadings: readonly string[];
  readonly mass?: ShownFigure;
  readonly staticMargin?: ShownFigure;
  readonly thrustToWeight?: ShownFigure;
  /** The gravest finding, or `working` while figures are still coming. */
  readonly state: "ok" | "warning" | "error" | "working";
}

export interface ReadFileParams {
  readonly uri: string;
}

export interface FileText {
  readonly text: string;
}

export interface FiguresTextParams {
  readonly uri: string;
}

/**
 * The section `sparwright` of the settings, asked for with `workspace/configuration` and the document as `scopeUri`.
 * Asked for again after each `workspace/didChangeConfiguration`.
 */
export interface Settings {
  readonly units: "metric" | "imperial";
  /** By check code; a code not named keeps its own severity. */
  readonly severities: Readonly<Record<string, Severity | "off">>;
  /** Name of the active loading; empty, or a name the design hasn't: its first. */
  readonly loading: string;
}

export const settingsSection = "sparwright";

export const defaultSettings: Settings = { units: "metric", severities: {}, loading: "" };

export interface InitializationOptions {
  /** The client answers `sparwright/readFile`; without it the server reads from its own file system. */
  readonly readFile?: boolean;
  /** The client takes `sparwright/status`. */
  readonly status?: boolean;
  /** For clients that can't be asked. */
  readonly settings?: Partial<Settings>;
}
