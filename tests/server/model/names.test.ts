import { describe, expect, it } from "vitest";
import { found, mm, resolved } from "./resolved";

const wing = (name: string, at = "(100 mm, 0 mm, 0 mm)", more = "") =>
  `wing ${name} { at = ${at} ; foil = naca("2412") ; panel half { span = 400 mm ; chord = 200 mm to 100 mm } ${more} }\n`;
const item = (name: string, at: string, more = "") => `item ${name} { weight = 1 g ; at = ${at} ${more} }\n`;

describe("a name is sought", () => {
  it("among the children of the block it stands in, then outward", () => {
    const r = resolved(`
item esc { weight = 9 g ; at = (1 mm, 0 mm, 0 mm) }
powerplant nose {
  at = (0 mm, 0 mm, 0 mm)
  motor { kv = 900 rpm/V ; resistance = 40 mohm ; weight = 90 g ; at = (esc.at.x, 0 mm, 0 mm) }
  esc { weight = 58 g ; at = (2 mm, 0 mm, 0 mm) }
}
${item("x", "(esc.at.x, 0 mm, 0 mm)")}`);
    expect(r.mistakes()).toEqual([]);
    expect(mm(r.at()["nose.motor"])).toEqual([2, 0, 0]);
    expect(mm(r.at().x)).toEqual([1, 0, 0]);
  });

  it("in any order", () => {
    const r = resolved(`${item("x", "(b, 0 mm, 0 mm)")}let b = a * 2\nlet a = 3 mm`);
    expect(r.mistakes()).toEqual([]);
    expect(mm(r.at().x)).toEqual([6, 0, 0]);
  });

  it("as a word, where the property takes one of a set, whatever else has that name", () => {
    const r = resolved(`let clockwise = 3 mm\npowerplant anticlockwise { at = (clockwise, 0 mm, 0 mm) ; propeller { diameter = 12 in ; pitch = 6 in ; rotation = anticlockwise } }`);
    expect(r.mistakes()).toEqual([]);
    expect(r.plain().powerplants[0].propeller!.clockwise).toBe(false);
  });

  it("past the block that holds the property: a control surface may be called like its servo", () => {
    const r = resolved(`servo ail { weight = 9 g ; at = (0 mm, 0 mm, 0 mm) }
wing main { at = (0 mm, 0 mm, 0 mm) ; foil = naca("2412") ; panel half { span = 400 mm ; chord = 200 mm ; aileron ail { chord = 25 % ; servo = ail } } }`);
    expect(r.mistakes()).toEqual([]);
    expect(r.surface("main").controls[0].servos).toEqual(["ail"]);
  });

  it("by its kind where it has no name of its own", () => {
    const r = resolved(`powerplant { at = (5 mm, 0 mm, 0 mm) ; motor { kv = 780 rpm/V ; resistance = 38 mohm ; weight = 1 g } }
${item("x", "(powerplant.motor.kv / 780 rpm * 1 V * 1 mm + powerplant.at.x, 0 mm, 0 mm)")}`);
    expect(r.mistakes()).toEqual([]);
    expect(mm(r.at().x)).toEqual([6, 0, 0]);
  });
});

describe("mirrored things", () => {
  const servo = "servo ail { weight = 9 g ; at = (10 mm, 50 mm, 5 mm) ; mirror = yes }\n";

  it("are two, the right one as written, each with the weight written", () => {
    const r = resolved(servo);
    expect(mm(Object.values(r.weights()).map((w) => w!))).toEqual([9, 9]);
    expect(Object.keys(r.at())).toEqual(["ail.right", "ail.left"]);
    expect(Object.values(r.at()).map(mm)).toEqual([[10, 50, 5], [10, -50, 5]]);
  });

  it("go by right, left, or the plain name for both", () => {
    const r = resolved(`${servo}receiver rx { outputs = [ail.right, ail.left, ail, none, [ail.right, ail.left]] ; weight = 1 g ; at = (0 mm, 0 mm, 0 mm) }`);
    expect(r.mistakes()).toEqual([]);
    expect(r.plain().receivers[0].outputs).toEqual([["ail.right"], ["ail.left"], ["ail"], [], ["ail.right", "ail.left"]]);
  });

  it("are read where the one named is", () => {
    const r = resolved(servo + item("a", "ail.left.at") + item("b", "ail.right.at") + item("c", "ail.at"));
    expect(["a", "b", "c"].map((name) => mm(r.at()[name]))).toEqual([[10, -50, 5], [10, 50, 5], [10, 50, 5]]);
  });

  it("make no name right or left of what isn't mirrored", () => {
    const r = resolved(wing("main", "(0 mm, 0 mm, 0 mm)", "; mirror = no") + item("a", "point(main.left, 50 %, 0 %)"));
    expect(r.mistakes()).toEqual(['unknown_name at "left"']);
  });
});

