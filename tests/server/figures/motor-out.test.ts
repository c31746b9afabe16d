import { afterEach, describe, expect, it } from "vitest";
import { halfWidth } from "../../../grammar/units/quantity";
import type { Analysis } from "../../../server/analysis";
import { absenceOf } from "../../../server/figures/absence";
import { analyseText, figureOf } from "../../service";
import { twinText, type TwinForm, type Turning } from "./twins";

const known = new Map<string, Analysis>();
const twin = (form: TwinForm = {}): Analysis => {
  const text = twinText(form);
  const found = known.get(text) ?? analyseText(text);
  known.set(text, found);
  return found;
};
const controlSpeed = (of: Analysis, dead: string) => figureOf(of, `motor_out.${dead}.minimum_control_speed`)!;
const critical = (turning: Turning) => twin({ turning }).set("").facts.motorOut!.critical!;
const accountOf = (of: Analysis, name: string) => of.set("").get(name)!.account;

afterEach(() => new Promise<void>((resolve) => setImmediate(resolve)));

// Common practice, no source: what pilots of twins are taught. All from one text, with the propellers' senses changed.
describe("a pair of propellers", () => {
  it("that turn against each other: neither is critical, and each failure is the other's image", () => {
    for (const turning of ["inboard", "outboard"] as const) {
      expect(critical(turning).paths).toEqual([]);
      // Strips of a symmetric design are those of one side: rounding.
      expect(controlSpeed(twin({ turning }), "right") / controlSpeed(twin({ turning }), "left")).toBeCloseTo(1, 6);
      for (const name of ["minimum_control_speed", "rudder", "climb_rate"]) {
        expect(accountOf(twin({ turning }), `motor_out.left.${name}`).inputs.find((input) => input.name === "critical")!.value).toMatch(/^neither/);
      }
    }
  });
  it("whose blades go down on the inboard side can be held at less speed than the reverse, and needs less rudder", () => {
    expect(controlSpeed(twin({ turning: "inboard" }), "left")).toBeLessThan(0.998 * controlSpeed(twin({ turning: "outboard" }), "left"));
    expect(Math.abs(figureOf(twin({ turning: "inboard" }), "motor_out.left.rudder")!)).toBeLessThan(Math.abs(figureOf(twin({ turning: "outboard" }), "motor_out.left.rudder")!));
  });
  it("that turn alike: the left is critical where they turn clockwise, the right where they turn the other way, by torque, the swirl and the descending blade", () => {
    expect(critical("clockwise").paths).toEqual(["left"]);
    expect(critical("anticlockwise").paths).toEqual(["right"]);
    expect(critical("clockwise").because.map(({ cause }) => cause)).toEqual(["torque", "slipstream", "descending blade"]);
    const both = twin({ turning: "clockwise" });
    expect(controlSpeed(both, "left")).toBeGreaterThan(controlSpeed(both, "right"));
    expect(accountOf(both, "motor_out.left.rudder").inputs.find((input) => input.name === "critical")!.value).toBe("left, by torque and swirl on fin and tail and the blade that goes down");
  });
});

