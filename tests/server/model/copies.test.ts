import { describe, expect, it } from "vitest";
import { mm, resolved } from "./resolved";

const single = `let tail_arm = 610 mm
material foam { density = 0.03 g/cm^3 }
foil thick { shape = naca("4415") ; lift_max = 1.3 }
wing main {
  at = (tail_arm, 0 mm, 0 mm) ; foil = thick ; incidence = 2 deg
  panel inner { span = 400 mm ; chord = 240 mm to 200 mm ; twist = 0 deg to -1 deg ; dihedral = 5 deg }
  panel outer { span = 300 mm ; offset = 30 mm ; aileron tip { chord = 25 % ; servo = ail } }
  skin { material = foam ; wall = 2 mm }
}
servo ail { weight = 22 g ; at = point(main, 50 %, 0 %) ; mirror = yes }
item camera { weight = 240 g ± 5 g ; at = (60 mm, 0 mm, 0 mm) ; size = (10 mm, 10 mm, 10 mm) }
`;
const files = { "plover.airframe": single };
const use = 'use "plover.airframe" as single\n';
const servo = "servo ail from single.ail { }\n";

describe("a copy", () => {
  it("brings a block with its children; what is written anew replaces", () => {
    const r = resolved(`${use}${servo}wing main from single.main { incidence = 0 deg ; panel inner { span = 100 mm } }`, files);
    expect(r.mistakes()).toEqual([]);
    const [inner, outer] = r.surface("main").halves[0].panels;
    expect(mm([inner.inner.leadingEdge[0], inner.inner.chord, inner.outer.chord, outer.outer.leadingEdge[0] - outer.inner.leadingEdge[0]])).toEqual([610, 240, 200, 30]);
    expect(inner.outer.leadingEdge[1]).toBeCloseTo(0.1 * Math.cos((5 * Math.PI) / 180), 12);
    expect(inner.inner.twist).toBe(0);
    expect(r.surface("main").controls[0].servos).toEqual(["ail"]);
  });

  it("replaces what says the same in another way", () => {
    const r = resolved(`${use}${servo}wing main from single.main { panel outer { sweep = 0 deg } ; panel inner { washout = 3 deg } }`, files);
    expect(r.mistakes()).toEqual([]);
    const [inner, outer] = r.surface("main").halves[0].panels;
    expect(outer.outer.leadingEdge[0]).toBe(outer.inner.leadingEdge[0]);
    expect(inner.outer.twist).toBeCloseTo(((2 - 3) * Math.PI) / 180, 12);
  });

  it("leaves out what it drops, and may put another in its place", () => {
    const r = resolved(`${use}wing main from single.main { drop = [skin] ; panel outer { drop = [tip] ; flap tip { chord = 30 % } } }`, files);
    expect(r.mistakes()).toEqual([]);
    expect(r.surface("main").controls.map((c) => [c.path, c.kind])).toEqual([["main.outer.tip", "flap"]]);
    expect(r.surface("main").skin).toBeUndefined();
  });

  it("works numbers out where they were written", () => {
    const r = resolved(`${use}${servo}let tail_arm = 5 mm\nwing main from single.main { }\nitem x { weight = 1 g ; at = (tail_arm, 0 mm, 0 mm) }`, files);
    expect(mm(r.surface("main").halves[0].panels[0].inner.leadingEdge)).toEqual([610, 0, 0]);
    expect(mm(r.at().x)).toEqual([5, 0, 0]);
  });

  it("seeks names of blocks in the copy, then in the file that copies", () => {
    const r = resolved(`${use}${servo}wing main { at = (1000 mm, 0 mm, 0 mm) ; foil = naca("2412") ; panel p { span = 100 mm ; chord = 100 mm } }`, files);
    expect(r.mistakes()).toEqual([]);
    // The servo's point is of this file's wing, not of the one it was written beside.
    expect(mm(r.at()["ail.right"])).toEqual([1000, 50, 0]);
  });

  it("takes materials and foils along, unless the file that copies has its own", () => {
    const density = (text: string) => resolved(text, files).surface("main").skin?.density;
    expect(density(`${use}${servo}wing main from single.main { }`)).toBeCloseTo(30, 9);
    expect(density(`${use}${servo}material foam { density = 0.05 g/cm^3 }\nwing main from single.main { }`)).toBe(50);
    const r = resolved(`${use}${servo}wing main from single.main { }`, files);
    expect(r.surface("main").halves[0].panels[0].inner.section).toMatchObject({ shape: { digits: "4415" }, liftMax: 1.3 });
  });

  it("takes them along through a copy of a copy", () => {
    const twin = { ...files, "twin.airframe": `${use}${servo}material foam { density = 0.05 g/cm^3 }\nwing big from single.main { }` };
    const r = resolved(`use "twin.airframe" as twin\nservo ail { weight = 1 g ; at = (0 mm, 0 mm, 0 mm) }\nwing main from twin.big { }`, twin);
    expect(r.mistakes()).toEqual([]);
    expect(r.surface("main").skin?.density).toBe(50);
  });

  it("of a thing with tolerance shares its variable with the original", () => {
    const r = resolved(`${use}item a from single.camera { }\nitem b from single.camera { at = (0 mm, 0 mm, 0 mm) }`, files);
    expect([...r.load("a").weight!.spread!.keys()]).toEqual([...r.load("b").weight!.spread!.keys()]);
  });

  it("is whole in the middle of its own file too, in any order", () => {
    const r = resolved("item b from a { weight = 3 g }\nitem a from c { }\nitem c { weight = 1 g ; at = (7 mm, 0 mm, 0 mm) }");
    expect(r.mistakes()).toEqual([]);
    expect(mm(r.at().b)).toEqual([7, 0, 0]);
  });

  it("can't be had of more blocks than any aircraft has", () => {
    const doubling = Array.from({ length: 30 }, (_, i) => `assembly a${i + 1} { place x from a${i} { } ; place y from a${i} { } }`).join("\n");
    const r = resolved(`assembly a0 { item x { weight = 1 g ; at = (0 mm, 0 mm, 0 mm) } }\n${doubling}\nplace all from a30 { }`);
    expect(r.mistakes().length).toBeGreaterThan(0);
    expect(r.analysis.findings.map((f) => f.message)).toContainEqual(expect.stringMatching(/^this would copy \d+ blocks at once; at most 5000 can be$/));
  });
});