describe("derived values", () => {
  it("of a surface: span over both tips, area of both sides, mean chord", () => {
    // Half: 400 mm of 200 to 100 mm chord; dihedral folds the span, not the area. ∫c²dy/∫c dy = (2/3)(200 + 100 − 200·100/300).
    const text = `wing main { at = (0 mm, 0 mm, 0 mm) ; foil = naca("2412") ; panel half { span = 400 mm ; chord = 200 mm to 100 mm ; dihedral = 60 deg } }
fin up { at = (0 mm, 0 mm, 0 mm) ; foil = naca("0009") ; panel p { span = 190 mm ; chord = 100 mm } }
${item("x", "(main.span, main.area / 1 m, main.mean_chord)")}${item("y", "(up.span, up.area / 1 m, 0 mm)")}`;
    const r = resolved(text);
    expect(r.mistakes()).toEqual([]);
    expect(mm(r.at().x)).toEqual([400, 120, 155.555556]);
    expect(mm(r.at().y)).toEqual([190, 19, 0]);
  });

  it("of a body: its length, also from stations", () => {
    const r = resolved(`fuselage a { at = (0 mm, 0 mm, 0 mm) ; length = 960 mm ; width = 90 mm }
body b { at = (0 mm, 0 mm, 0 mm) ; station one { x = 0 mm ; width = 1 mm } ; station two { x = 300 mm ; width = 9 mm } }
${item("x", "(a.length, b.length, a.width)")}`);
    expect(r.mistakes()).toEqual([]);
    expect(mm(r.at().x)).toEqual([960, 300, 90]);
  });

  it("of its own surface: the place may rest on the size, the size not on itself", () => {
    const r = resolved(wing("main", "(100 mm - main.mean_chord / 4, 0 mm, 0 mm)"));
    expect(r.mistakes()).toEqual([]);
    expect(mm(r.surface("main").halves[0].panels[0].inner.leadingEdge)).toEqual([61.111111, 0, 0]);
  });

  it("counts and defaults can be read too", () => {
    const r = resolved(`battery pack { cells = 4 ; capacity = 4 Ah ; weight = 9 g ; at = (0 mm, 0 mm, 0 mm) }
${item("x", "(pack.cells * 1 mm, pack.usable * 10 mm, 0 mm)")}`);
    expect(r.mistakes()).toEqual([]);
    expect(mm(r.at().x)).toEqual([4, 8, 0]);
  });
});

