import { describe, expect, it } from "vitest";
import { parse } from "../../grammar/parse";
import type { BlockNode } from "../../grammar/tree";
import { clashingProperties, findProperty, judge, kinds, missingProperties } from "../../grammar/vocabulary";
import type { Value } from "../../grammar/vocabulary/value";
import { plainValue } from "./plain-value";

/** Judges `kind { name = text }` where text leans on nothing. */
function judged(path: string, text: string) {
  const [kind, name] = path.split(".");
  const property = findProperty(kind, name)!;
  const { tree, issues } = parse(`${kind} { ${name} = ${text} }`);
  expect(issues).toEqual([]);
  const entry = (tree.items[0] as BlockNode).body!.items[0];
  const value = entry.type === "entry" && entry.value ? plainValue(entry.value, property.form) : undefined;
  expect(value, text).toBeDefined();
  return judge(property, value!);
}

const named = (path: string, kind: string): Value => ({ form: "block", block: { path, kind, target: {} } });
const word = (text: string): Value => ({ form: "word", text });
const list = (...items: readonly Value[]): Value => ({ form: "list", items });

describe("what a property refuses, and why", () => {
  it.each([
    ["panel.span", "740", "takes a length and needs a unit, such as mm", "missing_unit"],
    ["panel.span", "740 g", "takes a length, not a weight", "wrong_dimension"],
    ["panel.span", "0 mm", "must be more than 0", "wrong_value"],
    ["panel.chord", "245 mm to 0 mm", "must be more than 0", "wrong_value"],
    ["panel.chord", "245 mm to 3 deg", "takes a length, not an angle", "wrong_dimension"],
    ["panel.chord", "yes", "takes a length, or two with `to` between", "wrong_value"],
    ["panel.chord", "100 mm .. 200 mm", "takes a length, or two with `to` between", "wrong_value"],
    ["panel.twist", "60 deg", "must lie between -45 deg and 45 deg", "wrong_value"],
    ["item.weight", "-3 g", "can't be negative", "wrong_value"],
    ["item.weight", "3 N", "takes a weight, not a force", "wrong_dimension"],
    ["bench.thrust", "900 g", "takes a force, not a weight", "wrong_dimension"],
    ["motor.kv", "780", "takes a speed per voltage and needs a unit, such as rpm/V", "missing_unit"],
    ["servo.torque", "3 kg", "takes a torque, not a weight", "wrong_dimension"],
    ["aileron.along", "8 %", "takes two values with `to` between, from inner to outer", "wrong_value"],
    ["aileron.along", "96 % to 8 %", "goes from inner to outer: the second must be more than the first", "wrong_value"],
    ["aileron.along", "50 % to 120 %", "must lie between 0 % and 100 %", "wrong_value"],
    ["aileron.chord", "0 %", "must be more than 0 % and at most 100 %", "wrong_value"],
    ["aileron.up", "-20 deg", "must lie between 0 deg and 90 deg; its name says which way", "wrong_value"],
    ["battery.cells", "3.5", "takes a whole number", "wrong_value"],
    ["battery.cells", "0", "must lie between 1 and 60", "wrong_value"],
    ["battery.chemistry", "lead", "is one of lipo, lihv, liion, life, nimh", "wrong_value"],
    ["battery.at", "95 mm", "takes a point, (x, y, z)", "wrong_value"],
    ["battery.at", "(95, 0 mm, 0 mm)", "takes lengths in its point: takes a length and needs a unit, such as mm", "missing_unit"],
    ["battery.size", "(95 mm, 0 mm, 30 mm)", "takes length, width and height, all more than 0", "wrong_value"],
    ["wing.mirror", "1", "is yes or no", "wrong_value"],
    ["airframe.datum", "3 mm", "takes text in quotes", "wrong_value"],
    ["material.softens_at", "900 degC", "must lie between 20 degC and 500 degC", "wrong_value"],
    ["air.altitude", "20 km", "must lie between -500 m and 11 km", "wrong_value"],
    ["panel.foil", 'naca("4412") to 3 %', 'takes naca("2412") or flat(3 %), or the name of a foil', "wrong_value"],
    ["foil.shape", "3 %", 'takes naca("2412") or flat(3 %)', "wrong_value"],
    ["wing.foil", "3 %", 'takes naca("2412") or flat(3 %), or the name of a foil', "wrong_value"],
    ["wing.foil", "flat(50 %)", "takes a thickness of at most 30 % of the chord in flat, such as flat(3 %)", "wrong_value"],
    ["wing.foil", "flat(3 mm)", "takes a thickness of at most 30 % of the chord in flat, such as flat(3 %)", "wrong_value"],
    ["wing.foil", 'naca("24")', 'takes four or five digits in naca, such as "2412" or "23012"', "wrong_value"],
    ["wing.foil", 'naca("2400")', 'has no thickness: the last two digits of "2400" are its per cent', "wrong_value"],
    ["wing.foil", 'naca("2012")', 'has no such section as naca("2012"): first the camber, then where it is greatest, both 0 or neither', "wrong_value"],
    ["wing.foil", 'naca("21112")', 'has no such section as naca("21112"): five digits begin like 230 or, with reflex, like 231', "wrong_value"],
  ])("%s = %s %s", (path, text, message, reason) => expect(judged(path, text)).toEqual({ fits: false, message, reason }));
});

