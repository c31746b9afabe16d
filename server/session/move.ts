import type { Finding } from "../../shared/finding";

/** A replacement of `end - start` characters by `length` new ones. */
export interface Change {
  readonly start: number;
  readonly end: number;
  readonly length: number;
}

/** Where findings of the text before a change stand after it; those it removed are left out. Their fixes may no longer fit. */
export function moveFindings(findings: readonly Finding[], file: string, change: Change): readonly Finding[] {
  const delta = change.length - (change.end - change.start);
  return findings.flatMap(({ related: _, fixes: __, ...finding }): Finding[] => {
    const { place } = finding;
    if (place.file !== file) return [finding];
    const start = place.start < change.end && place.start > change.start ? change.start + change.length : place.start >= change.end ? place.start + delta : place.start;
    const end = place.end <= change.start ? place.end : place.end >= change.end ? place.end + delta : change.start;
    return end > start || (place.end === place.start && end === start) ? [{ ...finding, place: { ...place, start, end } }] : [];
  });
}
