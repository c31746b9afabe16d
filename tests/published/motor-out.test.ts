import { describe, expect, it } from "vitest";
import { atmosphere } from "../../server/compute/atmosphere/atmosphere";
import { lateralBalance } from "../../server/compute/motor-out/balance";
import { inclinedPropeller } from "../../server/compute/motor-out/inclined-propeller";
import { heldAt, minimumControlSpeed, type Asymmetry } from "../../server/compute/motor-out/minimum-control-speed";
import { criticalMotor } from "../../server/compute/motor-out/motor-out";
import { plantLoads, together } from "../../server/compute/motor-out/plant";
import { bladeOf } from "../../server/compute/propeller/blade";
import { elementLoad } from "../../server/compute/propeller/element-load";
import { expectNear } from "./near";
import { degree, frame, none, plant, twin, twinOf } from "./twin";

const closed = 1e-3; // a closed formula with printed digits

describe("yaw by the rudder alone (moment balance as in D. P. Raymer, Aircraft Design, ch. 16, and R. C. Nelson, ch. 2)", () => {
  // 15 N at 0.25 m, S 0.5, b 1.8, Cnδr −0.06, 25° of rudder, no bank, no sideslip: a fin without stiffness leaves just that.
  const bare = { ...frame, sideslip: { side: -0.5, roll: 0, yaw: 0 }, rudder: { side: 0, roll: 0, yaw: -0.06, throw: { negative: 25 * degree, positive: 25 * degree } } };
  const at = (deadDrag: number): Asymmetry => ({ balance: [0, 0, 0], frame: () => bare, plants: [plant("right", 0.25, true, { thrust: 15 }), plant("left", -0.25, true, { thrust: 15 }, deadDrag)] });
  it.each([[0, 16.12], [2, 17.161]])("with %d N of drag on the dead side: %d m/s", (drag, speed) => {
    const found = minimumControlSpeed(at(drag), ["left"], 5, 60)!;
    expectNear(found.speed, speed, closed);
    expect(found.held.limit).toBe("rudder");
    expect(found.below).toBeUndefined();
  });
});

describe("banked towards the live side without sideslip", () => {
  // With β = 0 the rudder holds the moment alone and the bank its side force: W sin φ = −q S CYδr δr (R. C. Nelson, ch. 2, statics).
  it("the weight's part along the wing holds the rudder's side force", () => {
    const { held, speed } = { held: heldAt(twin("inboard"), ["left"], 14, "no sideslip")!, speed: 14 };
    const force = (frame.density * speed ** 2 * frame.area) / 2;
    expect(held.sideslip).toBeCloseTo(0, 12);
    const { side, roll, yaw } = together(held.contributions);
    const { rudder, aileron } = frame;
    expect(yaw + force * frame.span * (rudder.yaw * held.rudder! + aileron.yaw * held.aileron!)).toBeCloseTo(0, 9);
    expect(roll + force * frame.span * (rudder.roll * held.rudder! + aileron.roll * held.aileron!)).toBeCloseTo(0, 9);
    expect(side + force * (rudder.side * held.rudder! + aileron.side * held.aileron!) + frame.mass * 9.80665 * Math.sin(held.bank)).toBeCloseTo(0, 9);
    expect(held.bank).toBeGreaterThan(0); // the right one lives: right wing down
    expect(held.rudder!).toBeLessThan(0); // trailing edge right
  });
});

const controlSpeed = (asymmetry: Asymmetry, dead: string) => minimumControlSpeed(asymmetry, [dead], 3, 60)!.speed;

// Common practice, no source: what pilots of twins are taught.
describe("which motor is critical", () => {
  it("neither of a pair that turns in opposite senses", () => {
    for (const way of ["inboard", "outboard"] as const) {
      expect(criticalMotor(twin(way), 8)!.paths).toEqual([]);
      expectNear(controlSpeed(twin(way), "left"), controlSpeed(twin(way), "right"), 1e-7); // mirrored: rounding and the search's end
    }
  });
  it("blades that go down on the inboard side give the lower minimum control speed", () => {
    expect(controlSpeed(twin("inboard"), "left")).toBeLessThan(0.97 * controlSpeed(twin("outboard"), "left"));
  });
  it("the left of a pair that turns clockwise seen from behind, the right of the reverse, by the descending blade and the torque", () => {
    const critical = criticalMotor(twin("clockwise"), 8)!;
    expect(critical.paths).toEqual(["left"]);
    expect(critical.because.map(({ cause }) => cause).sort()).toEqual(["descending blade", "torque"]);
    for (const { cause, yaw, roll } of critical.because) expect(Math.sign(cause === "torque" ? roll : yaw)).toBe(1);
    expect(criticalMotor(twin("anticlockwise"), 8)!.paths).toEqual(["right"]);
    expect(controlSpeed(twin("clockwise"), "left")).toBeGreaterThan(controlSpeed(twin("clockwise"), "right"));
  });
  it("a same-handed pair lies between the opposed ones", () => {
    expectNear(controlSpeed(twin("clockwise"), "right"), controlSpeed(twin("inboard"), "left"), 1e-7); // the same live propeller, mirrored
    expectNear(controlSpeed(twin("clockwise"), "left"), controlSpeed(twin("outboard"), "left"), 1e-7);
  });
  it("outer motors before inner ones", () => {
    const four = twinOf([plant("a", -0.6, true, { thrust: 6 }), plant("b", -0.3, true, { thrust: 6 }), plant("c", 0.3, false, { thrust: 6 }), plant("d", 0.6, false, { thrust: 6 })]);
    expect(criticalMotor(four, 8)!.paths).toEqual(["a", "d"]);
  });
});

