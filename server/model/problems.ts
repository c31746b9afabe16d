import type { Span } from "../../grammar/tree";
import type { Finding, Fix, Severity } from "../../shared/finding";
import type { Instance, SourceFile } from "./resolve/instance";

/** Codes of what is wrong with the text itself. */
export type TextCode =
  | "syntax" | "unknown_word" | "misplaced" | "wrong_dimension" | "wrong_value" | "missing_unit" | "missing_property"
  | "name_twice" | "unknown_name" | "not_declared_here" | "circle" | "file_not_found" | "broken_file" | "unused_let"
  | "unit_as_name" | "waiver_without_reason" | "waiver_without_effect" | "figure_absent" | "require_failed" | "require_close";

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
    for (let at: Instance | undefined = holder; at; at = at.parent) {
      if (at.file.uri !== this.file || !at.node) continue;
      return this.add(code, "error", at.file, at.node.from ?? at.node.kind, message, fixes);
    }
  }

  list(): Finding[] {
    return [...this.found.values()];
  }
}

/** A fix that writes `text` over `span`. */
export function rewrite(file: SourceFile, span: Span, title: string, text: string): Fix {
  return { title, edits: [{ file: file.uri, start: span.start, end: span.end, text }] };
}
