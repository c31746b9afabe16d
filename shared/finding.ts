/** *error*: won't fly or will break, or can't be read; *warning*: outside good practice; *hint*: worth a look. */
export type Severity = "error" | "warning" | "hint";

/** A stretch of one file, as offsets (UTF-16, end exclusive). */
export interface Place {
  readonly file: string;
  readonly start: number;
  readonly end: number;
}

export interface FixEdit extends Place {
  readonly text: string;
}

/** An edit that mends what a finding names. */
export interface Fix {
  readonly title: string;
  readonly edits: readonly FixEdit[];
}

export interface Finding {
  /** The check's code, which `waive` and the settings use. */
  readonly code: string;
  readonly severity: Severity;
  readonly message: string;
  readonly place: Place;
  /** The figure it rests on, for a reader who wants the account. */
  readonly figure?: string;
  readonly loading?: string;
  readonly fixes?: readonly Fix[];
  readonly related?: readonly { readonly message: string; readonly place: Place }[];
}