describe("what a property gives back", () => {
  it.each([
    ["panel.span", "420 mm", { value: 0.42 }],
    ["panel.dihedral", "-3 deg", { value: (-3 * Math.PI) / 180 }],
    ["panel.chord", "245 mm", [{ value: 0.245 }, { value: 0.245 }]],
    ["panel.chord", "245 mm to 170 mm", [{ value: 0.245 }, { value: 0.17 }]],
    ["aileron.along", "0 % to 100 %", [{ value: 0 }, { value: 1 }]],
    ["aileron.along", "8 % .. 96 %", [{ value: 0.08 }, { value: 0.96 }]],
    ["battery.cells", "4", 4],
    ["battery.chemistry", "liion", "liion"],
    ["item.at", "(60 mm, 0 mm, -45 mm)", [{ value: 0.06 }, { value: 0 }, { value: -0.045 }]],
    ["wing.mirror", "no", false],
    ["airframe.datum", '"firewall"', "firewall"],
    ["wing.foil", 'naca("23112")', { form: "naca", digits: "23112" }],
    ["panel.foil", 'naca("4412") to naca("2412")', [{ digits: "4412" }, { digits: "2412" }]],
    ["panel.foil", 'naca("4412")', [{ digits: "4412" }, { digits: "4412" }]],
    ["wing.foil", "flat(3 %)", { form: "flat", thickness: { value: 0.03 } }],
  ])("%s = %s", (path, text, value) => {
    const found = judged(path, text);
    // Products of a typed number and a scale: some roundings of a double.
    const close = (x: unknown): unknown => typeof x === "number" && !Number.isInteger(x) ? expect.closeTo(x, 12)
      : Array.isArray(x) ? x.map(close)
      : typeof x === "object" && x !== null ? expect.objectContaining(Object.fromEntries(Object.entries(x).map(([k, v]) => [k, close(v)]))) : x;
    expect(found).toEqual({ fits: true, value: close(value) });
  });

  it("takes names of blocks of its kinds", () => {
    const battery = findProperty("powerplant", "battery")!;
    expect(judge(battery, named("pack", "battery"))).toMatchObject({ fits: true, value: { path: "pack" } });
    expect(judge(battery, named("ail", "servo"))).toMatchObject({ fits: false, message: "takes the name of a battery" });
    expect(judge(findProperty("wing", "foil")!, named("root", "foil"))).toMatchObject({ fits: true, value: { block: { path: "root" } } });
    expect(judge(findProperty("foil", "shape")!, named("root", "foil"))).toMatchObject({ fits: false });
  });

  it("takes one name or several where a list may stand", () => {
    const without = findProperty("loading", "without")!;
    expect(judge(without, named("camera", "item"))).toMatchObject({ fits: true, value: [{ path: "camera" }] });
    expect(judge(without, list(named("camera", "item"), named("main", "wing")))).toMatchObject({ fits: true, value: [{ path: "camera" }, { path: "main" }] });
    expect(judge(without, list(word("camera")))).toMatchObject({ fits: false });
    expect(judge(findProperty("battery", "packs")!, list(named("x", "item")))).toMatchObject({ fits: false, message: "takes the name of a battery" });
  });

  it("reads a receiver's outputs channel by channel", () => {
    const outputs = findProperty("receiver", "outputs")!;
    const [ail, esc] = [named("ail.left", "servo"), named("nose.esc", "esc")];
    expect(judge(outputs, list(ail, word("none"), list(ail, esc)))).toMatchObject({
      fits: true, value: [[{ path: "ail.left" }], [], [{ path: "ail.left" }, { path: "nose.esc" }]],
    });
    expect(judge(outputs, list(word("nothing")))).toMatchObject({ fits: false });
    expect(judge(outputs, ail)).toMatchObject({ fits: false });
  });

  it("reads the names a copy drops", () => {
    expect(judge(findProperty("wing", "drop")!, list(word("tip"), named("main.tube", "spar")))).toEqual({ fits: true, value: ["tip", "main.tube"] });
  });

  it("refuses what is no finite number", () => {
    const value: Value = { form: "quantity", quantity: { value: Infinity, dimension: [1, 0, 0, 0, 0, 0] } };
    expect(judge(findProperty("panel", "span")!, value)).toEqual({ fits: false, message: "is no finite number", reason: "wrong_value" });
  });
});

