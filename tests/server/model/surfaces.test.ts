import { describe, expect, it } from "vitest";
import type { Settled } from "../../../server/model/design/design";
import type { Panel } from "../../../server/model/design/geometry";
import type { Quantity } from "../../../grammar/units/quantity";
import { mm, resolved } from "./resolved";

type Plain = Settled<Panel<Quantity>>;
const deg = (radians: number) => Math.round((radians * 180e9) / Math.PI) / 1e9 + 0;

/** Each panel as tip leading edge (mm), chords (mm) and twists (deg), of the right or only half. */
const shape = (body: string, kind = "wing") => {
  const r = resolved(`${kind} s { at = (0 mm, 0 mm, 0 mm) ; ${body} }`);
  const panels: readonly Plain[] = r.surface("s").halves[0].panels;
  return panels.map(({ inner, outer }) => ({
    tip: mm(outer.leadingEdge), chords: mm([inner.chord, outer.chord]), twists: [deg(inner.twist), deg(outer.twist)],
  }));
};
const sections = (body: string, before = "") =>
  resolved(`${before}\nwing s { at = (0 mm, 0 mm, 0 mm) ; ${body} }`).surface("s").halves[0].panels.map(({ inner, outer }) => [inner, outer].map(({ section }) =>
    section.shape.type === "naca" ? section.shape.digits : section.shape.type === "flat" ? `flat ${section.shape.thickness}` : "file"));

describe("a panel", () => {
  it.each([
    ["is unswept unless said", "span = 400 mm ; chord = 200 mm", [0, 400, 0]],
    ["sweep is of the leading edge", "span = 400 mm ; chord = 200 mm to 100 mm ; sweep = 45 deg", [400, 400, 0]],
    // The quarter chord runs straight across: its leading edge goes aft by a quarter of what the chord loses.
    ["sweep_quarter is of the quarter chord", "span = 400 mm ; chord = 200 mm to 100 mm ; sweep_quarter = 0 deg", [25, 400, 0]],
    ["sweep_quarter, aft", "span = 400 mm ; chord = 200 mm to 100 mm ; sweep_quarter = 45 deg", [425, 400, 0]],
    ["offset is the tip's leading edge aft of the root's", "span = 400 mm ; chord = 200 mm ; offset = 35 mm", [35, 400, 0]],
    ["dihedral folds the span up, not the chord", "span = 400 mm ; chord = 200 mm ; dihedral = 30 deg", [0, 346.410162, 200]],
    ["dihedral below", "span = 400 mm ; chord = 200 mm ; dihedral = -90 deg", [0, 0, -400]],
    ["sweep is along the panel as built", "span = 400 mm ; chord = 200 mm ; sweep = 45 deg ; dihedral = 60 deg", [400, 200, 346.410162]],
  ])("%s", (_, panel, tip) => expect(shape(`foil = naca("2412") ; panel p { ${panel} }`)[0].tip).toEqual(tip));

  it("a later one starts with the chord, twist and dihedral of the tip before, and unswept", () => {
    const panels = shape(`foil = naca("2412")
      panel a { span = 100 mm ; chord = 200 mm to 150 mm ; twist = 1 deg to -1 deg ; dihedral = 90 deg ; sweep = 45 deg }
      panel b { span = 100 mm }
      panel c { span = 100 mm ; chord = 100 mm ; twist = 3 deg ; dihedral = 0 deg }
      panel d { span = 100 mm ; chord = 100 mm to 50 mm ; washout = 2 deg }`);
    expect(panels).toEqual([
      { tip: [100, 0, 100], chords: [200, 150], twists: [1, -1] },
      { tip: [100, 0, 200], chords: [150, 150], twists: [-1, -1] },
      { tip: [100, 100, 200], chords: [100, 100], twists: [3, 3] },
      { tip: [100, 200, 200], chords: [100, 50], twists: [3, 1] },
    ]);
  });

  it("washout turns the tip nose down against this panel's root; incidence turns all", () => {
    const panels = shape('foil = naca("2412") ; incidence = 2 deg ; panel a { span = 1 mm ; chord = 9 mm ; washout = 3 deg } ; panel b { span = 1 mm ; washout = 1 deg }');
    expect(panels.map((p) => p.twists)).toEqual([[2, -1], [-1, -2]]);
  });

  it("its foil goes on to the next; else the surface's; else a flat plate of 3 %", () => {
    const two = (first: string, second = "") => `panel a { span = 1 mm ; chord = 9 mm ${first} } ; panel b { span = 1 mm ${second} }`;
    expect(sections(two(""))).toEqual([["flat 0.03", "flat 0.03"], ["flat 0.03", "flat 0.03"]]);
    expect(sections(`foil = naca("2412") ; ${two("")}`)).toEqual([["2412", "2412"], ["2412", "2412"]]);
    expect(sections(`foil = naca("2412") ; ${two('; foil = naca("0009")')}`)).toEqual([["0009", "0009"], ["0009", "0009"]]);
    expect(sections(`foil = naca("2412") ; ${two("", "; foil = flat(4 %)")}`)).toEqual([["2412", "2412"], ["flat 0.04", "flat 0.04"]]);
    expect(sections(`foil = naca("2412") ; ${two('; foil = naca("4415") to flat(6 %)')}`)).toEqual([["4415", "flat 0.06"], ["flat 0.06", "flat 0.06"]]);
    expect(sections(`foil = thick ; ${two("", "; foil = thin")}`, 'foil thick { shape = naca("4415") }\nlet thin = naca("0006")'))
      .toEqual([["4415", "4415"], ["0006", "0006"]]);
  });
});

