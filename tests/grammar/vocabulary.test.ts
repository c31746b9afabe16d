import { describe, expect, it } from "vitest";
import { nearest } from "../../grammar/nearest";
import { parse } from "../../grammar/parse";
import { keywordNames } from "../../grammar/tokens";
import type { BlockNode, ValueNode } from "../../grammar/tree";
import { findUnit } from "../../grammar/units/units";
import { findProperty, functions, keywords, kinds, kindsWithin, reserved, statements, usualKind, usualProperty, usualWord } from "../../grammar/vocabulary";
import { describeDefault, describeForm, describePlace } from "../../grammar/vocabulary/describe";
import { judge } from "../../grammar/vocabulary/property";
import { wordsOfForm, type Property } from "../../grammar/vocabulary/schema";
import { synonymGroups } from "../../grammar/vocabulary/synonyms";
import { plainValue } from "./plain-value";
import { computed, laterKinds, laterProperties, promised } from "./promised";

const every = Object.values(kinds).flatMap((kind) => Object.values(kind.properties).map((property) => [`${kind.name}.${property.name}`, property] as const));

/** The value node of `name = text`, or undefined if that doesn't parse cleanly. */
function valueOf(name: string, text: string): ValueNode | undefined {
  const { tree, issues } = parse(`item x { ${name} = ${text} }`);
  const entry = (tree.items[0] as BlockNode).body?.items[0];
  return issues.length === 0 && entry?.type === "entry" ? entry.value : undefined;
}

describe("kinds", () => {
  it.each(Object.values(kinds).map((kind) => [kind.name, kind] as const))("%s is told, and its example parses", (name, kind) => {
    expect(kind.text).toMatch(/^[A-Z].*\.$/);
    const { tree, issues } = parse(kind.example);
    expect(issues).toEqual([]);
    expect(tree.items).toHaveLength(1);
    expect(tree.items[0]).toMatchObject({ type: "block", kind: { text: name } });
    expect(kind.within.every((place) => place === "file" || kinds[place] !== undefined), describePlace(kind)).toBe(true);
  });

  it.each(Object.values(kinds).map((kind) => [kind.name, kind] as const))("%s shows in its example all that is needed, and nothing unknown", (_, kind) => {
    const whole = parse(kind.example).tree.items[0] as BlockNode;
    const check = (block: BlockNode): void => {
      const items = block.body?.items ?? [];
      const written = new Set(items.flatMap((item) => item.type === "entry" ? [item.path.names[0].text] : item.type === "block" ? [item.kind.text] : []));
      const own = kinds[block.kind.text];
      // A block in a loading only changes what it names.
      const needed = block === whole ? Object.values(own.properties) : [];
      for (const property of needed) {
        if (property.needed) expect(written.has(property.name) || property.unless.some((other) => written.has(other)), property.name).toBe(true);
      }
      for (const item of items) {
        if (item.type === "entry" && !own.open) expect(findProperty(own.name, item.path.names[0].text), item.path.names[0].text).toBeDefined();
        if (item.type !== "block") continue;
        expect(kindsWithin(own.name).map((kind) => kind.name)).toContain(item.kind.text);
        check(item);
      }
    };
    check(whole);
  });

  it("find nothing by a name every object has", () => {
    expect(kinds["constructor"]).toBeUndefined();
    expect(kinds.wing.properties["toString"]).toBeUndefined();
  });
});

