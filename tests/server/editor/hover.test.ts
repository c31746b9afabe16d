import { expect, test } from "vitest";
import { hover } from "../../../server/editor/hover/hover";
import { markdown, plain } from "../../../server/report/card";
import { glider } from "./designs";
import { opened } from "./fixture";

/** The plain text told at the cursor; empty where there is nothing to tell. */
function told(marked: string, loading = "", files: Readonly<Record<string, string>> = {}): string {
  const { view, cursor } = opened(marked, files, loading);
  const found = hover(view, cursor);
  return found ? plain(found.card) : "";
}

const at = (from: string, to: string): string => {
  if (!glider.includes(from)) throw new Error(`no ${from}`);
  return glider.replace(from, to);
};

test("a kind: what it is, with an example", () => {
  expect(told(at("wing main", "w|ing main"))).toContain("A lifting surface that counts in wing area");
});

test("a property: meaning, what it takes, its value here", () => {
  const text = told(at("at = (180 mm + arm", "a|t = (180 mm + arm"));
  expect(text).toContain("The leading edge at the root");
  expect(text).toContain("here    (820 mm, 0 mm, 20 mm)");
});

test("a flag and a word tell of their property", () => {
  expect(told(at("optional = yes", "optional = y|es"))).toContain("`optional` of item");
  expect(told(at("class = glider", "class = gl|ider"))).toContain("What kind of model it is");
});

test("what is not computed yet says so", () => {
  expect(told(`${glider}air { wi|nd = 4 m/s }`)).toContain("Not computed yet");
  expect(told("flo|at x { }")).toContain("is reserved for later");
});

test("a number in other units, and with its band", () => {
  expect(told(at("500 mm", "5|00 mm"))).toContain("= 50.0 cm   = 19.7 in   = 1.64 ft");
  const text = told(at("260 g ±", "26|0 g ±"));
  expect(text).toContain("= 9.17 oz");
  expect(text).toContain("From 254 g to 266 g, ± 2.3 % of the value");
});

test("a share as tolerance says what it comes to", () => {
  expect(told(at("260 g ± 6 g", "260 g ± 1|0 %"))).toContain("From 234 g to 286 g");
});

test("a temperature has the sign before it", () => {
  expect(told(`${glider}air { temperature = -1|0 degC }`)).toContain("= 14.0 degF");
});

test("a block: every figure there is of it, in the loading shown", () => {
  const text = told(at("wing main", "wing m|ain"), "filming");
  expect(text).toContain("In loading filming");
  expect(text).toMatch(/weight +260 g ± 6 g/);
  expect(text).toMatch(/span +1597 mm/);
  expect(text).toMatch(/mean chord +170 mm/);
  // The camera is aboard in one loading only.
  expect(told(at("item camera", "item cam|era"), "filming")).toMatch(/weight +90 g/);
  expect(told(at("item camera", "item cam|era"), "bare")).not.toMatch(/weight +90 g/);
});

test("a loading: its headline", () => {
  expect(told(at("loading filming", "loading film|ing"))).toMatch(/Weight +567 g ± 6 g/);
});

test("a figure: its value in each loading, and how it comes about", () => {
  const text = told(`${glider}require wing.loa|ding < 30 g/dm^2`);
  expect(text).toMatch(/bare +17.\d+ g\/dm\^2 ± 0.2\d g\/dm\^2/);
  expect(text).toMatch(/filming +21.\d+ g\/dm\^2/);
  expect(text).toContain("How (bare): mass.total / wing.area");
  expect(text).toMatch(/mass\.total +477 g ± 6 g/);
  expect(text).toContain("Source: ");
});

test("a figure of another loading is told for that loading", () => {
  expect(told(`${glider}require filming.wing.loa|ding < 30 g/dm^2`)).toContain("How (filming)");
});

test("a figure that isn't there says why", () => {
  expect(told(`${glider}require power.static_th|rust > 2 N`)).toContain("there is no powerplant in this loading");
});

test("the part in a figure's name is told as the figure", () => {
  expect(told(`${glider}require mass.ma|in < 1 kg`)).toContain("Weight of a part");
});

test("a let: its value, where it is named and where it is used", () => {
  expect(told(at("let arm", "let a|rm"))).toContain("= 640 mm");
  expect(told(at("+ arm", "+ a|rm"))).toContain("= 640 mm");
});

test("a reference tells what it points at", () => {
  expect(told(at("[camera]", "[cam|era]"))).toContain("item `camera`");
  expect(told(`${glider}let x = main.sp|an\nrequire x > 1 m`)).toContain("= 1597 mm");
});

test("functions and keywords", () => {
  expect(told(at('naca("2410")', 'na|ca("2410")'))).toContain("A section by its four or five NACA digits");
  expect(told(`${glider}req|uire cg.x > 0 mm`)).toContain("States what must hold");
});

test("a check: when it fires, and what its threshold is by", () => {
  const text = told(`${glider}waive cg_aft|_of_limit because "it is ballasted"`);
  expect(text).toContain("check `cg_aft_of_limit`");
  expect(text).toContain("threshold");
  expect(told(`${glider}limits { cg_aft|_of_limit = 8 % }`)).toContain("check `cg_aft_of_limit`");
});

test("a used file, by its name and by the name it is given", () => {
  const files = { "other.airframe": glider };
  expect(told('use "other.airframe" as sin|gle', "", files)).toContain("Wheatear");
  expect(told('use "oth|er.airframe" as single', "", files)).toContain("`main`");
  expect(told('use "other.airframe" as single\nwing b from single.ma|in', "", files)).toContain("wing `main`");
});

test("nothing between words, in comments, in half-typed text", () => {
  expect(told(at("let arm", "|  let arm"))).toBe("");
  expect(told(`${glider}# wi|ng`)).toBe("");
  for (let end = 3; end < glider.length; end += 11) expect(() => told(`${glider.slice(0, end)}|`)).not.toThrow();
}, 60_000);

test("markdown: a table, and signs of its own kept from working", () => {
  const { view, cursor } = opened(at("wing main", "wing m|ain"));
  expect(markdown(hover(view, cursor)!.card)).toContain("| | |\n|---|---|\n| weight | 260 g ± 6 g |");
  expect(markdown({ title: "a `b_c` *d*", parts: ["_x_ [y] 2 kgf*cm a_b", { rows: [["p|q", "1"]] }] }))
    .toBe("**a `b_c` \\*d\\***\n\n\\_x\\_ \\[y] 2 kgf\\*cm a_b\n\n| | |\n|---|---|\n| p\\|q | 1 |");
});

test("a sortie tells what it takes, a leg what its words mean", () => {
  const text = `${glider}sortie day { leg down { glide = yes ; height = 50 m ; speed = best_glide } }
`;
  expect(told(text.replace("sortie day", "sortie d|ay"))).toMatch(/time {2,}\d/);
  expect(told(text.replace("best_glide", "best|_glide"))).toContain("or cruise, best_range, best_endurance");
  expect(told(text.replace("leg down", "l|eg down"))).toContain("A steady piece of a flight");
});
