import { TextDocument } from "vscode-languageserver-textdocument";
import { describe as suite, expect, test } from "vitest";
import type { TextEdit } from "vscode-languageserver";
import { complete } from "../../../server/editor/completion/complete";
import { describe } from "../../../server/editor/completion/describe";
import { completionItems, type ItemData } from "../../../server/editor/completion/to-lsp";
import { kinds } from "../../../grammar/vocabulary";
import { parse } from "../../../grammar/parse";
import { plain } from "../../../server/report/card";
import { glider } from "./designs";
import { address, opened } from "./fixture";

/** What a snippet leaves when every tab stop is passed over; the last stop is the cursor. */
const passed = (snippet: string): string => snippet
  .replace(/\$\{\d+\|([^,|]*)[^|]*\|\}/g, "$1")
  .replace(/\$\{\d+:((?:[^}\\]|\\.)*)\}/g, "$1")
  .replace(/\$0/g, "|").replace(/\$\d/g, "")
  .replace(/\\([\\$}])/g, "$1");

function items(marked: string, snippets = true, files: Readonly<Record<string, string>> = {}, trigger?: string) {
  const { view, cursor } = opened(marked, files);
  const found = complete(view, cursor, trigger);
  return { view, list: found ? completionItems(view, found, snippets) : [] };
}

const labels = (marked: string, files?: Readonly<Record<string, string>>): string[] => items(marked, true, files).list
  .sort((a, b) => (a.sortText! < b.sortText! ? -1 : 1)).map((item) => item.label);

/** The text after the item of that label is taken. */
function taken(marked: string, label: string, snippets = true): string {
  const { view, list } = items(marked, snippets);
  const item = list.find((each) => each.label === label);
  if (!item) throw new Error(`no ${label} among ${list.map((each) => each.label).join(", ")}`);
  const edit = item.textEdit as TextEdit;
  const document = TextDocument.create(address, "airframe", 1, view.parsed.text);
  return TextDocument.applyEdits(document, [{ ...edit, newText: item.insertTextFormat === 2 ? passed(edit.newText) : edit.newText }]);
}

const within = (inner: string): string => glider.replace("  weight = 40 g\n", `${inner}\n`);

suite("entries", () => {
  test("at the top: statements and what stands in a file, no control surface", () => {
    const all = labels(`${glider}|`);
    expect(all).toEqual(expect.arrayContaining(["let", "require", "use", "waive", "wing", "powerplant", "loading"]));
    expect(all).not.toContain("elevator");
    expect(all).not.toContain("airframe");
  });

  test("a kind brings all it needs, and the text has nothing to complain of", () => {
    const text = taken(`${glider}\nfu|`, "fuselage");
    expect(text).toContain("fuselage hull {\n  at = (-40 mm, 0 mm, 0 mm)\n  length = 960 mm\n");
    const { view } = opened(text.replace("|", ""));
    const textual = ["syntax", "unknown_word", "misplaced", "missing_property", "missing_unit", "wrong_dimension", "wrong_value", "unknown_name"];
    expect(view.analysis.findings.filter(({ code }) => textual.includes(code))).toEqual([]);
  });

  test("every kind's snippet is text without a mistake", () => {
    for (const name of Object.keys(kinds)) {
      const place = kinds[name].within[0];
      const around = place === "file" ? "|" : `${place} x { | }`;
      const text = taken(around, name);
      expect(parse(text.replace("|", "")).issues, `${name}\n${text}`).toEqual([]);
    }
  });

  test("properties come with their unit, only those not written", () => {
    expect(taken(within("  |"), "weight")).toBe(within("  weight = 92 g"));
    expect(labels(within("  |"))).not.toContain("foil");
    expect(taken(within("  we|"), "weight", false)).toBe(within("  weight = "));
  });

  test("over the name of an entry that has its value, only the name is written", () => {
    expect(taken(within("  wei| = 40 g"), "weight")).toBe(within("  weight = 40 g"));
    expect(taken(within("  we|ihgt = 40 g"), "weight")).toBe(within("  weight = 40 g"));
  });

  test("what says the same thing another way is left out", () => {
    const text = glider.replace("dihedral = 6 deg }", "dihedral = 6 deg ; sweep = 3 deg ; | }");
    expect(labels(text)).not.toContain("offset");
    expect(labels(text)).toContain("twist");
  });

  test("what is needed comes first", () => {
    const all = labels("wing main { |\n}");
    expect(all[0]).toBe("at");
    expect(labels("motor { | }").slice(0, 2)).toEqual(["kv", "resistance"]);
  });

  test("a copy may drop children; their names are offered", () => {
    const text = `${glider}wing second from main { | }`;
    expect(labels(text)).toContain("drop");
    expect(labels(`${glider}wing second from main { drop = [|] }`)).toEqual(["inner", "tip"]);
  });

  test("a loading offers the parts of the design to be changed", () => {
    expect(taken(glider.replace("with = [camera] }", "with = [camera] ; ba| }"), "battery pack"))
      .toBe(glider.replace("with = [camera] }", "with = [camera] ; battery pack { | } }"));
  });

  test("a missing brace above doesn't hide the top", () => {
    const text = glider.replace("chord = 110 mm to 90 mm }\n}", "chord = 110 mm to 90 mm }\n").replace("loading bare { }", "lo|");
    expect(labels(text)).toContain("loading");
  });

  test("an open bracket above costs nothing below it", () => {
    expect(labels("wing main {\n  at = (1 mm, 2 mm\n  in|\n}")).toContain("incidence");
    expect(labels("wing main {\n  at = (1 mm, 2 mm\n  incidence = 2 deg\n  panel a { sp| }\n}")).toContain("span");
  });
});

