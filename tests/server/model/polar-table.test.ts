import { describe, expect, it } from "vitest";
import { readPolarTable } from "../../../server/model/polar-table/read";

const degree = Math.PI / 180;
const header = ["reynolds", "angle_deg", "lift", "drag", "moment"];
const rows = [1e5, 2e5].flatMap((reynolds) =>
  [-4, -2, 0, 2, 4, 6, 8].map((angle) => [reynolds, angle, 0.2 + 0.1 * angle, 0.0125 + 0.0005 * angle * angle, -0.05]));
const text = (separator: string, head: readonly string[] = header) => [head, ...rows].map((row) => row.join(separator)).join("\n");

const read = (table: string) => {
  const found = readPolarTable(table);
  if ("fault" in found) throw new Error(found.fault);
  return found.polar;
};
const fault = (table: string) => {
  const found = readPolarTable(table);
  return "fault" in found ? found.fault : undefined;
};
const plain = read(text(","));

it("reads runs by Reynolds number, in radians", () => {
  expect(plain.runs.map(({ reynolds }) => reynolds)).toEqual([1e5, 2e5]);
  expect(plain.runs[1].points[6]).toEqual({ angle: 8 * degree, lift: 1, drag: 0.0445, moment: -0.05 });
});

const reversed = [header, ...[...rows].reverse()].map((row) => row.join(",")).join("\n");
const wavering = [header, ...rows.map(([re, ...rest], i) => [re * (1 + 0.002 * ((i % 7) - 3)), ...rest])].map((row) => row.join(",")).join("\n");
describe("layouts of tables", () => {
  it.each<[string, string]>([
    ["blanks", text("  ")],
    ["semicolons and decimal commas", text(";").replace(/\./g, ",")],
    ["tabs, decimal commas, Windows line ends", text("\t").replace(/\./g, ",").replace(/\n/g, "\r\n")],
    ["comments and empty lines", `# tunnel 3\n\n${text(",").replace("\n2", "\n\n# the second run\n2")}  # last\n`],
    ["short names with units in brackets", text(",", ["Re", "alpha [deg]", "CL", "CD", "Cm"])],
    ["blanks, units in brackets", text(" ", ["Re", "alpha (deg)", "cl", "cd", "cm"])],
    ["quoted", text(",", header.map((name) => `"${name}"`))],
    ["a byte order mark", `\uFEFF${text(",")}`],
    ["falling angles, falling Reynolds numbers", reversed],
    ["Reynolds numbers that waver", wavering],
    ["radians", [["re", "angle_rad", "lift", "drag", "moment"], ...rows.map(([re, a, ...rest]) => [re, a * degree, ...rest])].map((row) => row.join(",")).join("\n")],
    ["columns in another order, others between", ["cd;note;aoa_deg;cl;re;cm", ...rows.map(([re, a, cl, cd, cm]) => [cd, "dry", a, cl, re, cm].join(";"))].join("\n")],
  ])("%s", (_, table) => {
    const { runs } = read(table);
    expect(runs.map(({ reynolds }) => Math.round(reynolds))).toEqual([1e5, 2e5]);
    runs.forEach((run, k) => run.points.forEach((point, i) => {
      const wanted = plain.runs[k].points[i];
      for (const name of ["angle", "lift", "drag", "moment"] as const) expect(point[name]).toBeCloseTo(wanted[name]!, 12);
    }));
  });

  it("without moments, or with some cells of them empty", () => {
    const none = text(",").split("\n").map((line) => line.split(",").slice(0, 4).join(",")).join("\n");
    expect(read(none).runs[0].points[0]).not.toHaveProperty("moment");
    const some = text(",").replace(/,-0\.05$/m, ",");
    expect(read(some).runs[0].points.map(({ moment }) => moment)).toEqual([undefined, ...Array<number>(6).fill(-0.05)]);
  });
});

