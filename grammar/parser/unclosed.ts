/** Where in a line a string without its second quote most likely ends: before the block or the entry that follows. */
const follows = /[ \t]*(?:\{|;[ \t]*[A-Za-z][\w.]*[ \t]*=)/;
/** A quote that ends just after `=` is the first one of the next string: the one before it is missing. */
const nextOpens = /[;{][^;{]*=[ \t]*$/;

/**
 * The string at `offset` if it is not closed on its line, else nothing. It ends with its line, short of what can be
 * told to follow it, and of the `}` that close blocks opened on that line.
 */
export function unclosedString(text: string, offset: number): [string] | null {
  if (text[offset] !== '"') return null;
  let end = offset + 1;
  while (end < text.length && !/["\r\n]/.test(text[end])) end += /\\["\\]/.test(text.slice(end, end + 2)) ? 2 : 1;
  const inner = text.slice(offset + 1, end);
  if (text[end] === '"' && !nextOpens.test(inner)) return null;
  let rest = inner.trimEnd();
  const cut = follows.exec(rest)?.index;
  if (cut !== undefined) return [`"${rest.slice(0, cut)}`];
  const before = /[^\r\n]*$/.exec(text.slice(Math.max(0, offset - 2000), offset))?.[0] ?? "";
  for (let open = before.split("{").length - before.split("}").length; open > 0 && rest.endsWith("}"); open--) {
    rest = rest.slice(0, -1).trimEnd();
  }
  return [`"${rest}`];
}
