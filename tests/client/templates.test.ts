import { readdirSync, readFileSync } from "node:fs";
import { resolve } from "node:path";
import { expect, test } from "vitest";
import { testService } from "../service";

const folder = resolve(import.meta.dirname, "../../client/templates");
const templates = readdirSync(folder).filter((name) => name.endsWith(".airframe"));

test.each(templates)("%s is a sound design: no error, no warning", (name) => {
  const uri = `file:///${name}`;
  const service = testService();
  service.update({ uri, version: 1, text: readFileSync(resolve(folder, name), "utf8") });
  const findings = service.analysis(uri)!.finishNow().findings;
  expect(findings.filter((each) => each.severity !== "hint").map((each) => `${each.code}: ${each.message}`)).toEqual([]);
});

test("each is offered by the command, and stands alone", () => {
  const command = readFileSync(resolve(folder, "../new-design.ts"), "utf8");
  expect(templates.length).toBeGreaterThan(0);
  for (const name of templates) {
    expect(command).toContain(`"./templates/${name}"`);
    expect(readFileSync(resolve(folder, name), "utf8")).not.toMatch(/^use /m);
  }
});
