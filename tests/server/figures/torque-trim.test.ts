import { afterEach, describe, expect, it } from "vitest";
import { halfWidth } from "../../../grammar/units/quantity";
import type { Analysis } from "../../../server/analysis";
import { together } from "../../../server/compute/motor-out/plant";
import { absenceOf } from "../../../server/figures/absence";
import { analyseFile, analyseText, figureOf } from "../../service";
import { singleText } from "./singles";
import { twinText } from "./twins";

const degree = Math.PI / 180;
const trim = (of: Analysis, name: string) => figureOf(of, `trim.climb.${name}`);
const held = (of: Analysis) => of.set("").facts.climbTrim!.held;
const by = (of: Analysis, cause: string) => held(of).contributions.find((one) => one.cause === cause)!;
const single = analyseText(singleText());

afterEach(() => new Promise<void>((resolve) => setImmediate(resolve)));

describe("a single at full throttle in the climb (common practice, no source)", () => {
  it("turning clockwise seen from behind, straight ahead: yaws and rolls left, held by right rudder and right aileron", () => {
    const { yaw, roll } = together(held(single).contributions);
    expect([yaw, roll].every((moment) => moment < 0)).toBe(true);
    expect(trim(single, "rudder")).toBeLessThan(0);
    expect(trim(single, "aileron")).toBeLessThan(0);
    // Torque rolls it, the swirl on the fin yaws it.
    expect(by(single, "torque").roll).toBeLessThan(0);
    expect(by(single, "slipstream").yaw).toBeLessThan(0);
    // The tail takes some of the torque out of the slipstream again, never more than there is.
    expect(by(single, "slipstream").roll).toBeGreaterThan(0);
    expect(by(single, "slipstream").roll).toBeLessThan(-by(single, "torque").roll);
  });
  it("the other way round it is the image", () => {
    const other = analyseText(singleText({ rotation: "anticlockwise" }));
    for (const name of ["rudder", "aileron", "right_thrust"]) expect(trim(other, name)).toBeCloseTo(-trim(single, name)!, 9);
  });
  it("wants a few degrees of right thrust: the Plover 1 to 4, in both loadings", () => {
    const plover = analyseFile("samples", "plover.airframe");
    for (const { loading } of plover.sets) {
      const angle = figureOf(plover, "trim.climb.right_thrust", loading.name)!;
      expect(angle).toBeGreaterThan(1 * degree);
      expect(angle).toBeLessThan(4 * degree);
    }
  });
  it("nose up, slow, the blade that goes down draws it left too", () => {
    const weak = analyseText(singleText({ kv: 650 }));
    expect(by(weak, "descending blade").yaw).toBeLessThan(0);
  });
});

describe("side thrust", () => {
  it("as solved needs no rudder", () => {
    const angle = trim(single, "right_thrust")!;
    const there = analyseText(singleText({ head: `right_thrust = ${angle / degree} deg` }));
    // The speed of best climb moves a little with the shaft.
    expect(Math.abs(trim(there, "rudder")!)).toBeLessThan(0.1 * degree);
    expect(Math.abs(trim(there, "rudder")!)).toBeLessThan(0.05 * Math.abs(trim(single, "rudder")!));
    expect(trim(there, "right_thrust")! / angle).toBeCloseTo(1, 1);
  });
  it("yaws by the thrust across its arm", () => {
    const there = analyseText(singleText({ head: "right_thrust = 3 deg" }));
    const { side, yaw } = by(there, "thrust");
    const arm = figureOf(there, "cg.x")! + 0.25;
    // About an axis across the flight; the x axis stands nearly along it.
    expect(yaw / (side * arm)).toBeCloseTo(1, 2);
    expect(yaw).toBeGreaterThan(0);
  });
});

describe("two that turn against each other", () => {
  const accountOf = (of: Analysis) => of.set("").get("trim.climb.rudder")!.account.inputs;
  it("leave nothing to trim, whichever way, and the account shows how each part cancels", () => {
    for (const turning of ["inboard", "outboard"] as const) {
      const pair = analyseText(twinText({ turning }));
      for (const name of ["rudder", "aileron", "bank"]) expect(trim(pair, name)).toBeCloseTo(0, 9);
      const inputs = accountOf(pair);
      expect(inputs.find(({ name }) => name === "all together")!.value).toBe("they cancel: no yaw, no roll");
      for (const part of ["yaw by thrust", "roll by torque", "yaw by swirl on fin and tail"]) {
        const values = inputs.filter(({ name }) => name.startsWith(part)).map(({ value }) => (typeof value === "string" ? NaN : value.value));
        expect(values).toHaveLength(2);
        expect(values[0] + values[1]).toBeCloseTo(0, 9);
      }
    }
  });
  it("turning alike their torque adds up", () => {
    const alike = analyseText(twinText({ turning: "clockwise" }));
    expect(trim(alike, "aileron")).toBeLessThan(-0.1 * degree);
    expect(accountOf(alike).some(({ name }) => name === "roll by torque of all together, right wing down")).toBe(true);
  });
});

describe("figures of full throttle", () => {
  it("take the speed of best climb, and have the weight's band", () => {
    expect(held(single).speed).toBeCloseTo(single.set("").facts.flight!.performance!.climb!.speed, 12);
    const loose = analyseText(singleText({ more: "item lead { weight = 60 g ± 20 g ; at = (0 mm, 0 mm, 0 mm) }", kv: 800 }));
    expect(halfWidth(loose.set("").value("trim.climb.rudder")!)).toBeGreaterThan(0);
  });
  it("the plot: more aileron slow than fast", () => {
    const { x, lines } = single.set("").series().find(({ name }) => name === "trim.full_throttle")!;
    const aileron = lines.find(({ title }) => title.startsWith("Aileron"))!.values as readonly number[];
    expect(Math.abs(aileron[0])).toBeGreaterThan(2 * Math.abs(aileron[x.values.length - 1]));
    expect(lines).toHaveLength(2);
  });
  it("say what is left out", () => {
    expect(single.set("").get("trim.climb.rudder")!.account.notModelled).toContain("what a wing in the slipstream takes out of its swirl");
  });
  it("say why there are none", () => {
    const reason = (of: Analysis, name: string) => absenceOf(`trim.climb.${name}`, of.set(""));
    const without = analyseText(singleText({ rudder: 0 }));
    expect(trim(without, "rudder")).toBeUndefined();
    expect(reason(without, "rudder")).toContain("no rudder or ruddervator");
    const pair = analyseText(twinText());
    expect(reason(pair, "right_thrust")).toBe("there are several powerplants");
    const glider = analyseText(singleText().replace(/powerplant nose [\s\S]*?\n}\n/, ""));
    expect(reason(glider, "rudder")).toContain("there is no powerplant");
    expect(reason(analyseText(singleText({ ailerons: false })), "aileron")).toContain("no aileron");
  });
});
