import { expect, test } from "vitest";
import { statusText, statusTooltip } from "../../client/status-text";
import type { StatusParams } from "../../shared/protocol";

const status: StatusParams = {
  uri: "file:///plover.airframe", version: 3, loading: "survey", loadings: ["survey", "ferry"],
  mass: { text: "2.31 kg ± 0.02 kg" }, staticMargin: { text: "11 %" }, thrustToWeight: { text: "0.82" }, state: "ok",
};

test("the headline is one line of what there is", () => {
  expect(statusText(status)).toBe("survey · 2.31 kg · margin 11 % · T/W 0.82");
  const glider: StatusParams = { uri: status.uri, version: 1, loading: "all", loadings: ["all"], mass: { text: "755 g" }, state: "warning" };
  expect(statusText(glider)).toBe("$(warning) all · 755 g");
  expect(statusText({ ...status, state: "working" })).toMatch(/^\$\(sync~spin\) survey/);
});

test("the tooltip says the figures in words and offers the other loadings", () => {
  const tooltip = statusTooltip(status);
  expect(tooltip).toContain("| Mass | 2.31 kg ± 0.02 kg |");
  expect(tooltip).toContain("| Static margin | 11 % |");
  expect(tooltip).toContain("Other loadings: ferry.");
  expect(statusTooltip({ ...status, loadings: ["survey"] })).not.toContain("Other");
});

test("names can't bring markup into the tooltip", () => {
  expect(statusTooltip({ ...status, loading: "a_b_c", loadings: ["a_b_c", "[x](command:y)"] }))
    .toContain("Other loadings: \\[x\\]\\(command:y\\)");
});