suite("values", () => {
  test("words of the property, and yes or no", () => {
    expect(labels(glider.replace("class = glider", "class = |"))).toContain("trainer");
    expect(labels(glider.replace("optional = yes", "optional = |"))).toEqual(["yes", "no"]);
    expect(taken(glider.replace("class = glider", "class = mo|"), "motor_glider")).toBe(glider.replace("class = glider", "class = motor_glider"));
  });

  test("units that fit stand before the others", () => {
    expect(labels(glider.replace("500 mm", "500 |")).slice(0, 5)).toEqual(["mm", "cm", "m", "in", "ft"]);
    expect(labels(glider.replace("12 g ;", "12 |;")).slice(0, 4)).toEqual(["g", "kg", "oz", "lb"]);
    expect(labels(glider.replace("2 kgf*cm", "2 |"))[0]).toBe("kgf*cm");
    expect(taken(glider.replace("500 mm", "500 m|"), "mm")).toBe(glider);
    expect(labels(glider.replace("(300 mm,", "(300 |,"))[0]).toBe("mm");
  });

  test("a number alone is left alone: no list opens while digits are typed", () => {
    expect(labels(glider.replace("500 mm", "50|"))).toEqual([]);
    expect(labels(glider.replace("cells = 2", "cells = 2 |"))).toEqual([]);
  });

  test("a compound unit goes on where it stands", () => {
    expect(taken(`${glider}require wing.loading < 30 g/d|`, "g/dm^2")).toBe(`${glider}require wing.loading < 30 g/dm^2`);
    expect(taken(glider.replace("2 kgf*cm", "2 kgf*|"), "kgf*cm")).toBe(glider);
  });

  test("blocks that fit a reference, each side of a mirrored one", () => {
    const twin = "servo ail { weight = 9 g ; at = (0 mm, 100 mm, 0 mm) ; mirror = yes }\nreceiver rx { outputs = [|] ; weight = 5 g ; at = (0 mm, 0 mm, 0 mm) }";
    expect(labels(twin)).toEqual(["ail", "ail.right", "ail.left", "none"]);
    expect(labels(`${glider}powerplant nose { battery = | }`)).toEqual(["pack"]);
    expect(taken(`${glider}servo a { at = point(ma|, 70 %, 35 %) }`, "main")).toBe(`${glider}servo a { at = point(main, 70 %, 35 %) }`);
  });

  test("named values of the right dimension, not of another", () => {
    const text = `let heavy = 3 kg\nlet tall = 2 m\n${glider.replace("span = 500 mm", "span = |")}`;
    expect(labels(text)).toContain("tall");
    expect(labels(text)).not.toContain("heavy");
  });

  test("after a dot: values and children of a block, coordinates of a point", () => {
    expect(labels(`${glider}let x = main.|`)).toEqual(expect.arrayContaining(["span", "area", "mean_chord", "inner", "tip"]));
    expect(labels(`${glider}let p = point(main, 0 %, 0 %)\nlet x = p.|`)).toEqual(["x", "y", "z"]);
    expect(taken(`${glider}let x = main.sp|`, "span")).toBe(`${glider}let x = main.span`);
  });

  test("sections: calls and foils", () => {
    const text = `foil thin { shape = naca("0006") }\n${glider.replace('naca("2410")', "|")}`;
    expect(labels(text)).toEqual(["naca", "thin", "flat"]);
    expect(taken(glider.replace('naca("2410")', "na|"), "naca")).toBe(glider.replace('naca("2410")', 'naca("2412")'));
  });

  test("what can be copied, here and in another file", () => {
    expect(labels(`${glider}wing b from |`)).toEqual(["main"]);
    const files = { "other.airframe": glider };
    expect(labels('use "other.airframe" as single\nwing b from |', files)).toEqual(["single"]);
    expect(labels('use "other.airframe" as single\nwing b from single.|', files)).toEqual(["main"]);
  });

  test("nothing in a comment or in quotes", () => {
    expect(labels(`${glider}# wi|`)).toEqual([]);
    expect(labels(glider.replace('naca("2410")', 'naca("24|")'))).toEqual([]);
  });
});

