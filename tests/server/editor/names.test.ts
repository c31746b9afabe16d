import { expect, test } from "vitest";
import { TextDocument } from "vscode-languageserver-textdocument";
import { definition } from "../../../server/editor/definition";
import { highlights, references } from "../../../server/editor/references";
import { renameable, renamed, RenameRefusal } from "../../../server/editor/rename";
import { rangeOf } from "../../../server/lines";
import { address, marked, opened } from "./fixture";

/** All places of the name at the cursor must be those marked. */
function sameName(text: string): void {
  const { view, cursor, ranges, text: bare } = opened(text);
  expect(marked(bare, highlights(view, cursor).map((each) => each.range))).toBe(marked(bare, ranges));
}

test("a block, wherever it is named", () => {
  sameName(`wing «ma|in» { at = (0 mm, 0 mm, 0 mm) ; panel a { span = 1 m ; chord = 200 mm } }
let x = «main».span
servo s { weight = 9 g ; at = point(«main», 50 %, 30 %) }
require mass.«main» < 500 g and_more
wing copy from «main» { }
`.replace(" and_more", ""));
});

test("a let is not a block's child of the same name", () => {
  sameName(`let «sp|an» = 1 m
wing main { at = («span», 0 mm, 0 mm) ; panel a { span = «span» / 2 ; chord = 200 mm } }
let y = main.span
`);
});

test("a part and what changes it in a loading go by one name", () => {
  sameName(`battery «pack» { cells = 2 ; capacity = 800 mAh ; weight = 52 g ; at = (60 mm, 0 mm, 0 mm) }
item camera { weight = 90 g ; at = (90 mm, 0 mm, 0 mm) }
loading ferry { without = [camera] ; battery «pa|ck» { at = (70 mm, 0 mm, 0 mm) } }
loading bare { without = [«pack»] }
`);
});

test("a copied child, what changes it and what drops it", () => {
  sameName(`wing main { at = (0 mm, 0 mm, 0 mm) ; panel «t|ip» { span = 1 m ; chord = 200 mm } }
wing second from main { panel «tip» { span = 2 m } }
wing third from main { drop = [«tip»] }
wing fourth from second { panel «tip» { chord = 100 mm } }
`);
});

test("loadings in for, in figures and where they are declared", () => {
  sameName(`item a { weight = 90 g ; at = (90 mm, 0 mm, 0 mm) }
loading «fer|ry» { }
loading home { }
require mass.total < 1 kg for «ferry», home
require «ferry».mass.total - home.mass.total < 1 g
`);
});

test("a sortie and its loading, and a leg that a copy changes", () => {
  sameName(`item a { weight = 90 g ; at = (90 mm, 0 mm, 0 mm) }
loading «sur|vey» { }
sortie day { loading = «survey» ; leg out { time = 1 min } }
`);
  sameName(`loading survey { }
sortie «d|ay» { loading = survey ; leg out { time = 1 min } }
sortie far from «day» { leg out { time = 2 min } }
require flight.sortie.«day».charge_left > 40 % for survey
`);
  sameName(`sortie day { leg «o|ut» { time = 1 min } }
sortie far from day { leg «out» { time = 2 min } }
`);
});

test("sides of a mirrored block follow its name", () => {
  sameName(`servo «a|il» { weight = 9 g ; at = (0 mm, 100 mm, 0 mm) ; mirror = yes }
receiver rx { outputs = [«ail».left, «ail».right, none] ; weight = 5 g ; at = (0 mm, 0 mm, 0 mm) }
`);
});

const other = `let arm = 600 mm
wing main { at = (0 mm, 0 mm, 0 mm) ; panel a { span = 1 m ; chord = 200 mm } }
`;
const user = `use "other.airframe" as single
wing big from single.main { at = (single.arm, 0 mm, 0 mm) }
let x = single.main.span
`;

