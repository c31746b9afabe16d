import { expect, test } from "vitest";
import { TextDocument } from "vscode-languageserver-textdocument";
import { formatEdits } from "../../../server/editor/format";
import { address, opened } from "./fixture";

const untidy = "let  arm=1 m\nlet  leg=2 m\nlet  toe=3 m\n";

test("the whole text, or only the lines that are asked for", () => {
  const { view } = opened(untidy);
  const after = (line?: number): string => {
    const range = line === undefined ? undefined : { start: { line, character: 0 }, end: { line, character: 5 } };
    return TextDocument.applyEdits(TextDocument.create(address, "airframe", 1, untidy), formatEdits(view, range));
  };
  expect(after()).toBe("let arm = 1 m\nlet leg = 2 m\nlet toe = 3 m\n");
  expect(after(1)).toBe("let  arm=1 m\nlet leg = 2 m\nlet  toe=3 m\n");
});