describe("figures of a motor out", () => {
  const plain = twin();
  it("the right one dead turns the nose right: the rudder goes left, and the other way round", () => {
    expect(figureOf(plain, "motor_out.right.rudder")!).toBeGreaterThan(0);
    expect(figureOf(plain, "motor_out.left.rudder")!).toBeCloseTo(-figureOf(plain, "motor_out.right.rudder")!, 9);
  });
  it("wider motors and less rudder need more speed", () => {
    expect(controlSpeed(twin({ spread: 220 }), "left")).toBeGreaterThan(1.1 * controlSpeed(plain, "left"));
    expect(controlSpeed(twin({ rudder: 20 }), "left")).toBeGreaterThan(1.05 * controlSpeed(plain, "left"));
  });
  it("the rudder is just at its throw where it ends first, at the minimum control speed", () => {
    const { control } = plain.set("").facts.motorOut!.each[0];
    expect(control!.held.limit).toBe("rudder");
    // At 1.2 × stall, faster than that, it needs less than the 30° there are.
    expect(1.2 * figureOf(plain, "flight.stall_speed")!).toBeGreaterThan(control!.speed);
    expect(Math.abs(figureOf(plain, "motor_out.left.rudder")!)).toBeLessThan((30 * Math.PI) / 180);
  });
  it("the thrust's yaw is the live motor's thrust times its arm", () => {
    const speed = 1.2 * figureOf(plain, "flight.stall_speed")!;
    const { contributions } = plain.set("").facts.motorOut!.each[0].atLiftOff!;
    const yaw = Math.abs(contributions.find(({ cause }) => cause === "thrust")!.yaw);
    const shared = plain.set("").facts.flight!.power!.thrust(speed) / 2;
    // One alone has the pack's volts to itself: more than half of both, by less than the sag of a pack of 30 C at its current, 10 %.
    expect(yaw / 0.18 / shared).toBeGreaterThan(1);
    expect(yaw / 0.18 / shared).toBeLessThan(1.1);
  });
  it("it climbs less than half as well as on both, and worse still with a propeller that can't fold", () => {
    const [one, both] = [figureOf(plain, "motor_out.left.climb_rate")!, figureOf(plain, "flight.climb_rate")!];
    expect(one).toBeLessThan(both / 2);
    const folding = analyseText(twinText().replaceAll("pitch = 5 in ;", "pitch = 5 in ; folding = yes ;"));
    expect(figureOf(folding, "motor_out.left.climb_rate")!).toBeGreaterThan(one);
  });
  it("bands come from the weight", () => {
    const loose = twin({ more: "item lead { weight = 20 g ± 10 g ; at = (40 mm, 0 mm, 0 mm) }" });
    const heavy = twin({ more: "item lead { weight = 30 g ± 10 g ; at = (40 mm, 0 mm, 0 mm) }" });
    const [a, b] = [loose, heavy].map((of) => of.set("").value("motor_out.left.climb_rate")!);
    expect(halfWidth(a)).toBeGreaterThan(0);
    // 10 g in 900: nearly straight, but the heavier also moves the balance point, which the band leaves out.
    expect(Math.abs((a.value - b.value) / halfWidth(a))).toBeGreaterThan(0.8);
    expect(Math.abs((a.value - b.value) / halfWidth(a))).toBeLessThan(1.2);
  });
  it("the plot has each failure's yaw over what full rudder gives: more of it slow, less fast", () => {
    const { x, lines } = plain.set("").series().find(({ name }) => name === "motor_out.yaw")!;
    const line = (title: string) => lines.find((one) => one.title === title)!.values as readonly number[];
    const [yaw, rudder] = [line("left dead"), line("Full rudder, left dead")];
    expect(yaw[0]).toBeGreaterThan(rudder[0]);
    expect(yaw[x.values.length - 1]).toBeLessThan(rudder[x.values.length - 1]);
  });
});

describe("where there are none, it says why", () => {
  const reason = (of: Analysis, name: string) => absenceOf(name, of.set(""));
  it("with one motor, without a rudder, and for a name no motor has", () => {
    const single = analyseText(twinText().replace(/powerplant left [\s\S]*?\n}\n/, ""));
    expect(figureOf(single, "motor_out.right.rudder")).toBeUndefined();
    expect(reason(single, "motor_out.right.rudder")).toContain("fewer than two powerplants");
    const without = twin({ rudder: 0 });
    expect(without.set("").all().some(({ name }) => name.startsWith("motor_out"))).toBe(false);
    expect(reason(without, "motor_out.right.rudder")).toContain("no rudder or ruddervator");
    expect(reason(twin(), "motor_out.middle.rudder")).toContain("there are right, left");
  });
  it("where nothing holds it: a speck of rudder", () => {
    const wide = twin({ rudder: 0.5, spread: 420, diameter: 9 });
    expect(figureOf(wide, "motor_out.left.minimum_control_speed")).toBeUndefined();
    expect(reason(wide, "motor_out.left.minimum_control_speed")).toContain("can't be held straight at any speed");
    expect(wide.findings.find(({ code }) => code === "motor_out_uncontrollable")!.message).toContain("nothing holds it straight at any speed");
  });
});
