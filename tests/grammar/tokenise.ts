import type { Rule } from "../../.scripts/generate/textmate";

/** Pieces of one line with their scope, `airframe` cut off; what no rule touches is left out. */
export type Coloured = readonly (readonly [text: string, scope: string])[];

const plain = (scope: string) => scope.replace(/\.airframe$/, "");

/**
 * Colours one line as a TextMate engine does with a flat grammar: at each place the rule that matches first wins, of
 * those the one listed first. Rules with begin and end are taken to end on the line.
 */
export function colour(line: string, rules: readonly Rule[]): Coloured {
  const out: [string, string][] = [];
  const compiled = rules.map((rule) => ({ rule, pattern: new RegExp(rule.match ?? rule.begin ?? "(?!)", "dgu") }));
  let at = 0;
  while (at < line.length) {
    const found = first(compiled, line, at);
    if (!found) break;
    const { rule, match } = found;
    let end = match.index + match[0].length;
    if (rule.begin) {
      const close = new RegExp(`(?:\\\\["\\\\]|(?!${rule.end!})[^])*(?:${rule.end!})`, "y");
      close.lastIndex = end;
      end = (close.exec(line)?.[0].length ?? line.length - end) + end;
    }
    if (rule.name) out.push([line.slice(match.index, end), plain(rule.name)]);
    for (const [group, { name }] of Object.entries(rule.captures ?? {})) {
      if (match[Number(group)]) out.push([match[Number(group)], plain(name)]);
    }
    at = end > at ? end : at + 1;
  }
  return out;
}

function first(compiled: readonly { rule: Rule; pattern: RegExp }[], line: string, at: number) {
  let best: { rule: Rule; match: RegExpExecArray } | undefined;
  for (const { rule, pattern } of compiled) {
    pattern.lastIndex = at;
    const match = pattern.exec(line);
    if (match && (!best || match.index < best.match.index)) best = { rule, match };
  }
  return best;
}