describe("sides", () => {
  it("a wing has two, a fin one, unless said", () => {
    const of = (head: string) => resolved(`${head} foil = naca("0009") ; at = (5 mm, 9 mm, 1 mm) ; panel p { span = 100 mm ; chord = 50 mm } }`)
      .surface("s").halves.map((half) => [half.side, mm(half.panels[0].outer.leadingEdge)]);
    expect(of("wing s {")).toEqual([["right", [5, 109, 1]], ["left", [5, -109, 1]]]);
    expect(of("wing s { mirror = no ;")).toEqual([["only", [5, 109, 1]]]);
    expect(of("fin s {")).toEqual([["only", [5, 9, 101]]]);
    expect(of("fin s { mirror = yes ;")).toEqual([["right", [5, 9, 101]], ["left", [5, -9, 101]]]);
  });

  it("a fin leans outward by its cant, and hangs down as a ventral one", () => {
    const tip = (more: string) => shape(`foil = naca("0009") ; ${more} ; panel p { span = 100 mm ; chord = 50 mm }`, "fin")[0].tip;
    expect(tip("cant = 30 deg")).toEqual([0, 50, 86.60254]);
    expect(tip("ventral = yes")).toEqual([0, 0, -100]);
    expect(tip("ventral = yes ; cant = 30 deg")).toEqual([0, 50, -86.60254]);
    // Written from the horizontal, a panel's own dihedral is what counts.
    expect(shape('foil = naca("0009") ; panel p { span = 100 mm ; chord = 50 mm ; dihedral = 0 deg }', "fin")[0].tip).toEqual([0, 100, 0]);
  });
});

