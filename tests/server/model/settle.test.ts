import { describe, expect, it } from "vitest";
import { settle, settler, variablesOf } from "../../../server/model/design/settle";
import { q } from "../compute/mass/quantities";

const points = [[1, 0], [0, 0]] as const;
const model = {
  title: "Plover",
  at: [q(0.1, "length", { tail: 0.002 }), q(0, "length"), q(0.05, "length")] as const,
  parts: [
    { path: "a", weight: q(0.4, "mass", { pack: 0.004, share: 0.001 }), shape: { points }, size: undefined },
    { path: "b", weight: q(0.2, "mass", { share: -0.002 }), throws: { up: q(0.3, "angle") } },
    { path: "c", weight: q(1, "mass") },
  ],
};

describe("settling a model", () => {
  it("gives every quantity its value and leaves the rest", () => {
    expect(settle(model)).toEqual({
      title: "Plover", at: [0.1, 0, 0.05],
      parts: [
        { path: "a", weight: 0.4, shape: { points }, size: undefined },
        { path: "b", weight: 0.2, throws: { up: 0.3 } },
        { path: "c", weight: 1 },
      ],
    });
  });

  it("moves what depends on a variable, each by its own share", () => {
    const up = settle(model, "share");
    expect(up.parts.map((p) => p.weight)).toEqual([0.4 + 0.001, 0.2 - 0.002, 1]);
    expect(settle(model, "share", -1).parts.map((p) => p.weight)).toEqual([0.4 - 0.001, 0.2 + 0.002, 1]);
    expect(settle(model, "tail").at).toEqual([0.1 + 0.002, 0, 0.05]);
  });

  it("shares with the nominal model what does not depend on it", () => {
    const ready = settler(model);
    const up = ready.at("pack", 1);
    expect(up.parts[0]).not.toBe(ready.nominal.parts[0]);
    expect(up.parts[1]).toBe(ready.nominal.parts[1]);
    expect(up.at).toBe(ready.nominal.at);
    expect(ready.nominal.parts[0].shape).toBe(model.parts[0].shape);
    expect(ready.at("unknown", 1)).toBe(ready.nominal);
  });

  it("knows its variables", () => {
    expect([...variablesOf(model)].sort()).toEqual(["pack", "share", "tail"]);
    expect(variablesOf({ a: 1, b: ["x"] }).size).toBe(0);
  });

  it("leaves the model as it was", () => {
    const before = structuredClone(model);
    settler(model).at("share", 1);
    expect(model).toEqual(before);
  });
});