describe("points", () => {
  const swept = `wing main { at = (100 mm, 0 mm, 20 mm) ; foil = naca("2412")
  panel inner { span = 300 mm ; chord = 200 mm ; offset = 30 mm }
  panel outer { span = 100 mm ; chord = 200 mm to 100 mm ; offset = 20 mm ; dihedral = 90 deg } }\n`;

  it("lie on a surface at a share of the half-span as built and of the chord there", () => {
    const r = resolved(swept + item("a", "point(main, 37.5 %, 50 %)") + item("b", "point(main, 87.5 %, 100 %)") + item("c", "point(main, 100 %, 0 %)")
      + item("d", "point(main, 0 %, 0 %)") + item("e", "point(main.left, 75 %, 0 %)"));
    expect(r.mistakes()).toEqual([]);
    // 37.5 % of 400 mm is half of the inner panel; 87.5 % half of the outer, which stands upright with 150 mm of chord there.
    expect(["a", "b", "c", "d", "e"].map((name) => mm(r.at()[name]))).toEqual([
      [215, 150, 20], [290, 300, 70], [150, 300, 120], [100, 0, 20], [130, -300, 20],
    ]);
  });

  it("move with the surface", () => {
    const at = (x: string) => resolved(swept.replace("100 mm, 0 mm, 20 mm", `${x}, 0 mm, 20 mm`) + item("a", "point(main, 50 %, 25 %)")).at().a;
    expect(mm([at("160 mm")[0] - at("100 mm")[0]])).toEqual([60]);
  });

  it("add, subtract and scale, and give one coordinate", () => {
    const r = resolved(`let p = (1 mm, 2 mm, 3 mm)\nlet q = -p * 2 + (10 mm, 10 mm, 10 mm) / 5\n${item("a", "q")}${item("b", "(q.z, p.y, point(main, 100 %, 0 %).x)".replace("point(main, 100 %, 0 %).x", "tip.x"))}let tip = point(main, 100 %, 0 %)\n${wing("main")}`);
    expect(r.mistakes()).toEqual([]);
    expect(mm(r.at().a)).toEqual([0, -2, -4]);
    expect(mm(r.at().b)).toEqual([-4, 2, 100]);
  });

  it("of a placed surface are seen from where they are asked for", () => {
    const r = resolved(`assembly pod { ${wing("small", "(10 mm, 0 mm, 0 mm)", "; mirror = no")} ${item("inside", "point(small, 100 %, 0 %)")} }
place pods from pod { at = (0 mm, 300 mm, 50 mm) ; mirror = yes }
place lone from pod { at = (0 mm, 0 mm, 9 mm) ; flip = yes }
${item("a", "point(pods.small, 100 %, 0 %)")}${item("b", "point(pods.left.small, 100 %, 0 %)")}${item("c", "point(lone.small, 100 %, 0 %)")}${item("d", "pods.left.inside.at")}`);
    expect(r.mistakes()).toEqual([]);
    const at = r.at();
    expect(mm(at.a)).toEqual([10, 700, 50]);
    expect(mm(at.b)).toEqual([10, -700, 50]);
    expect(mm(at.c)).toEqual([10, -400, 9]);
    expect(mm(at.d)).toEqual(mm(at["pods.left.inside"]));
    expect(mm(at["pods.right.inside"])).toEqual([10, 700, 50]);
  });
});

describe("circles are findings, and leave the rest of the model whole", () => {
  it.each([
    ["lets", "let a = b\nlet b = c * 2\nlet c = a\n", 'circle at "a"'],
    ["properties", `${item("p", "(q.at.x, 0 mm, 0 mm)")}${item("q", "(p.at.x, 0 mm, 0 mm)")}`, 'circle at "at"'],
    ["points", wing("a", "point(b, 0 %, 0 %)") + wing("b", "point(a, 0 %, 0 %)"), 'circle at "at"'],
    ["sizes", `wing a { at = (0 mm, 0 mm, 0 mm) ; foil = naca("2412") ; panel p { span = a.span ; chord = 9 mm } }`, 'circle at "span"'],
    ["copies", "item a from b { }\nitem b from c { }\nitem c from a { }", 'circle at "a"'],
    ["a panel of its own surface", `wing a { at = (0 mm, 0 mm, 0 mm) ; foil = naca("2412") ; panel p from q { } ; panel q from p { } }`, 'circle at "p"'],
  ])("%s", (_, text, mistake) => {
    const r = resolved(`${text}\n${item("z", "(1 mm, 0 mm, 0 mm)")}`);
    expect(r.mistakes()).toEqual([mistake]);
    expect(found(r.plain().loads, "z").weight).toBe(0.001);
  });

  it("a long row of values is none", () => {
    const lets = Array.from({ length: 2000 }, (_, i) => `let v${i} = ${i === 0 ? "1 mm" : `v${i - 1} + 1 mm`}`);
    expect(mm(resolved(`${item("x", "(v1999, 0 mm, 0 mm)")}${lets.join("\n")}`).at().x)).toEqual([2000, 0, 0]);
    const backward = resolved(`${item("x", "(v1999, 0 mm, 0 mm)")}${lets.reverse().join("\n")}`);
    expect(backward.mistakes()).toHaveLength(1);
    expect(backward.analysis.findings[0]?.message ?? "").toMatch(/rests on more than 200 values/);
  });
});