describe("controls and spars", () => {
  const body = (control: string, inside = "") => `servo s1 { weight = 9 g ; at = (0 mm, 0 mm, 0 mm) }
material carbon { density = 1.5 g/cm^3 }
wing s { at = (10 mm, 0 mm, 0 mm) ; foil = naca("2412")
  panel a { span = 300 mm ; chord = 200 mm }
  panel b { span = 100 mm ; chord = 200 mm to 100 mm ; dihedral = 90 deg
    ${inside} }
  ${control} }`;
  const round = (pair: readonly number[]) => pair.map((x) => Math.round(x * 1e9) / 1e9);
  const control = (text: string) => {
    const r = resolved(text);
    expect(r.mistakes()).toEqual([]);
    return r.surface("s").controls[0];
  };

  it("count along the half, along the panel they stand in, or along the one they name", () => {
    expect(round(control(body("aileron c { along = 10 % to 90 % ; chord = 25 % }")).along)).toEqual([0.1, 0.9]);
    expect(round(control(body("aileron c { chord = 25 % }")).along)).toEqual([0, 1]);
    expect(round(control(body("", "aileron c { along = 10 % to 90 % ; chord = 25 % }")).along)).toEqual([0.775, 0.975]);
    expect(round(control(body("aileron c { panel = b ; along = 10 % to 90 % ; chord = 25 % to 30 % }")).along)).toEqual([0.775, 0.975]);
    expect(round(control(body("aileron c { panel = a ; chord = 25 % to 30 % }")).chord)).toEqual([0.25, 0.3]);
  });

  it("carry their throws, servos and path", () => {
    const c = control(body("", "flaperon c { chord = 25 % ; roll_up = 20 deg ; droop = 10 deg ; servo = s1 }"));
    expect([c.path, c.kind, c.servos]).toEqual(["s.b.c", "flaperon", ["s1"]]);
    expect(Object.entries(c.throws).map(([name, angle]) => [name, deg(angle)])).toEqual([["roll_up", 20], ["droop", 10]]);
    expect(control(body("elevator c { all_moving = yes }")).chord).toEqual([1, 1]);
  });

  it("carry how they stand in neutral, whether both halves are one, and the pivot; none of it is a throw", () => {
    const c = control(body("elevon c { chord = 25 % ; reflex = 3 deg ; pitch_up = 12 deg ; joined = yes }"));
    expect([deg(c.reflex!), c.joined, c.pivot, Object.keys(c.throws)]).toEqual([3, true, undefined, ["pitch_up"]]);
    const turning = control(body("elevator c { all_moving = yes ; pivot = 25 % }"));
    expect([turning.pivot, turning.joined, turning.reflex]).toEqual([0.25, false, undefined]);
  });

  it("a spar runs from one point of the surface to another, on each side", () => {
    const spars = (text: string) => resolved(text).surface("s").spars;
    const whole = spars(body("spar t { outer = 10 mm ; inner = 8 mm ; material = carbon ; chord = 25 % ; along = 0 % to 75 % }"));
    expect(whole.map((s) => [s.path, mm(s.start), mm(s.end)])).toEqual([
      ["s.t.right", [60, 0, 0], [60, 300, 0]], ["s.t.left", [60, 0, 0], [60, -300, 0]],
    ]);
    const [inPanel] = spars(body("", "spar t { width = 8 mm ; height = 6 mm to 3 mm ; material = carbon ; chord = 0 % to 50 % }"));
    expect([mm(inPanel.start), mm(inPanel.end)]).toEqual([[10, 300, 0], [60, 300, 100]]);
    expect(inPanel.section).toMatchObject({ type: "bar", width: [0.008, 0.008], height: [0.006, 0.003] });
    const tube = spars(body("spar t { outer = 10 mm to 6 mm ; wall = 1 mm ; material = carbon }"))[0].section;
    expect(tube.type === "tube" && mm(tube.inner)).toEqual([8, 4]);
    const rod = spars(body("spar t { outer = 4 mm ; material = carbon }"))[0].section;
    expect(rod.type === "tube" && rod.inner).toEqual([0, 0]);
  });
});

describe("powerplants", () => {
  const plant = (more: string, parts = "motor { kv = 900 rpm/V ; resistance = 40 mohm ; weight = 90 g } ; esc { weight = 58 g } ; propeller { diameter = 12 in ; pitch = 6 in ; weight = 20 g }") => {
    const r = resolved(`powerplant p { at = (0 mm, 100 mm, 0 mm) ; ${more} ; ${parts} }`);
    expect(r.mistakes()).toEqual([]);
    return r;
  };

  it("the motor lies behind the hub along the shaft, of a pusher ahead of it; the controller with the motor", () => {
    expect(mm(plant("pusher = no").at()["p.motor"])).toEqual([25, 100, 0]);
    expect(mm(plant("pusher = yes").at()["p.motor"])).toEqual([-25, 100, 0]);
    // Nose down by 30°: the shaft behind the hub rises.
    expect(mm(plant("down_thrust = 30 deg").at()["p.motor"])).toEqual([21.650635, 100, 12.5]);
    expect(mm(plant("right_thrust = 30 deg").at()["p.motor"])).toEqual([21.650635, 87.5, 0]);
    const at = plant("pusher = no", "motor { kv = 900 rpm/V ; resistance = 40 mohm ; weight = 90 g ; at = (5 mm, 6 mm, 7 mm) } ; esc { weight = 58 g } ; propeller { diameter = 12 in ; pitch = 6 in ; weight = 20 g }").at();
    expect([mm(at["p.motor"]), mm(at["p.esc"]), mm(at["p.propeller"])]).toEqual([[5, 6, 7], [5, 6, 7], [0, 100, 0]]);
  });

  it("the mirrored one turns the other way and points the other way, unless it isn't handed", () => {
    const plants = (more: string) => plant(`mirror = yes ; right_thrust = 30 deg ; ${more}`).plain().powerplants
      .map((p) => [p.path, p.propeller!.clockwise, mm(p.hub)[1], mm(p.thrustAxis)]);
    expect(plants("handed = yes")).toEqual([
      ["p.right", true, 100, [-866.025404, 500, 0]], ["p.left", false, -100, [-866.025404, -500, 0]],
    ]);
    expect(plants("handed = no").map((p) => p[1])).toEqual([true, true]);
  });

  it("the thrust points ahead, down and to the right by the shaft angles", () => {
    const axis = plant("down_thrust = 90 deg").plain().powerplants[0].thrustAxis;
    expect(mm(axis)).toEqual([0, 0, -1000]);
  });
});