describe("more of what is taught (common practice, no source)", () => {
  it("5° of bank to the live side lowers the minimum control speed", () => {
    const level = { ...twin("clockwise"), frame: () => ({ ...frame, mostBank: 0 }) };
    expect(controlSpeed(twin("clockwise"), "left")).toBeLessThan(controlSpeed(level, "left"));
  });
  it("so does a dead propeller that drags less, and a shaft splayed to point past the balance point", () => {
    const dragging = twin("clockwise", { deadDrag: 2 });
    expect(controlSpeed(twin("clockwise"), "left")).toBeLessThan(controlSpeed(dragging, "left"));
    expect(controlSpeed(twin("clockwise", { splay: 5 * degree }), "left")).toBeLessThan(controlSpeed(twin("clockwise"), "left"));
  });
  it("equal and opposite propellers leave nothing to trim; one clockwise alone rolls the aircraft left, held by right aileron", () => {
    const pair = together(plantLoads(twin("inboard").plants, [], [0, 0, 0], 12)!);
    for (const part of [pair.side, pair.roll, pair.yaw]) expect(part).toBeCloseTo(0, 12);
    const single = twinOf([plant("nose", 0, true, { thrust: 10, torque: 0.4 })]);
    const held = heldAt(single, [], 12, "wings level")!;
    expect(together(held.contributions)).toMatchObject({ roll: -0.4, yaw: 0, side: 0 });
    expect(held.aileron!).toBeLessThan(0); // aileron positive rolls left
  });
  it("a shaft whose line goes through the balance point turns nothing", () => {
    const hub = [-0.3, 0.4, 0] as const;
    const through = twinOf([{ ...plant("right", 0, true, { thrust: 9 }), hub, thrustAxis: [-0.6, 0.8, 0] }]);
    expect(together(plantLoads(through.plants, [], [0, 0, 0], 10)!).yaw).toBeCloseTo(0, 12);
  });
});

describe("a propeller at an angle to the air", () => {
  const air = atmosphere({ altitude: 0 })!;
  const propeller = { diameter: 0.254, pitch: 0.127, blades: 2, family: "thin", folding: false, clockwise: true } as const;
  const state = { propeller, rotation: 700, speed: 12, angle: 0.1, air };
  const found = inclinedPropeller(state);

  // The same elements, asked at 36 places round the disc for the speed they meet there.
  const round = () => {
    const blade = bladeOf(propeller);
    const places = Array.from({ length: 36 }, (_, i) => (2 * Math.PI * (i + 0.5)) / 36);
    let [thrust, moment, force] = [0, 0, 0];
    for (const element of blade.elements) {
      for (const place of places) {
        const across = state.speed * Math.sin(state.angle) * Math.sin(place);
        const load = elementLoad(blade, element, state.rotation + across / element.radius, state.speed * Math.cos(state.angle), air);
        thrust += load.thrust / 36;
        moment += (load.thrust / 36) * element.radius * Math.sin(place);
        force += ((load.torque / element.radius) * Math.sin(place)) / 36;
      }
    }
    return { thrust, offset: moment / thrust, force };
  };
  it("is what its elements give round the disc", () => {
    const { thrust, offset, force } = round();
    // First order in V sin α over the elements' own speed, at most 0.1: its square.
    expectNear(found.thrust, thrust, 0.01);
    expectNear(found.bladeOffset!, offset, 0.01);
    expectNear(found.normalForce, force, 0.02);
  });
  it("moves the thrust to the blade that goes down, by less than a tenth of the radius at 6°, and pushes up", () => {
    expect(found.bladeOffset!).toBeGreaterThan(0);
    expect(found.bladeOffset!).toBeLessThan(0.1 * 0.127);
    expect(found.normalForce).toBeGreaterThan(0);
    const down = inclinedPropeller({ ...state, angle: -0.1 });
    expect(down.bladeOffset!).toBeCloseTo(-found.bladeOffset!, 9);
  });
});

describe("what can't be held", () => {
  it("no controls: no balance", () => expect(lateralBalance({ ...frame, aileron: undefined, rudder: undefined }, { side: 0, roll: 0, yaw: 1 }, 10)).toBeUndefined());
  it("a rudder that does nothing: no balance", () =>
    expect(lateralBalance({ ...frame, rudder: { ...frame.rudder, side: 0, roll: 0, yaw: 0 } }, { side: 0, roll: 0, yaw: 1 }, 10)).toBeUndefined());
  it("a rudder too small at any speed: no minimum control speed", () =>
    expect(minimumControlSpeed({ ...twin("clockwise"), frame: () => ({ ...frame, rudder: { ...frame.rudder, yaw: -1e-5 }, sideslip: { ...frame.sideslip, yaw: 1e-5 } }) }, ["left"], 3, 20)).toBeUndefined());
  it("nothing that turns it: held to the slowest speed asked for, and said so", () =>
    expect(minimumControlSpeed(twinOf([plant("nose", 0, true, none)]), ["nose"], 3, 20)).toMatchObject({ speed: 3, below: true }));
});