describe("properties", () => {
  it.each(every)("%s is told, and its example fits", (_, property) => {
    expect(property.text).toMatch(/^[A-Z].*[.?]$/);
    expect(describeForm(property.form)).not.toBe("");
    const node = valueOf(property.name, property.example);
    expect(node, property.example).toBeDefined();
    const value = plainValue(node!, property.form);
    if (value) expect(judge(property, value)).toMatchObject({ fits: true });
    else expect(["reference", "outputs", "point", "names"]).toContain(property.form.form);
  });

  it.each(every.filter(([, property]) => property.default !== ""))("%s has a default that fits, or is in words", (_, property) => {
    const node = valueOf(property.name, property.default);
    const value = node && plainValue(node, property.form);
    expect(value ? judge(property, value).fits : inWords.has(property.default), property.default).toBe(true);
  });

  it("that take a unit offer one the language knows", () => {
    for (const [, { form }] of every) if (form.form === "quantity") expect(describeForm(form)).toMatch(/^(a|an) /);
  });

  it("that exclude or stand for each other exist", () => {
    for (const kind of Object.values(kinds)) {
      for (const name of kind.exclusive.flat()) expect(kind.properties[name], `${kind.name}.${name}`).toBeDefined();
      for (const { unless } of Object.values(kind.properties)) {
        for (const name of unless) expect(kind.properties[name] ?? kinds[name], `${kind.name}.${name}`).toBeDefined();
      }
      for (const { form } of Object.values(kind.properties)) {
        const named = form.form === "reference" || form.form === "outputs" ? form.kinds : [];
        for (const name of named) expect(name === "*" || kinds[name] !== undefined, name).toBe(true);
      }
    }
  });
});

/** Defaults that only people read; the model has them as rules. */
const inWords = new Set([
  "as its surface", "as the width", "as the strength", "by chemistry and capacity", "25 mm behind the hub, along the shaft",
  "by blade type and diameter", "1.2 × top speed; without a motor 3 × stall", "as the motor", "least drag, at least 1.3 × stall", "standard atmosphere", "as the airframe",
  "0 deg (a fin: 90 deg)", "the first loading", "best_climb at full throttle, best_glide gliding, else cruise",
]);

describe("what the language promises", () => {
  const pairs = Object.entries(promised).flatMap(([kind, names]) => names.map((name) => [kind, name] as const));

  it("has every kind, and no other", () => expect(Object.keys(kinds).sort()).toEqual(Object.keys(promised).sort()));

  it.each(pairs)("%s has %s", (kind, name) => expect(findProperty(kind, name)).toBeDefined());

  it("has no property besides", () => {
    for (const kind of Object.values(kinds)) expect(promised[kind.name], kind.name).toEqual(expect.arrayContaining(Object.keys(kind.properties)));
  });

  it("says which kinds are not computed yet", () => {
    expect(Object.values(kinds).filter((kind) => kind.later).map((kind) => kind.name).sort()).toEqual([...laterKinds].sort());
  });

  it.each(computed)("%s is computed", (path) => {
    const [kind, name] = path.split(".");
    expect(findProperty(kind, name)?.later, path).toBe(false);
  });

  it.each(laterProperties)("%s is not computed yet", (path) => {
    const [kind, name] = path.split(".");
    expect(findProperty(kind, name)?.later, path).toBe(true);
  });

  it("knows the functions, statements and words kept for later", () => {
    expect(Object.keys(functions).sort()).toEqual(["abs", "atan2", "cos", "flat", "max", "min", "naca", "point", "round", "sin", "sqrt", "tan"]);
    expect(Object.keys(statements)).toEqual(["use", "let", "require", "waive"]);
    expect([...reserved].sort()).toEqual(["float", "hook", "linkage"]);
    for (const word of reserved) expect(kinds[word]).toBeUndefined();
  });

  it.each(Object.entries(statements))("the example of %s parses", (_, { example }) => expect(parse(example).issues).toEqual([]));

  it.each(Object.entries(functions))("the example of %s parses", (name, { example, signature }) => {
    expect(valueOf("weight", example)).toMatchObject({ type: "named", path: { names: [{ text: name }] } });
    expect(signature.startsWith(`${name}(`)).toBe(true);
  });
});

describe("names", () => {
  it("has the keywords the parser has", () => expect(new Set(keywords)).toEqual(keywordNames));

  it("are no keywords", () => {
    for (const name of [...Object.keys(kinds), ...every.map(([, { name: own }]) => own), ...Object.keys(functions)]) expect(keywordNames.has(name), name).toBe(false);
  });

  it("are no units; a property may be, since `=` follows it", () => {
    for (const name of Object.keys(kinds)) expect(findUnit(name), name).toBeUndefined();
    expect(every.map(([, { name }]) => name).filter((name) => findUnit(name))).toEqual(["rpm"]);
  });
});

