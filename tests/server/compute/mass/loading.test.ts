import { describe, expect, it } from "vitest";
import { without } from "../../../../server/compute/mass/loading";
import { load, panel, parts, tube, wing } from "./parts";

const full = parts({
  surfaces: [wing([panel({ span: 0.5, chord: [0.2, 0.2] })], { spars: [
    tube("main.tube.right", [0, 0, 0], [0, 0.5, 0], 0.01, 0.008, 1500), tube("main.tube.left", [0, 0, 0], [0, -0.5, 0], 0.01, 0.008, 1500),
  ] })],
  loads: ["ail.right", "ail.left", "pods.right.motor", "pods.left.motor", "pods.right.esc", "aileron_extra"].map((path) => load(path, 0.1, [0, 0, 0])),
});

const left = (...paths: string[]) => without(full, paths).loads.map((l) => l.path);

describe("parts left out of a loading", () => {
  it("a plain name takes both of a mirrored pair, and nothing that only begins alike", () => {
    expect(left("ail")).toEqual(["pods.right.motor", "pods.left.motor", "pods.right.esc", "aileron_extra"]);
  });
  it("one side, a placed copy, a part in both copies", () => {
    expect(left("ail.left")).not.toContain("ail.left");
    expect(left("ail.left")).toContain("ail.right");
    expect(left("pods.right")).toEqual(["ail.right", "ail.left", "pods.left.motor", "aileron_extra"]);
    expect(left("pods.motor")).toEqual(["ail.right", "ail.left", "pods.right.esc", "aileron_extra"]);
  });
  it("a spar of a surface, or the surface", () => {
    expect(without(full, ["main.tube"]).surfaces[0].spars).toEqual([]);
    expect(without(full, ["main.tube.left"]).surfaces[0].spars.map((s) => s.path)).toEqual(["main.tube.right"]);
    expect(without(full, ["main"]).surfaces).toEqual([]);
  });
  it("nothing named, nothing changed", () => {
    expect(without(full, [])).toBe(full);
  });
});
