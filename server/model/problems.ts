import type { Span } from "../../grammar/tree";
import type { Finding, Fix, Severity } from "../../shared/finding";
import type { Instance, SourceFile } from "./resolve/instance";

/** Codes of what is wrong with the text itself. */
export const textCodes = [
  "syntax", "unknown_word", "misplaced", "wrong_dimension", "wrong_value", "missing_unit", "missing_property", "name_twice", "unknown_name",
  "not_declared_here", "circle", "file_not_found", "broken_file", "unused_let", "unit_as_name", "foil_missing", "waiver_without_reason",
  "waiver_without_effect", "figure_absent", "require_failed", "require_close",
] as const;

export type TextCode = (typeof textCodes)[number];

export const isTextCode = (code: string): boolean => (textCodes as readonly string[]).includes(code);

/**
 * Collects what is wrong while a file is resolved. A thing is said once, however often it is met, and only about the
 * file being judged: trouble met in a copied block is shown at the `from` that brought it.
 */
export class Problems {
  private readonly found = new Map<string, Finding>();

  constructor(private readonly file: string) {}

  add(code: TextCode, severity: Severity, file: SourceFile | string, span: Span, message: string, fixes?: readonly Fix[]): void {
    const uri = typeof file === "string" ? file : file.uri;
    if (uri !== this.file) return;
    const key = `${code} ${span.start} ${span.end} ${message}`;
    if (this.found.has(key)) return;
    const place = { file: uri, start: span.start, end: span.end };
    this.found.set(key, fixes?.length ? { code, severity, message, place, fixes } : { code, severity, message, place });
  }

  /** Says it where `span` stands in `written`, or, if that is another file, at the nearest block around `holder` here. */
  addFor(holder: Instance, code: TextCode, written: SourceFile, span: Span, message: string, fixes?: readonly Fix[]): void {
    if (written.uri === this.file) return this.add(code, "error", written, span, message, fixes);
    const here = copiedBy(holder, this.file);
    if (!here?.node) return;
    // What is missing here is this file's affair; anything else is a mistake over there.
    const whole = code === "not_declared_here" ? message : `in ${written.uri.slice(written.uri.lastIndexOf("/") + 1)}: ${message}`;
    this.add(code, "error", here.file, here.node.from ?? here.node.kind, whole, fixes);
  }

  list(): Finding[] {
    return [...this.found.values()];
  }
}

/** The nearest block around that is written in this file. */
function copiedBy(holder: Instance, uri: string): Instance | undefined {
  for (let at: Instance | undefined = holder; at; at = at.parent) if (at.file.uri === uri && at.node) return at;
  return undefined;
}

/** A fix that writes `text` over `span`. */
export function rewrite(file: SourceFile, span: Span, title: string, text: string): Fix {
  return { title, edits: [{ file: file.uri, start: span.start, end: span.end, text }] };
}