describe("the usual other names", () => {
  it.each([
    ["stab", "tailplane"], ["elevator_half", "tailplane"], ["elevator half", "tailplane"], ["airfoil", "foil"], ["section", "foil"],
    ["prop", "propeller"], ["lipo", "battery"], ["undercarriage", "gear"], ["ESC", "esc"], ["BEC", "supply"], ["motor_mount", "item"],
    ["canopy", "item"], ["Wing", "wing"], ["landing-gear", "gear"], ["airplane", "airframe"],
  ])("%s is a %s", (word, kind) => expect(usualKind(word)).toBe(kind));

  it.each([
    ["item", "mass", "weight"], ["propeller", "diam", "diameter"], ["motor", "amps", "max_current"], ["bench", "current", "amps"],
    ["wing", "airfoil", "foil"], ["panel", "root_chord", "chord"], ["panel", "span_range", undefined], ["aileron", "extent", "along"],
    ["fuselage", "position", "at"], ["spar", "od", "outer"], ["esc", "BEC", "bec"], ["panel", "Chord", "chord"], ["nothing", "mass", undefined],
  ] as const)("of a %s, %s is %s", (kind, word, name) => expect(usualProperty(kind, word)).toBe(name));

  it.each([["propeller", "rotation", "ccw", "anticlockwise"], ["battery", "chemistry", "LiPo", "lipo"], ["airframe", "class", "sailplane", "glider"]] as const)(
    "%s.%s: %s is %s", (kind, name, word, expected) => expect(usualWord(findProperty(kind, name)!, word)).toBe(expected));

  it("prefers what may stand there", () => {
    expect(usualKind("tube")).toBe("spar");
    expect(usualKind("weight", "file")).toBe("item");
  });

  it("lead to names that exist, from words that are none", () => {
    const properties = new Set([...every.map(([, { name }]) => name), "drop"]);
    const words = new Set(every.flatMap(([, { form }]) => wordsOfForm(form)));
    for (const [name, others] of Object.entries(synonymGroups.kinds)) {
      expect(kinds[name], name).toBeDefined();
      for (const other of others) expect(kinds[other], other).toBeUndefined();
    }
    for (const name of Object.keys(synonymGroups.properties)) expect(properties.has(name), name).toBe(true);
    for (const name of Object.keys(synonymGroups.words)) expect(words.has(name), name).toBe(true);
    for (const others of Object.values(synonymGroups).flatMap((groups) => Object.values(groups))) {
      for (const other of others) expect(other).toBe(other.toLowerCase());
    }
  });

  it("leave plain slips to the nearest word", () => {
    expect(usualKind("wimg")).toBeUndefined();
    expect(nearest("wimg", Object.keys(kinds))).toBe("wing");
  });
});

describe("words for people", () => {
  const said = (property: Property) => [describeForm(property.form), describeDefault(property)];

  it("say what a value is and what holds without it", () => {
    expect(said(findProperty("panel", "chord")!)).toEqual(["a length, or two with `to` between", "needed; later panels go on from the one before"]);
    expect(said(findProperty("battery", "cells")!)).toEqual(["a whole number", "needed, unless packs"]);
    expect(said(findProperty("wing", "mirror")!)).toEqual(["`yes` or `no`", "yes"]);
    expect(said(findProperty("aileron", "servo")!)).toEqual(["the name of a `servo`, or a list of them", ""]);
    expect(said(findProperty("propeller", "rotation")!)).toEqual(["one of `clockwise` `anticlockwise`", "clockwise"]);
    expect(describeForm(findProperty("esc", "bec")!.form)).toBe("the name of a `supply`");
    expect(describePlace(kinds.joint)).toBe("`spar`");
  });
});
