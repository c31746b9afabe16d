import { expect, test } from "vitest";
import { generateDesign } from "../../.scripts/generate-design";
import { testService } from "../service";

const uri = "file:///generated.airframe";

test.each([150, 500, 5000])("a generated design of %i lines has as many and not one mistake", (lines) => {
  const text = generateDesign(lines);
  expect(text.split("\n").length - 1).toBe(lines);
  const service = testService();
  service.update({ uri, version: 1, text });
  const errors = service.analysis(uri)!.finishNow().findings.filter((each) => each.severity === "error");
  expect(errors.map((each) => `${each.code}: ${each.message}`)).toEqual([]);
}, 60_000);
