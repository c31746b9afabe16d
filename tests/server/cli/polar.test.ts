import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { nacaOutline } from "../../../server/compute/section/naca";
import { polarReport } from "../../../shared/polar-report";
import { Folder } from "./io";

let folder: Folder;
beforeAll(() => {
  const lines = nacaOutline("2412", 60)!.map(([x, y]) => `${x.toFixed(6)} ${y.toFixed(6)}`);
  folder = new Folder({ "mine.dat": `My section\n${lines.join("\n")}\n`, "half.dat": lines.slice(0, 40).join("\n") });
});
afterAll(() => folder.remove());

const patience = 60_000;

describe("polar", () => {
  it("as json, of a file and several Reynolds numbers", async () => {
    const { code, out, err } = await folder.run(["polar", "mine.dat", "--reynolds", "90000,400k", "--format", "json"]);
    expect(code).toBe(0);
    const report = polarReport.parse(JSON.parse(out));
    expect(report.foil).toBe("mine.dat");
    expect(report.polars.map(({ reynolds }) => reynolds)).toEqual([90_000, 400_000]);
    expect(report.polars[1].lift_max).toBeGreaterThan(1);
    expect(err).toContain("At a Reynolds number of 90000: below 100,000 laminar bubbles decide");
  }, patience);

  it.each([`naca("2412")`, "naca 2412", "NACA2412", "naca_2412"])("understands %s", async (foil) => {
    const { code, out } = await folder.run(["polar", foil, "--reynolds", "1e6", "--format", "csv"]);
    expect(code).toBe(0);
    const [head, ...rows] = out.trim().split("\n");
    expect(head).toBe("reynolds,angle,lift,drag,moment");
    expect(rows.length).toBeGreaterThan(10);
  }, patience);

  it("as text, with what is not modelled", async () => {
    const { code, out } = await folder.run(["polar", "naca 0010", "--reynolds", "300000"]);
    expect(code).toBe(0);
    expect(out).toContain("Reynolds number 300000: no lift at 0.0°");
    expect(out).toContain("Not modelled: roughness");
  }, patience);

  it.each<[string, readonly string[], string]>([
    ["Reynolds numbers outside", ["naca 2412", "--reynolds", "5000"], "--reynolds lies between 40000 and 3000000"],
    ["Reynolds numbers that are none", ["naca 2412", "--reynolds", "fast"], `"fast" is none`],
    ["no such digits", ["naca 9012", "--reynolds", "200k"], `there is no section naca("9012")`],
    ["no such file", ["nime.dat", "--reynolds", "200k"], "there is no file nime.dat"],
    ["half a section", ["half.dat", "--reynolds", "200k"], "half.dat does not run around a section"],
    ["a plate", ["flat(3 %)", "--reynolds", "200k"], "a flat plate has no polar"],
  ])("refuses %s", async (_, argv, message) => {
    const { code, err } = await folder.run(["polar", ...argv]);
    expect(code).toBe(2);
    expect(err).toContain(message);
  });
});