const line = (n: number, cells: string) => text(",").split("\n").map((old, i) => (i === n - 1 ? cells : old)).join("\n");
describe("faults of tables", () => {
  it.each<[string, string, string]>([
    ["nothing", "# to come\n", "holds nothing"],
    ["no header", text(",").split("\n").slice(1).join("\n"), "has no header that names its columns, as in: reynolds, angle_deg, lift, drag, moment"],
    ["no Reynolds number", text(",", ["x", "angle_deg", "lift", "drag"]), 'has no column "reynolds" in its header'],
    ["no lift and drag", text(",", ["re", "angle_deg", "a", "b"]), 'has no column "lift" and no column "drag" in its header'],
    ["angles without a unit", text(",", ["re", "alpha", "cl", "cd", "cm"]), 'says no unit in its column "alpha"; name it angle_deg or angle_rad'],
    ["two lifts", text(",", ["re", "angle_deg", "cl", "cd", "lift"]), 'has two columns for lift: "cl" and "lift"'],
    ["no points", header.join(","), "has a header and no points"],
    ["too few points", text(",").split("\n").slice(0, 5).join("\n"), "has 4 points at a Reynolds number of 100000; a polar needs at least 5"],
    ["no number", line(4, "100000,0,stall,0.01,0"), 'has no number for "lift" on its line 4'],
    ["a row cut short", line(4, "100000,0,0.2"), 'has no number for "drag" on its line 4'],
    ["no number for a moment", line(4, "100000,0,0.2,0.01,?"), 'has no number for "moment" on its line 4'],
    ["decimal commas parted by commas", line(4, "100000,0,0,2,0,0125,-0,05"), "has more cells than names of columns on its line 4; with decimal commas, part the columns by ;"],
    ["a drag of nothing", line(4, "100000,0,0.2,0,-0.05"), "has a drag of 0 on its line 4; a drag coefficient is above 0 and below 3"],
    ["thousands", text(",").replace(/^([12])00000/gm, "$100"), "has a Reynolds number of 100 on its line 2; write it out, as 200000"],
    ["angles that go back", line(4, "100000,-3,0.2,0.01,-0.05"), "has angles that go back at -3 deg on its line 4; at each Reynolds number they must rise, or fall, throughout"],
    ["an angle twice", line(4, "100000,-2,0.2,0.01,-0.05"), "has angles that go back at -2 deg on its line 4"],
    ["radians named degrees", [header, ...rows.map(([re, a, ...rest]) => [re, a * degree, ...rest])].map((row) => row.join(",")).join("\n"), "has lift that rises by 328 a radian at a Reynolds number of 100000; are its angles in radians?"],
    ["degrees named radians", text(",").replace("angle_deg", "angle_rad"), "has lift that rises by 0.10 a radian at a Reynolds number of 100000; are its angles in degrees?"],
    ["lift that falls", [header, ...rows.map(([re, a, l, ...rest]) => [re, a, -l, ...rest])].map((row) => row.join(",")).join("\n"), "has lift that rises by 0.00 a radian at a Reynolds number of 100000; a polar needs its rising part"],
    ["a run that comes back", `${text(",")}\n${text(",").split("\n").slice(1, 8).join("\n")}`, "comes back to a Reynolds number of 100000; its rows must stand together, by rising angle"],
  ])("%s", (_, table, message) => expect(fault(table)).toContain(message));

  it("is never anything but a fault or finite numbers, whatever the text", () => {
    for (let k = 0; k < 400; k++) {
      const at = (k * 7919) % text(",").length;
      const found = readPolarTable(text(",").slice(0, at) + ["", ",", "\n", "x", "-", "1e9", ";"][k % 7] + text(",").slice(at + (k % 3)));
      if ("polar" in found) {
        for (const run of found.polar.runs) {
          expect(run.points.every(({ angle, lift, drag }) => [angle, lift, drag].every(Number.isFinite) && drag > 0)).toBe(true);
        }
      } else expect(found.fault).toMatch(/^(has|says|holds|comes) /);
    }
  });
});
