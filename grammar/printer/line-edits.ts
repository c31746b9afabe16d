import { lineStarts } from "../positions";
import type { TextEdit } from "../tree";

/** What formatting may write in another way, as it is counted. */
const written: Readonly<Record<string, string>> = { "°": "deg", "º": "deg", "℃": "degC", "℉": "degF", "Ω": "ohm", "\u2126": "ohm", "²": "^2", "³": "^3" };

/** How many characters up to each line's end formatting keeps: not spaces, not `;`, not a list's last comma. */
function kept(text: string, starts: readonly number[]): number[] {
  let count = 0;
  return starts.map((start, i) => {
    const line = text.slice(start, starts[i + 1]);
    count += line.replace(/\+[-−]/g, "±").replace(/[\s;,\uFEFF]/g, "").replace(/[°º℃℉Ω\u2126²³]/g, (sign) => written[sign]).length;
    return count;
  });
}

/**
 * Edits of whole lines that make one text of the other, where both hold the same but for layout: lines are matched by
 * how much of the content stands before them, so this is linear in the texts' length.
 */
export function lineEdits(before: string, after: string): TextEdit[] {
  if (before === after) return [];
  const [old, now] = [lineStarts(before), lineStarts(after)];
  const [oldKept, nowKept] = [kept(before, old), kept(after, now)];
  const edits: TextEdit[] = [];
  let [i, j] = [0, 0];
  let [from, to] = [0, 0];
  const close = (): void => {
    const [start, end] = [old[from] ?? before.length, old[i] ?? before.length];
    const text = after.slice(now[to] ?? after.length, now[j] ?? after.length);
    if (before.slice(start, end) !== text) edits.push({ start, end, text });
    [from, to] = [i, j];
  };
  while (i < old.length && j < now.length) {
    if (before.slice(old[i], old[i + 1]) === after.slice(now[j], now[j + 1]) && oldKept[i] === nowKept[j]) {
      close();
      [i, j] = [i + 1, j + 1];
      [from, to] = [i, j];
    } else if (oldKept[i] === nowKept[j]) {
      [i, j] = [i + 1, j + 1];
      close();
    } else if (oldKept[i] < nowKept[j]) i++;
    else j++;
  }
  [i, j] = [old.length, now.length];
  close();
  return edits;
}
