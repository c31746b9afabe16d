import type { Finding, Fix } from "../../../shared/finding";

/** The text after a fix; its edits may stand in any order, and those put at one place stay in theirs. */
export function applied(text: string, { edits }: Fix): string {
  return [...edits].reverse().sort((a, b) => b.start - a.start || b.end - a.end)
    .reduce((out, { start, end, text: put }) => out.slice(0, start) + put + out.slice(end), text);
}

export const codesOf = (findings: readonly Finding[]): string[] => findings.map(({ code }) => code);