describe("a copied panel", () => {
  it("brings what it took from its surface: chord, twist, dihedral and foil of the run before it", () => {
    const r = resolved(`${use}servo ail { weight = 1 g ; at = (0 mm, 0 mm, 0 mm) }
wing main { at = (0 mm, 0 mm, 0 mm) ; foil = naca("0009") ; panel root { span = 100 mm ; chord = 50 mm ; dihedral = 90 deg } ; panel tip from single.main.outer { } }`, files);
    expect(r.mistakes()).toEqual([]);
    const [, tip] = r.surface("main").halves[0].panels;
    expect(mm([tip.inner.chord, tip.outer.chord])).toEqual([200, 200]);
    expect(tip.inner.twist).toBeCloseTo((-1 * Math.PI) / 180, 12);
    expect(tip.inner.section.shape).toEqual({ type: "naca", digits: "4415" });
    // 5° over the panel's 300 mm, not the 90° of the panel beside it.
    expect(tip.outer.leadingEdge[2] - tip.inner.leadingEdge[2]).toBeCloseTo(0.3 * Math.sin((5 * Math.PI) / 180), 12);
  });

  it("of a flat wing stays flat, and stands up in a fin", () => {
    const wing = 'wing w { at = (0 mm, 0 mm, 0 mm) ; foil = naca("0009") ; panel p { span = 100 mm ; chord = 50 mm } }\n';
    const r = resolved(`${wing}wing s { at = (0 mm, 0 mm, 0 mm) ; foil = naca("0009") ; panel a { span = 100 mm ; chord = 50 mm ; dihedral = 90 deg } ; panel b from w.p { } }
fin f { at = (0 mm, 0 mm, 0 mm) ; foil = naca("0009") ; panel b from w.p { } }`);
    expect(mm(r.surface("s").halves[0].panels[1].outer.leadingEdge)).toEqual([0, 100, 100]);
    expect(mm(r.surface("f").halves[0].panels[0].outer.leadingEdge)).toEqual([0, 0, 100]);
  });

  it("of its own surface goes on as the original did", () => {
    const r = resolved('wing s { at = (0 mm, 0 mm, 0 mm) ; foil = naca("0009") ; panel a { span = 100 mm ; chord = 50 mm to 40 mm } ; panel b { span = 20 mm } ; panel c from b { } }');
    expect(r.mistakes()).toEqual([]);
    expect(mm(r.surface("s").halves[0].panels.map((p) => p.inner.chord))).toEqual([50, 40, 40]);
  });
});

describe("another file", () => {
  it("gives its values, blocks and materials under its name, and only its own", () => {
    const r = resolved(`${use}item x { weight = single.camera.weight ; at = (single.tail_arm, single.main.span / 2, 0 mm) }
wing w { at = (0 mm, 0 mm, 0 mm) ; foil = single.thick ; panel p { span = 9 mm ; chord = 9 mm } ; skin { material = single.foam ; wall = 1 mm } }`, files);
    expect(r.mistakes()).toEqual([]);
    expect(r.load("x").weight!.value).toBe(0.24);
    expect(mm(r.at().x)[0]).toBe(610);
    expect(r.surface("w").skin?.density).toBeCloseTo(30, 9);
  });

  it("is named by a path from this one, in a workspace's own addresses", () => {
    const texts: Record<string, string> = { "file:///a/b/my%20parts/plover.airframe": single };
    const { service } = resolved("");
    service.update({ uri: "file:///a/b/c/design.airframe", version: 1, text: 'use "../my parts/plover.airframe" as single\nitem x { weight = 1 g ; at = (single.tail_arm, 0 mm, 0 mm) }' });
    expect(service.analysis("file:///a/b/c/design.airframe")!.findings.map((f) => f.code)).toContain("file_not_found");
    service.update({ uri: "file:///a/b/my%20parts/plover.airframe", version: 1, text: texts["file:///a/b/my%20parts/plover.airframe"] });
    expect(service.analysis("file:///a/b/c/design.airframe")!.findings.map((f) => f.code)).not.toContain("file_not_found");
  });

  it("opens once, however often it is used", () => {
    const many = Object.fromEntries(Array.from({ length: 24 }, (_, i) => [`f${i}.airframe`, i === 0 ? "let deep = 3 mm"
      : `use "f${i - 1}.airframe" as a\nuse "f${i - 1}.airframe" as b\nlet deep = a.deep + b.deep`]));
    const r = resolved('use "f23.airframe" as top\nitem x { weight = 1 g ; at = (top.deep / 2^23, 0 mm, 0 mm) }', many);
    expect(r.mistakes()).toEqual([]);
    expect(mm(r.at().x)).toEqual([3, 0, 0]);
  });
});
