/** A place as editors count it: both from 0, `character` in UTF-16 units. */
export interface Position {
  readonly line: number;
  readonly character: number;
}

/** Offsets at which the lines begin. `\n`, `\r\n` and a lone `\r` each end one. */
export function lineStarts(text: string): readonly number[] {
  const starts = [0];
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i);
    if (code === 10 || (code === 13 && text.charCodeAt(i + 1) !== 10)) starts.push(i + 1);
  }
  return starts;
}

/** The line an offset stands in. */
export function lineAt(starts: readonly number[], offset: number): number {
  let low = 0;
  let high = starts.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (starts[middle] <= offset) low = middle;
    else high = middle - 1;
  }
  return low;
}

export function positionAt(starts: readonly number[], offset: number): Position {
  const line = lineAt(starts, offset);
  return { line, character: Math.max(0, offset - starts[line]) };
}

/** Where a line's own characters end, its line end left out. */
export function lineEnd(text: string, starts: readonly number[], line: number): number {
  let end = starts[line + 1] ?? text.length;
  if (line + 1 >= starts.length) return end;
  if (text[end - 1] === "\n") end--;
  if (text[end - 1] === "\r") end--;
  return Math.max(end, starts[line]);
}

/** The offset of a place; one past the end of a line or of the text is taken to be that end. */
export function offsetAt(text: string, starts: readonly number[], { line, character }: Position): number {
  if (line < 0) return 0;
  if (line >= starts.length) return text.length;
  return Math.min(starts[line] + Math.max(0, character), lineEnd(text, starts, line));
}
