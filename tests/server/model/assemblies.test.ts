import { describe, expect, it } from "vitest";
import { found, mm, resolved } from "./resolved";

const pod = `assembly pod {
  fuselage hull { at = (-40 mm, 0 mm, 0 mm) ; length = 400 mm ; width = 80 mm ; weight = 100 g }
  battery pack { cells = 4 ; capacity = 4 Ah ; weight = 400 g ; at = (60 mm, 10 mm, -20 mm) }
  powerplant drive {
    at = (-50 mm, 5 mm, 0 mm) ; battery = pack ; right_thrust = 30 deg
    propeller { diameter = 12 in ; pitch = 6 in ; rotation = anticlockwise ; weight = 20 g }
    esc { weight = 50 g ; at = (0 mm, 0 mm, 0 mm) }
  }
  servo rud { weight = 9 g ; at = (600 mm, 20 mm, 0 mm) }
  servo pair { weight = 5 g ; at = (0 mm, 30 mm, 0 mm) ; mirror = yes }
  fin up {
    at = (600 mm, 0 mm, 0 mm) ; foil = naca("0009") ; cant = 90 deg
    panel p { span = 100 mm ; chord = 50 mm }
    rudder r { chord = 40 % ; servo = rud }
    aileron a { chord = 20 % ; servo = [pair.left, pair] }
  }
}
`;

describe("a placed assembly", () => {
  it("weighs nothing until it is placed", () => expect(resolved(pod).plain().loads).toEqual([]));

  it("stands in the design once, moved", () => {
    const r = resolved(`${pod}place p from pod { at = (100 mm, 200 mm, 50 mm) }`);
    expect(r.mistakes()).toEqual([]);
    expect(mm(r.at()["p.pack"])).toEqual([160, 210, 30]);
    expect(mm(r.at()["p.pair.left"])).toEqual([100, 170, 50]);
    expect(r.plain().powerplants[0]).toMatchObject({ path: "p.drive", source: "p.pack" });
    expect(found(r.plain().surfaces, "p.up").controls.map((c) => c.servos)).toEqual([["p.rud"], ["p.pair.left", "p.pair"]]);
  });

  it("stands twice as a mirrored pair: places, shafts, propellers and names", () => {
    const r = resolved(`${pod}place pods from pod { at = (100 mm, 200 mm, 50 mm) ; mirror = yes }`);
    expect(r.mistakes()).toEqual([]);
    const at = r.at();
    expect([mm(at["pods.right.pack"]), mm(at["pods.left.pack"])]).toEqual([[160, 210, 30], [160, -210, 30]]);
    expect([mm(at["pods.left.pair.right"]), mm(at["pods.left.pair.left"])]).toEqual([[100, -230, 50], [100, -170, 50]]);
    expect(r.plain().powerplants.map((p) => [p.path, p.source, p.propeller!.clockwise, mm(p.hub), mm(p.thrustAxis)[1]])).toEqual([
      ["pods.right.drive", "pods.right.pack", false, [50, 205, 50], 500], ["pods.left.drive", "pods.left.pack", true, [50, -205, 50], -500],
    ]);
    const fins = r.plain().surfaces.map((s) => [s.path, s.halves[0].side, mm(s.halves[0].panels[0].outer.leadingEdge), s.controls.map((c) => c.servos)]);
    expect(fins).toEqual([
      ["pods.right.up", "only", [700, 300, 50], [["pods.right.rud"], ["pods.right.pair.left", "pods.right.pair"]]],
      ["pods.left.up", "only", [700, -300, 50], [["pods.left.rud"], ["pods.left.pair.left", "pods.left.pair"]]],
    ]);
  });

  it("stands as its image alone with flip, where it is placed", () => {
    const r = resolved(`${pod}place p from pod { at = (0 mm, 200 mm, 0 mm) ; flip = yes }`);
    expect(mm(r.at()["p.pack"])).toEqual([60, 190, -20]);
    expect(r.plain().powerplants[0].propeller!.clockwise).toBe(true);
    const both = resolved(`${pod}place p from pod { at = (0 mm, 200 mm, 0 mm) ; flip = yes ; mirror = yes }`);
    expect([mm(both.at()["p.right.pack"]), mm(both.at()["p.left.pack"])]).toEqual([[60, 190, -20], [60, -190, -20]]);
    expect(both.plain().powerplants.map((p) => p.propeller!.clockwise)).toEqual([true, false]);
  });

  it("may be changed where it is placed, and hold more", () => {
    const r = resolved(`${pod}place p from pod { at = (0 mm, 200 mm, 0 mm) ; battery pack { weight = 300 g } ; item lamp { weight = 3 g ; at = (1 mm, 0 mm, 0 mm) } }
place q from pod { at = (0 mm, -200 mm, 0 mm) }`);
    expect(r.mistakes()).toEqual([]);
    expect(r.weights()).toMatchObject({ "p.pack": 0.3, "q.pack": 0.4 });
    expect(mm(r.at()["p.lamp"])).toEqual([1, 200, 0]);
  });

  it("is named from outside by its place", () => {
    const r = resolved(`${pod}place pods from pod { at = (0 mm, 200 mm, 0 mm) ; mirror = yes }
receiver rx { outputs = [pods.right.drive.esc, pods.left.drive.esc, pods.rud, pods.left.pair.right] ; weight = 1 g ; at = (0 mm, 0 mm, 0 mm) }`);
    expect(r.mistakes()).toEqual([]);
    expect(r.plain().receivers[0].outputs).toEqual([["pods.right.drive.esc"], ["pods.left.drive.esc"], ["pods.rud"], ["pods.left.pair.right"]]);
  });
});

describe("an assembly in an assembly", () => {
  const wingtip = `assembly lamp { item bulb { weight = 1 g ; at = (0 mm, 3 mm, 0 mm) } }
assembly boom { place lamps from lamp { at = (10 mm, 20 mm, 0 mm) ; mirror = yes } ; item root { weight = 2 g ; at = (0 mm, 5 mm, 0 mm) } }
`;

  it("mirrors in the plane of the axes it stands in, not in the aircraft's", () => {
    const r = resolved(`${wingtip}place arm from boom { at = (0 mm, 100 mm, 0 mm) }`);
    expect(r.mistakes()).toEqual([]);
    expect([mm(r.at()["arm.lamps.right.bulb"]), mm(r.at()["arm.lamps.left.bulb"])]).toEqual([[10, 123, 0], [10, 77, 0]]);
  });

  it("keeps its own order within the image of the whole", () => {
    const r = resolved(`${wingtip}place arms from boom { at = (0 mm, 100 mm, 0 mm) ; mirror = yes }`);
    expect(Object.entries(r.at()).map(([path, at]) => [path, mm(at)[1]])).toEqual([
      ["arms.right.lamps.right.bulb", 123], ["arms.right.lamps.left.bulb", 77], ["arms.right.root", 105],
      ["arms.left.lamps.right.bulb", -123], ["arms.left.lamps.left.bulb", -77], ["arms.left.root", -105],
    ]);
  });

  it("a flipped one in a mirrored one is as written again", () => {
    const r = resolved(`assembly a { item x { weight = 1 g ; at = (0 mm, 3 mm, 0 mm) } }
assembly b { place q from a { at = (0 mm, 10 mm, 0 mm) ; flip = yes } }\nplace p from b { at = (0 mm, 100 mm, 0 mm) ; mirror = yes }`);
    expect([mm(r.at()["p.right.q.x"]), mm(r.at()["p.left.q.x"])]).toEqual([[0, 107, 0], [0, -107, 0]]);
  });
});
