import { AirframeService } from "../service";
import type { Mention } from "./references";
import { keyOf } from "./names/canonical";
import { occurrencesIn } from "./names/occurrences";

/** Would every name still mean what it means, with a new name written over these mentions? Tried out on texts of its own. */
export function keepsMeaning(service: AirframeService, mentions: readonly Mention[], to: string): boolean {
  const texts = new Map<string, string>();
  for (const { file, span } of [...mentions].sort((a, b) => b.span.start - a.span.start)) {
    const text = texts.get(file.uri) ?? file.parsed.text;
    texts.set(file.uri, text.slice(0, span.start) + to + text.slice(span.end));
  }
  const trial = new AirframeService({ text: (uri) => texts.get(uri) ?? service.parsed(uri)?.text });
  const pairs = new Pairs();
  return [...texts.keys()].every((uri) => {
    const before = meanings(service, uri);
    const after = meanings(trial, uri);
    return before.length === after.length && before.every((one, i) => one.type === after[i].type && pairs.fit(one.key, after[i].key));
  });
}

function meanings(service: AirframeService, uri: string): { readonly type: string; readonly key?: string }[] {
  const model = service.analysis(uri)?.model;
  return model ? occurrencesIn(model).map(({ meaning }) => ({ type: meaning.type, key: keyOf(meaning) })) : [];
}

/** Keys before and after: each must go with one of the other side, always the same. */
class Pairs {
  private readonly forth = new Map<string | undefined, string | undefined>();
  private readonly back = new Map<string | undefined, string | undefined>();

  fit(before: string | undefined, after: string | undefined): boolean {
    if (!this.forth.has(before)) this.forth.set(before, after);
    if (!this.back.has(after)) this.back.set(after, before);
    return this.forth.get(before) === after && this.back.get(after) === before;
  }
}
