import { describe, expect, it } from "vitest";
import { mm, resolved } from "./resolved";

const parts = `item camera { weight = 240 g ; at = (60 mm, 0 mm, 0 mm) }
item ballast { weight = 160 g ; at = (100 mm, 0 mm, 0 mm) ; optional = yes }
battery pack { cells = 4 ; capacity = 4 Ah ; weight = 400 g ; at = (90 mm, 0 mm, 0 mm) }
servo ail { weight = 20 g ; at = (0 mm, 50 mm, 0 mm) ; mirror = yes }
powerplant nose { at = (0 mm, 0 mm, 0 mm) ; battery = pack
  motor { kv = 900 rpm/V ; resistance = 40 mohm ; weight = 90 g } ; propeller { diameter = 12 in ; pitch = 6 in ; weight = 20 g } }
gear legs { wheel main { at = (0 mm, 90 mm, -100 mm) ; mirror = yes ; weight = 30 g } ; skid tail { at = (700 mm, 0 mm, 0 mm) ; weight = 5 g } }
assembly pod { item lamp { weight = 3 g ; at = (0 mm, 0 mm, 0 mm) } ; item flare { weight = 4 g ; at = (1 mm, 0 mm, 0 mm) ; optional = yes } }
place pods from pod { at = (0 mm, 200 mm, 0 mm) ; mirror = yes }
`;
const paths = (loading: string) => {
  const r = resolved(`${parts}loading l ${loading}`);
  expect(r.mistakes()).toEqual([]);
  return Object.keys(r.at());
};
const all = ["camera", "pack", "ail.right", "ail.left", "nose.motor", "nose.propeller", "legs.main.right", "legs.main.left", "legs.tail", "pods.right.lamp", "pods.left.lamp"];

describe("a loading", () => {
  it("there is one called all where none is written, without what is optional", () => {
    const r = resolved(parts);
    expect(r.analysis.sets.map((set) => set.loading.name)).toEqual(["all"]);
    expect(Object.keys(r.at())).toEqual(all);
    expect(r.plain().removable).toEqual(["pack"]);
  });

  it.each([
    ["a part", "{ without = [camera] }", (p: string) => p !== "camera"],
    ["one of a pair", "{ without = ail.left }", (p: string) => p !== "ail.left"],
    ["both of a pair", "{ without = [ail] }", (p: string) => !p.startsWith("ail")],
    ["a part of a powerplant", "{ without = [nose.propeller] }", (p: string) => p !== "nose.propeller"],
    ["a whole powerplant", "{ without = [nose] }", (p: string) => !p.startsWith("nose")],
    ["the gear", "{ without = [legs] }", (p: string) => !p.startsWith("legs")],
    ["a wheel", "{ without = [legs.main.right] }", (p: string) => p !== "legs.main.right"],
    ["what is placed", "{ without = [pods] }", (p: string) => !p.startsWith("pods")],
    ["one of the placed", "{ without = [pods.left] }", (p: string) => !p.startsWith("pods.left")],
    ["a part of both placed", "{ without = [pods.lamp] }", (p: string) => !p.endsWith("lamp")],
  ])("leaves out %s", (_, loading, stays) => expect(paths(loading)).toEqual(all.filter(stays)));

  it("brings in what is optional where it is named", () => {
    expect(paths("{ with = [ballast] }")).toContain("ballast");
    expect(paths("{ with = [pods.left.flare] }").filter((p) => p.endsWith("flare"))).toEqual(["pods.left.flare"]);
    expect(resolved(`${parts}loading l { with = [ballast, pods] }`).plain().removable).toEqual(["ballast", "pack", "pods.right.flare", "pods.left.flare"]);
  });

  it("a powerplant without its propeller gives no thrust", () => {
    expect(resolved(`${parts}loading l { without = [nose.propeller] }`).plain().powerplants[0].propeller).toBeUndefined();
  });

  it("has its own cruise, else the airframe's", () => {
    const r = resolved(`airframe "x" { cruise = 12 m/s }\n${parts}loading slow { }\nloading fast { cruise = 20 m/s }`);
    expect([r.plain("slow").cruise, r.plain("fast").cruise]).toEqual([12, 20]);
  });

  it("has its flaps where it says, else up", () => {
    const r = resolved(`${parts}loading up { }\nloading down { flaps = 30 deg }`);
    expect(r.plain("up").flaps).toBeUndefined();
    expect(r.plain("down").flaps).toBeCloseTo(Math.PI / 6, 12);
  });
});

describe("a block in a loading", () => {
  it("changes the part of its kind and name, there and only there", () => {
    const r = resolved(`${parts}loading a { }\nloading b { battery pack { at = (20 mm, 0 mm, 0 mm) } }`);
    expect(r.mistakes()).toEqual([]);
    expect([mm(r.at("a").pack), mm(r.at("b").pack)]).toEqual([[90, 0, 0], [20, 0, 0]]);
    expect(r.weights("b").pack).toBeCloseTo(0.4, 12);
  });

  it("changes what stands in a part, and what is placed", () => {
    const r = resolved(`${parts}loading a { powerplant nose { motor { weight = 80 g } } ; place pods { item lamp { weight = 7 g } ; at = (5 mm, 300 mm, 0 mm) } ; gear legs { skid tail { weight = 9 g } } }`);
    expect(r.mistakes()).toEqual([]);
    const { "nose.motor": motor, "legs.tail": tail, "pods.left.lamp": lamp } = r.weights("a");
    expect(mm([motor!, tail!, lamp!])).toEqual([80, 9, 7]);
    expect(mm(r.at("a")["pods.left.lamp"])).toEqual([5, -300, 0]);
  });

  it("changes what other parts read of it", () => {
    const r = resolved(`${parts}item strap { weight = 1 g ; at = pack.at + (9 mm, 0 mm, 0 mm) }\nloading a { }\nloading b { battery pack { at = (20 mm, 0 mm, 0 mm) } }`);
    expect([mm(r.at("a").strap), mm(r.at("b").strap)]).toEqual([[99, 0, 0], [29, 0, 0]]);
  });

  it("reads names where the part stands, not among what the loading changes", () => {
    const r = resolved(`${parts}loading a { item camera { weight = 200 g } ; battery pack { at = (camera.at.x + 1 mm, 0 mm, 0 mm) } }`);
    expect(r.mistakes()).toEqual([]);
    expect(mm(r.at("a").pack)).toEqual([61, 0, 0]);
  });

  it("replaces what says the same in another way", () => {
    const wing = 'wing main { at = (0 mm, 0 mm, 0 mm) ; foil = naca("2412") ; panel p { span = 100 mm ; chord = 50 mm ; offset = 30 mm } }\n';
    const r = resolved(`${wing}loading flat { wing main { panel p { sweep = 0 deg } } }\nloading as_is { }`);
    const aft = (loading: string) => mm(r.surface("main", loading).halves[0].panels[0].outer.leadingEdge)[0];
    expect([aft("flat"), aft("as_is")]).toEqual([0, 30]);
  });

  it("may be a copy", () => {
    const r = resolved(`${parts}battery small { cells = 3 ; capacity = 2 Ah ; weight = 150 g ; at = (0 mm, 0 mm, 0 mm) }\nloading a { without = [small] ; battery pack from small { } }`);
    expect(r.mistakes()).toEqual([]);
    expect(r.weights("a").pack).toBeCloseTo(0.15, 12);
  });
});
