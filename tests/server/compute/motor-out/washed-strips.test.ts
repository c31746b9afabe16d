import { describe, expect, it } from "vitest";
import type { LateralStrip } from "../../../../server/compute/lattice/lateral-strips";
import { washedStrips } from "../../../../server/compute/motor-out/washed-strips";
import type { Powerplant } from "../../../../server/model/design/power";

const plant: Powerplant = {
  path: "nose", hub: [0, 0.2, 0], thrustAxis: [-1, 0, 0], pusher: false,
  propeller: { diameter: 0.3, pitch: 0.15, blades: 2, family: "thin", folding: false, clockwise: true },
};
const strip = (x: number, y: number, z: number, form: Partial<LateralStrip> = {}): LateralStrip =>
  ({ path: "upright", kind: "fin", x, y, z, chord: 0.1, length: 0.02, ny: -1, along: [0, 1], solved: 0, image: false, ...form });
const wind = { speed: 10, angle: 0, density: 1.225 };
const washed = (at: LateralStrip, thrust = 12, angle = 0) => washedStrips([at], plant, { thrust, torque: 0.3 }, { ...wind, angle });

describe("strips in a slipstream", () => {
  it("far behind, on the shaft's line: V² + 2T/ρA (momentum)", () => {
    const square = 2 * 12 / (1.225 * Math.PI * 0.15 ** 2);
    const [{ pressure, speed }] = washed(strip(50, 0.2, 0));
    expect(pressure).toBeCloseTo(square / 100, 4); // half the induced speed's last (R/x)²/2, a hundred-thousandth
    expect(speed).toBeCloseTo(Math.sqrt(1 + square / 100) - 1, 4);
  });
  it("none beside it, ahead of it, without thrust, or of a wing", () => {
    for (const at of [strip(0.8, 0.4, 0), strip(-0.1, 0.2, 0), strip(0.8, 0.2, 0, { kind: "wing" })]) expect(washed(at)).toEqual([]);
    expect(washed(strip(0.8, 0.2, 0), 0)).toEqual([]);
  });
  it("less across its edge, in proportion", () => {
    const [whole] = washed(strip(0.8, 0.2, 0));
    const parts = Array.from({ length: 50 }, (_, i) => washed(strip(0.8, 0.2, 0.09 + i * 0.002))[0]?.pressure ?? 0);
    for (let i = 1; i < parts.length; i++) expect(parts[i]).toBeLessThanOrEqual(parts[i - 1]);
    expect(parts.some((part) => part > 0.2 * whole.pressure && part < 0.8 * whole.pressure)).toBe(true);
    expect(parts[parts.length - 1]).toBe(0);
  });
  it("drifts up with the nose up", () => {
    expect(washed(strip(0.8, 0.2, 0.15))).toEqual([]);
    expect(washed(strip(0.8, 0.2, 0.15), 12, 0.2)[0].pressure).toBeGreaterThan(0);
  });
});