test("a name leads to its declaration, through a used file too", () => {
  const to = (text: string): string => {
    const { view, cursor } = opened(text, { "other.airframe": other });
    const found = definition(view, cursor);
    return found ? `${found.uri.split("/").at(-1)} ${found.range.start.line}:${found.range.start.character}` : "";
  };
  expect(to(user.replace("single.main {", "single.ma|in {"))).toBe("other.airframe 1:5");
  expect(to(user.replace("single.arm", "single.a|rm"))).toBe("other.airframe 0:4");
  expect(to(user.replace("from single", "from sin|gle"))).toBe("other.airframe 0:0");
  expect(to(user.replace("other.air", "oth|er.air"))).toBe("other.airframe 0:0");
  expect(to(`${other}let y = main.sp|an`)).toBe("design.airframe 1:5");
  expect(to(`${other}let y = main.a|t`)).toBe("design.airframe 1:12");
  expect(to("wing x { a|t = (0 mm, 0 mm, 0 mm) }")).toBe("design.airframe 0:9");
});

test("references across files, from either side", () => {
  const { view, cursor } = opened(user.replace("single.main {", "single.ma|in {"), { "other.airframe": other });
  const places = references(view, cursor, true).map(({ uri, range }) => `${uri.split("/").at(-1)} ${range.start.line}:${range.start.character}`);
  expect(places.sort()).toEqual(["design.airframe 1:21", "design.airframe 2:15", "other.airframe 1:5"]);
  expect(references(view, cursor, false)).toHaveLength(2);
});

test("a design that uses this one is looked into when it is named", () => {
  const { service, view, cursor } = opened(other.replace("let arm", "let ar|m"), { "user.airframe": user.replace("other", "design") });
  void service;
  const all = references(view, cursor, true, ["file:///field/user.airframe"]);
  expect(all.map(({ uri }) => uri.split("/").at(-1))).toEqual(["design.airframe", "user.airframe"]);
});

/** The text after the name at the cursor is changed. */
function after(text: string, to: string): string {
  const { view, cursor, text: bare } = opened(text);
  const edits = renamed(view, cursor, to).filter(({ file }) => file.uri === address).map(({ file, span }) => ({ range: rangeOf(file.parsed, span), newText: to }));
  return TextDocument.applyEdits(TextDocument.create(address, "airframe", 1, bare), edits);
}

test("renaming writes over every mention, and the text means the same", () => {
  const text = "let tail_arm = 600 mm\nitem a { weight = 9 g ; at = (tail_arm, 0 mm, 0 mm) }\nlet twice = 2 * tail|_arm\n";
  expect(after(text, "arm")).toBe("let arm = 600 mm\nitem a { weight = 9 g ; at = (arm, 0 mm, 0 mm) }\nlet twice = 2 * arm\n");
});

test("no rename to what is no name, is taken, or is a word of the language", () => {
  const text = "let ar|m = 600 mm\nlet leg = 1 m\n";
  for (const to of ["2nd", "two words", "leg", "let", ""]) expect(() => after(text, to), to).toThrow(RenameRefusal);
  expect(after(text, "arm")).toBe("let arm = 600 mm\nlet leg = 1 m\n");
});

test("no rename that would make a name mean something else", () => {
  const wing = "wing main { at = (ar|m, 0 mm, 0 mm) ; panel inner { span = 1 m ; chord = 200 mm } }\n";
  expect(() => after(`let arm = 1 m\n${wing}`, "inner")).toThrow("taken for something else");
  expect(() => after(`let arm = 1 m\n${wing.replace("inner", "other")}`, "inner")).not.toThrow();
  // `span` is read from the wing, not from the panel that would hide it.
  expect(() => after("wing main { at = (0 mm, 0 mm, 0 mm) ; panel inn|er { span = 1 m ; chord = 200 mm } }\nlet x = main.span\n", "span")).toThrow();
});

test("what has no name of its own can't be renamed; words and figures are no names", () => {
  const plant = "powerplant nose { at = (0 mm, 0 mm, 0 mm) ; motor { kv = 900 rpm/V ; resistance = 30 mohm } }\nlet k = nose.mot|or.kv\n";
  const { view, cursor } = opened(plant);
  expect(() => renameable(view, cursor)).toThrow("no name of its own");
  const word = opened("airframe { class = tra|iner }");
  expect(renameable(word.view, word.cursor)).toBeUndefined();
});
