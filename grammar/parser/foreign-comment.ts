import type { IToken } from "chevrotain";
import { endOf } from "../tokens";
import type { SyntaxIssue } from "../tree";

/** What is said of `// …` and `/* … *\/`. Where something follows on the line, only a person can say where it goes. */
export function foreignComment(text: string, token: IToken): SyntaxIssue {
  const { startOffset: start, image } = token;
  const end = endOf(token);
  const sign = image.slice(0, 2);
  const issue = { start, end: start + 2, message: `a comment begins with #, not ${sign}` };
  if (!/^[ \t]*(?:\r|\n|$)/.test(text.slice(end, end + 200))) return issue;
  const lineEnd = text.includes("\r\n") ? "\r\n" : "\n";
  const inner = sign === "//" ? image.slice(2) : image.slice(2, -2);
  const lines = inner.trim().split(/[ \t]*(?:\r\n|\r|\n)[ \t*]*/);
  const written = lines.map((line) => `# ${line}`.trimEnd()).join(lineEnd);
  return { ...issue, fix: { title: "Write #", edits: [{ start, end, text: written }] } };
}
