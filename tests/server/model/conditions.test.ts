import { describe, expect, it } from "vitest";
import { testService } from "../../service";
import { resolved } from "./resolved";

const parts = "item a { weight = 100 g ; at = (10 mm, 0 mm, 0 mm) }\nitem b { weight = 100 g ± 6 g ; at = (30 mm, 0 mm, 0 mm) }\nloading both { }\nloading one { without = [b] }\n";

/** Codes, loadings and severities of what a condition gives. */
const judged = (condition: string, before = parts) => {
  const { findings } = resolved(`${before}require ${condition}`).analysis.finishNow();
  return findings.filter((f) => /^(require_|wrong_|unknown_|missing_unit|figure_absent)/.test(f.code)).map((f) => `${f.code} ${f.loading ?? ""}`.trim());
};

describe("a requirement", () => {
  it.each([
    ["mass.total < 300 g", []],
    ["mass.total <= 200 g for both", ["require_close both"]],
    ["mass.total < 200 g for both", ["require_failed both"]],
    ["mass.total > 100 g", ["require_failed one"]],
    ["mass.total >= 100 g", []],
    ["mass.total within 90 g .. 110 g", ["require_failed both"]],
    ["mass.total within 90 g .. 210 g for one", []],
    ["mass.total within 90 g .. 203 g", ["require_close both"]],
    // The same variable on both sides moves both: no band is left between them.
    ["mass.total > mass.b for both", []],
    ["mass.b <= mass.b for both", []],
    ["abs(one.cg.x - both.cg.x) < 15 mm", []],
    ["abs(one.cg.x - both.cg.x) < 5 mm", ["require_failed both"]],
    ["one.mass.total < mass.total for both", []],
    ["a.weight + 50 g > mass.total", ["require_failed both"]],
    ["cg.x / 1 m < 1.5 %", ["require_failed both"]],
    ["mass.nothing < 1 g", ["figure_absent"]],
    ["mass.b < 200 g", ["figure_absent"]],
    ["modes.roll.time < 1 s", ["figure_absent"]],
  ])("%s", (condition, found) => expect(judged(condition)).toEqual(found));

  it("is silent on figures that are still to come, and only on those", () => {
    const wing = 'wing main { at = (0 mm, 0 mm, 0 mm) ; foil = naca("2412") ; weight = 100 g ; panel p { span = 400 mm ; chord = 200 mm } }\n';
    const { analysis } = resolved(`${wing}require stability.static_margin > 500 %\nrequire mass.total < 1 g\nrequire stability.static_margn > 5 %`);
    const codes = () => analysis.findings.filter((f) => f.severity === "error").map((f) => f.code);
    expect(codes()).toEqual(["require_failed", "unknown_name"]);
    analysis.finishNow();
    expect(codes()).toEqual(expect.arrayContaining(["require_failed", "require_failed", "unknown_name"]));
  });

  it("a figure's name goes before a block's, a block's before a group still to come", () => {
    const modes = "item modes { weight = 1 g ; at = (0 mm, 0 mm, 0 mm) }\nitem cg { weight = 3 g ; at = (9 mm, 0 mm, 0 mm) }\n";
    expect(judged("modes.weight < 2 g", modes)).toEqual([]);
    expect(judged("cg.weight < 4 g", modes)).toEqual([]);
    expect(judged("cg.x < 1 mm", modes)).toEqual(["require_failed all"]);
  });

  it("can name the one loading of a design without any", () => {
    expect(judged("mass.total < 1 g for all", "item a { weight = 2 g ; at = (0 mm, 0 mm, 0 mm) }\n")).toEqual(["require_failed all"]);
  });

  it("says figure, limit and loading, with the band and the reason, in the units asked for", () => {
    const service = testService();
    service.update({ uri: "x", version: 1, text: `${parts}require mass.b < 3 oz because "hand launch"`, units: "imperial" });
    const failed = service.analysis("x")!.finishNow().findings.find((f) => f.code === "require_failed");
    expect(failed).toMatchObject({ severity: "error", figure: "mass.b", loading: "both" });
    expect(failed?.message).toBe("mass.b is 3.53 oz ± 0.21 oz in both; required is < 3 oz (hand launch)");
  });
});

describe("waivers", () => {
  const heavy = (waive: string, inner = "") => `item a { weight = 30 kg ; at = (0 mm, 0 mm, 0 mm) ${inner} }\n${waive}`;
  const codes = (text: string, files = {}) => resolved(text, files).analysis.finishNow().findings.map((f) => f.code);
  const code = "rule_mass";

  it("silence a check in the file or in the block they stand in; a reason is asked for", () => {
    expect(codes(heavy(""))).toContain(code);
    expect(codes(heavy(`waive ${code} because "flown abroad"`))).toEqual([]);
    expect(codes(heavy(`waive ${code}`))).toEqual(["waiver_without_reason"]);
    expect(codes(heavy(`waive ${code} because " "`))).toEqual(["waiver_without_reason"]);
  });

  it("that silence nothing are said, once all is known", () => {
    const { analysis } = resolved(`item a { weight = 3 g ; at = (0 mm, 0 mm, 0 mm) }\nwaive ${code} because "why not"`);
    expect(analysis.findings).toEqual([]);
    expect(analysis.finishNow().findings.map((f) => f.code)).toEqual(["waiver_without_effect"]);
  });

  it("come with a copy, and are judged in the file they stand in", () => {
    const files = { "other.airframe": "item a { waive rule_mass\n  weight = 3 g ; at = (0 mm, 0 mm, 0 mm) }" };
    expect(codes('use "other.airframe" as other\nitem a from other.a { }', files)).toEqual([]);
    expect(codes("item a { waive weight_missing because \"to come\" ; at = (0 mm, 0 mm, 0 mm) }\nitem b from a { }\nitem c { weight = 3 g ; at = (0 mm, 0 mm, 0 mm) }"))
      .toEqual([]);
  });
});

describe("limits and measured values", () => {
  it("are read with their dimension", () => {
    const limited = (limits: string) => resolved(`item a { weight = 6 kg ; at = (0 mm, 0 mm, 0 mm) }\nlimits { ${limits} }`).mistakes();
    expect(limited("cg_aft_of_limit = 3 %")).toEqual([]);
    expect(limited("cg_aft_of_limit = 3 mm")).toEqual(['wrong_dimension at "3 mm"']);
  });

  it("weighed names figures, of parts that weigh too, and those still to come", () => {
    const weighed = (values: string) => resolved(`item a { weight = 6 g ; at = (0 mm, 0 mm, 0 mm) }\nloading l { }\nweighed { date = "spring" ; loading = l ; ${values} }`).mistakes();
    expect(weighed("mass.total = 7 g ; mass.a = 6 g ± 1 g ; cg.x = 3 mm ; modes.roll.time = 3 s ; power.static_thrust = 9 N")).toEqual([]);
    expect(weighed("mass.c = 7 g")).toEqual(['unknown_name at "mass.c"']);
    expect(weighed("weight = 7 g")).toEqual(['unknown_name at "weight"']);
    expect(weighed("mass.a = 7")).toEqual(['missing_unit at "7"']);
  });
});