describe("what a block must and must not have", () => {
  const missing = (kind: string, written: readonly string[], goesOn = false) =>
    missingProperties(kinds[kind], new Set(written), goesOn).map(({ name }) => name);

  it.each<[string, readonly string[], readonly string[]]>([
    ["panel", [], ["span", "chord"]],
    ["wing", [], ["at"]],
    ["battery", ["at"], ["cells", "capacity"]],
    ["battery", ["packs"], []],
    ["fuselage", ["at", "station"], []],
    ["fuselage", ["at"], ["length", "width"]],
    ["station", ["x", "width"], []],
    ["station", ["radius"], ["chord", "angle"]],
    ["spar", ["material"], ["outer"]],
    ["station", [], ["x", "width"]],
    ["foil", [], ["shape"]],
    ["spar", ["material", "outer"], []],
    ["spar", ["material", "width"], ["height"]],
    ["motor", ["kv", "resistance"], []],
    ["propeller", [], ["diameter", "pitch"]],
    ["powerplant", [], ["at"]],
    ["elevator", ["all_moving"], []],
    ["foil", ["polar"], []],
    ["material", ["areal_density"], []],
  ])("%s with %j lacks %j", (kind, written, names) => expect(missing(kind, written)).toEqual(names));

  it("lets a later panel go on with the chord of the one before", () => expect(missing("panel", [], true)).toEqual(["span"]));

  it("allows one of each group only", () => {
    expect(clashingProperties(kinds.panel, new Set(["span", "sweep", "offset", "twist"]))).toEqual([["sweep", "offset"]]);
    expect(clashingProperties(kinds.panel, new Set(["sweep", "washout"]))).toEqual([]);
    expect(clashingProperties(kinds.spar, new Set(["outer", "inner", "wall"]))).toEqual([["inner", "wall"]]);
    expect(clashingProperties(kinds.battery, new Set(["packs", "cells"]))).toEqual([["cells", "packs"]]);
  });
});