suite("figures", () => {
  test("in require: figures with their values, loadings, what goes on", () => {
    expect(labels(`${glider}require |`)).toEqual(expect.arrayContaining(["mass.total", "stability.static_margin", "filming", "abs"]));
    expect(taken(`${glider}require stability.sta|`, "stability.static_margin")).toBe(`${glider}require stability.static_margin`);
    expect(taken(`${glider}require filming.cg|`, "cg.x")).toBe(`${glider}require filming.cg.x`);
    expect(taken(`${glider}require fil|`, "filming")).toBe(`${glider}require filming.`);
    expect(labels(`${glider}require cg.x |`)).toEqual(["within"]);
    expect(labels(`${glider}require cg.x < 3 mm |`)).toEqual(["for", "because"]);
    expect(labels(`${glider}require cg.x < 3 mm for |`)).toEqual(["bare", "filming"]);
    expect(labels(`${glider}require wing.loading < 75 |`)[0]).toBe("g/dm^2");
  });

  test("in weighed: figures as entries", () => {
    expect(taken(`${glider}weighed { mass.to| }`, "mass.total")).toBe(`${glider}weighed { mass.total =  }`);
    expect(labels(`${glider}weighed { mass.total = 300 | }`)[0]).toBe("g");
  });
});

test("checks by their codes, in waive and in limits, and what a threshold is written in", () => {
  expect(labels(`${glider}waive |`)).toContain("cg_aft_of_limit");
  expect(labels(`${glider}waive cg_aft_of_limit |`)).toEqual(["because"]);
  expect(taken(`${glider}limits { cg_a| }`, "cg_aft_of_limit")).toBe(`${glider}limits { cg_aft_of_limit =  }`);
  expect(labels(`${glider}limits { cg_aft_of_limit = 8 % ; | }`)).not.toContain("cg_aft_of_limit");
  expect(labels(`${glider}limits { cg_aft_of_limit = 8 | }`)[0]).toBe("%");
});

test("a list nobody asked for opens only where something is missing that people look for in a list", () => {
  const opens = (marked: string, trigger = " "): boolean => items(marked, true, {}, trigger).list.length > 0;
  expect(opens(glider.replace("class = glider", "class = |"))).toBe(true);
  expect(opens(glider.replace("500 mm", "500 |"))).toBe(true);
  expect(opens(`${glider}require |`)).toBe(true);
  expect(opens(`${glider}waive |`)).toBe(true);
  expect(opens(`${glider}wing b from |`)).toBe(true);
  expect(opens(`${glider}let x = main.|`, ".")).toBe(true);
  // Enter must end the line here.
  expect(opens(`${glider}|`)).toBe(false);
  expect(opens(`${glider}wing |`)).toBe(false);
  expect(opens(glider.replace("chord = 180 mm }", "chord = 180 mm | }"))).toBe(false);
  expect(opens(`${glider}let n = 5 |`)).toBe(false);
  expect(opens(`${glider}loads { positive_g = 6 | }`)).toBe(false);
  expect(opens(glider.replace("span = 500 mm", "span = |"))).toBe(false);
  expect(opens(glider.replace("(180 mm,", "(180 mm,|"), ",")).toBe(false);
});

test("an item tells what it is when it is looked at", () => {
  const { view, list } = items(within("  |"));
  const topic = (list.find((item) => item.label === "weight")!.data as ItemData).topic;
  expect(plain(describe(view, topic)!)).toContain("The whole surface as weighed");
});

test("no place in a design, cut anywhere, breaks it", () => {
  for (let end = 0; end < glider.length; end += 7) {
    const { view, cursor } = opened(`${glider.slice(0, end)}|`);
    expect(() => complete(view, cursor)).not.toThrow();
  }
}, 60_000);

test("in a sortie: legs, what a leg may be, and the words of its speed beside numbers", () => {
  expect(labels(`${glider}sortie day { | }`)).toEqual(expect.arrayContaining(["leg", "loading", "equipment"]));
  const leg = labels(`${glider}sortie day { leg out { | } }`);
  expect(leg[0]).toBe("time");
  expect(labels(`${glider}sortie day { leg out { time = 1 min ; | } }`)).not.toContain("distance");
  expect(labels(`${glider}let fast = 12 m/s\nsortie day { leg out { speed = | } }`)).toEqual(expect.arrayContaining(["best_range", "cruise", "fast"]));
  expect(labels(`${glider}sortie day { loading = | }`)).toEqual(["bare", "filming"]);
});
