import { resolve } from "node:path";
import { ESLint } from "eslint";
import { expect, test } from "vitest";

const root = resolve(import.meta.dirname, "../..");
const eslint = new ESLint({ cwd: root, overrideConfigFile: resolve(root, ".eslint.config.mjs") });

async function arrows(file: string, code: string): Promise<readonly string[]> {
  const [result] = await eslint.lintText(code, { filePath: resolve(root, file) });
  return result.messages.filter((each) => each.ruleId === "sparwright/arrows").map((each) => each.message);
}

test.each([
  ["grammar/parse.ts", 'export * from "../server/service";', "server/service"],
  ["shared/finding.ts", 'export type { X } from "../client/start";', "client/start"],
  ["server/compute/mass/whole.ts", 'import { x } from "../../model/model"; x();', "server/model/model"],
  ["server/compute/mass/whole.ts", 'import { x } from "../../../grammar/tree"; x();', "grammar/tree"],
  ["server/compute/mass/whole.ts", 'import { x } from "node:fs"; x();', "node:fs"],
  ["server/model/model.ts", 'import { x } from "../figures/mass"; x();', "server/figures/mass"],
  ["server/figures/mass.ts", 'import { x } from "../checks/check"; x();', "server/checks/check"],
  ["server/main.ts", 'import { x } from "./cli/main"; x();', "server/cli/main"],
  ["client/start.ts", 'import { x } from "../server/service"; x();', "server/service"],
  ["client/start.ts", 'void import("../grammar/parse");', "grammar/parse"],
])("%s may not say %s", async (file, code, target) => {
  const said = await arrows(file, code);
  expect(said).toHaveLength(1);
  expect(said[0]).toContain(target);
});

test.each([
  ["server/compute/mass/whole.ts", 'import type { Design } from "../../model/design/design"; export type X = Design;'],
  ["server/compute/mass/whole.ts", 'import { x } from "../constants"; x();'],
  ["server/figures/mass.ts", 'import { x } from "../compute/mass/whole"; x();'],
  ["client/start.ts", 'import { x } from "../shared/protocol"; x();'],
  ["server/main.ts", 'import { x } from "vscode-languageserver/node"; x();'],
])("%s may say %s", async (file, code) => {
  expect(await arrows(file, code)).toEqual([]);
});
