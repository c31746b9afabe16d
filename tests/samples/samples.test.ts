import { readdirSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { format } from "../../grammar/printer/format";
import { catalogue } from "../../shared/catalogue";
import { halfWidth } from "../../grammar/units/quantity";
import { analyseFile, figureOf, root } from "../service";

const names = readdirSync(join(root, "samples")).filter((name) => name.endsWith(".airframe"));

describe.each(names)("%s", (name) => {
  const analysis = analyseFile("samples", name);

  it("is sound: nothing but hints, and no waiver", () => {
    expect(analysis.findings.filter((finding) => finding.severity !== "hint")).toEqual([]);
    expect(analysis.model.file.parsed.text).not.toMatch(/^\s*waive\b/m);
  });

  it("stands as the formatter would leave it", () => {
    expect(format(analysis.model.file.parsed.text)).toBe(analysis.model.file.parsed.text);
  });

  it("gives every figure finite and with its dimension", () => {
    for (const set of analysis.sets) {
      for (const figure of set.all()) {
        expect(Number.isFinite(figure.quantity.value) && Number.isFinite(halfWidth(figure.quantity)), figure.name).toBe(true);
        expect(figure.account.formula && figure.account.source, figure.name).toBeTruthy();
      }
      const got = new Set(set.all().map((figure) => figure.entry.name));
      const silent = catalogue.map((entry) => entry.name).filter((entry) => !got.has(entry));
      // A design has a tail or a canard or neither, one motor or more, flaps or none, wheels or none and then a throw, sorties or none, runs on a stand or none, and its spiral doubles or halves; all else must be there in each of these.
      expect(silent.filter((entry) => !/tail_volume|canard_volume|downwash_slope|spiral|motor_out|flap_change|takeoff_run|landing_run|hand_launch|climb\.rudder|climb\.right_thrust|sortie|\.bench_/.test(entry))).toEqual([]);
      expect(silent.filter((entry) => /spiral/.test(entry))).toHaveLength(1);
    }
  });

  it("balances ahead of its neutral point, in the plane of symmetry", () => {
    for (const set of analysis.sets) {
      expect(set.value("stability.static_margin")!.value).toBeGreaterThan(0.03);
      // The motor lies along a shaft set to one side, so a single is off by a tenth of a millimetre.
      expect(Math.abs(set.value("cg.y")!.value)).toBeLessThan(1e-4);
    }
  });
});

describe("the twin derived from the single", () => {
  const single = analyseFile("samples", "plover.airframe");
  const twin = analyseFile("samples", "plover-twin.airframe");

  it("has the single's wing and a centre between, counted once", () => {
    // 230 mm of constant 245 mm chord each side.
    expect(figureOf(twin, "wing.area")! - figureOf(single, "wing.area")!).toBeCloseTo(2 * 0.23 * 0.245, 9);
    expect(figureOf(twin, "wing.span")! - figureOf(single, "wing.span")!).toBeCloseTo(2 * 0.23, 9);
  });

  it("has eight servos, two receivers, and propellers that turn against each other", () => {
    const { design } = twin.sets[0].loading;
    expect(design.loads.filter((load) => load.kind === "servo")).toHaveLength(8);
    expect(design.receivers).toHaveLength(2);
    expect(design.powerplants.map((plant) => plant.propeller!.clockwise)).toEqual([false, true]);
    expect(design.powerplants.map((plant) => Math.sign(plant.thrustAxis[1].value))).toEqual([1, -1]);
  });

  it("weighs the outer panels as the single does", () => {
    expect(figureOf(twin, "mass.main")).toBeCloseTo(figureOf(single, "mass.main")!, 9);
  });
});
