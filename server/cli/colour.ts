import type { Severity } from "../../shared/finding";

export interface Paint {
  readonly bold: (text: string) => string;
  readonly faint: (text: string) => string;
  readonly severity: (severity: Severity, text: string) => string;
}

const code = (start: number, end: number) => (text: string) => `\u001b[${start}m${text}\u001b[${end}m`;

const severities: Readonly<Record<Severity, (text: string) => string>> = { error: code(31, 39), warning: code(33, 39), hint: code(36, 39) };

/** Colours for a terminal, or none. */
export function paint(on: boolean): Paint {
  const none = (text: string) => text;
  return on
    ? { bold: code(1, 22), faint: code(2, 22), severity: (severity, text) => severities[severity](text) }
    : { bold: none, faint: none, severity: (_, text) => text };
}
