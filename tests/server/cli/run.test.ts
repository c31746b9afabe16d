import { mkdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { afterEach, expect, test } from "vitest";
import { version } from "../../../package.json";
import { report } from "../../../shared/report";
import { glider } from "../editor/designs";
import { Folder, type Ran } from "./io";

const folders: Folder[] = [];
afterEach(() => folders.splice(0).forEach((folder) => folder.remove()));

function folder(files: Readonly<Record<string, string>>): Folder {
  const made = new Folder(files);
  folders.push(made);
  return made;
}

const run = (argv: readonly string[], files: Readonly<Record<string, string>> = { "a.airframe": glider }): Promise<Ran> => folder(files).run(argv);

const broken = 'airframe "Odd" { class = sport }\nitem a {\n\tweight = 90 ; at = (0 mm, 0 mm, 0 mm)\n}\n';
const caution = "Estimates for model aircraft without people aboard. Local law and the flying club's rules come first.";

test("check shows each finding with its line, a mark under the place, its code and its fix", async () => {
  const { code, out } = await run(["check", "b.airframe"], { "b.airframe": broken });
  expect(out).toContain(`b.airframe:3:11 error weight takes a weight: 90 has no unit; did you mean 90 g? [missing_unit]
  3 |   weight = 90 ; at = (0 mm, 0 mm, 0 mm)
    |            ^^
    fix: Write 90 g`);
  expect(out).toContain("b.airframe: 1 error");
  expect(out.trimEnd().endsWith(caution)).toBe(true);
  expect(code).toBe(1);
});

test("a design without errors is left with 0; with strict, warnings count", async () => {
  const waived = glider.replace("}\n", "}\nwaive cg_off_centre\n");
  expect((await run(["check", "a.airframe"])).code).toBe(0);
  expect((await run(["check", "a.airframe"], { "a.airframe": waived })).code).toBe(0);
  expect((await run(["check", "--strict", "a.airframe"], { "a.airframe": waived })).code).toBe(1);
  expect((await run(["check", "a.airframe"], { "a.airframe": "" })).out).toContain("a.airframe: nothing found");
});

test("colour only where it is wanted", async () => {
  const made = folder({ "b.airframe": broken });
  expect((await made.run(["check", "b.airframe"])).out).not.toContain("\u001b");
  expect((await made.run(["check", "b.airframe"], { colour: true })).out).toContain("\u001b[31merror\u001b[39m");
});

test("a long line is shown around the place", async () => {
  const long = `item a { at = (0 mm, 0 mm, 0 mm) ;${" ".repeat(200)}weight = 90 }`;
  const { out } = await run(["check", "a.airframe"], { "a.airframe": long });
  const [, text, mark] = /missing_unit\]\n +1 \| (.*)\n +\| (.*)\n/.exec(out)!;
  expect(text.slice(mark.indexOf("^"), mark.indexOf("^") + 2)).toBe("90");
  expect(text.length).toBeLessThanOrEqual(100);
});

test("the report is what its schema says, in SI units, with the ends of each band", async () => {
  for (const command of ["check", "figures"]) {
    const { out } = await run([command, "a.airframe", "--format", "json", "--units", "imperial"]);
    const read = report.parse(JSON.parse(out));
    expect(read.design).toBe("Wheatear");
    expect(Object.keys(read.loadings)).toEqual(["bare", "filming"]);
    const { value, low, high, unit } = read.loadings.bare["mass.total"];
    expect(unit).toBe("kg");
    expect(value).toBeCloseTo(0.477, 9);
    expect(high - value).toBeCloseTo(0.006, 9);
    expect(value - low).toBeCloseTo(0.006, 9);
    expect(read.loadings.bare["stability.tail_volume"].unit).toBe("1");
    expect(read.loadings.bare["aero.lift_slope"].unit).toBe("1/rad");
  }
});

test("findings of the report have their file and range", async () => {
  const { out, code } = await run(["check", "b.airframe", "--format", "json"], { "b.airframe": broken });
  expect(report.parse(JSON.parse(out)).findings).toContainEqual({
    code: "missing_unit", severity: "error", message: "weight takes a weight: 90 has no unit; did you mean 90 g?", file: "b.airframe",
    range: { start: { line: 2, character: 10 }, end: { line: 2, character: 12 } },
  });
  expect(code).toBe(1);
});

test("of several files there is one report each", async () => {
  const { out } = await run(["check", "a.airframe", "b.airframe", "--format", "json"], { "a.airframe": glider, "b.airframe": broken });
  expect(report.array().parse(JSON.parse(out)).map((each) => each.design)).toEqual(["Wheatear", "Odd"]);
});

test("figures: one table a loading, grouped", async () => {
  const { code, out } = await run(["figures", "a.airframe"]);
  expect(code).toBe(0);
  expect(out).toMatch(/^Wheatear\n\nLoading bare\n\nWeight and balance\n {2}mass\.total +477 g ± 6 g +Weight\n/);
  expect(out).toMatch(/Loading filming\n\nWeight and balance\n {2}mass\.total +567 g ± 6 g/);
  expect(out).toMatch(/Parts\n {2}mass\.main +260 g ± 6 g\n/);
  expect(out.trimEnd().endsWith(caution)).toBe(true);
});

test("figures by name or by group, of one loading, in other units", async () => {
  const { code, out } = await run(["figures", "a.airframe", "cg", "mass.total", "--loading", "filming", "--units", "imperial"]);
  expect(code).toBe(0);
  expect(out).not.toContain("bare");
  expect(out).toMatch(/mass\.total +20\.00 oz/);
  expect(out).toMatch(/cg\.x +9\.87?\d* in/);
  expect(out).not.toContain("wing.area");
});

test("a figure that isn't there says why", async () => {
  const { code, out, err } = await run(["figures", "a.airframe", "cg.x", "power.static_thrust", "structure.spar_margin", "flight.max_speed", "trim.angle", "flight.landing_run", "mass.camera"]);
  expect(code).toBe(1);
  expect(out).toContain("cg.x");
  expect(err).toContain("there is no power.static_thrust: there is no powerplant in this loading");
  expect(err).toContain("there is no structure.spar_margin: it is not computed yet");
  expect(err).toMatch(/there is no flight\.max_speed[^:]*: there is no powerplant in this loading/);
  expect(err).toMatch(/there is no trim\.angle[^:]*: no control pitches/);
  expect(err).toMatch(/there is no flight\.landing_run[^:]*: it does not stand on main wheels/);
  expect(err).toContain("there is no mass.camera in bare: no part is called camera, or it has no weight");
  expect((await run(["figures", "a.airframe", "cg.xx"])).err).toContain("did you mean cg.x?");
});

test("explain tells formula, inputs and source", async () => {
  const { code, out } = await run(["explain", "a.airframe", "wing.loading", "--loading", "filming"]);
  expect(code).toBe(0);
  expect(out).toContain("Wing loading wing.loading");
  expect(out).toContain("mass.total / wing.area");
  expect(out).toMatch(/mass\.total +567 g ± 6 g/);
  expect(out).toContain("Source: ");
  const absent = await run(["explain", "a.airframe", "power.static_thrust"]);
  expect([absent.code, absent.out]).toEqual([1, ""]);
  expect(absent.err).toContain("there is no powerplant");
});

test("bad use and files that can't be read give 2 and say what is wrong", async () => {
  const said = async (...argv: string[]): Promise<string> => {
    const { code, out, err } = await run(argv, { "plover.airframe": glider });
    expect([argv, code, out]).toEqual([argv, 2, ""]);
    return err;
  };
  expect(await said("check", "plovr.airframe")).toBe("there is no file plovr.airframe; did you mean plover.airframe?\n");
  expect(await said("check", "plover")).toBe("there is no file plover; did you mean plover.airframe?\n");
  expect(await said("check", "no/such.airframe")).toContain("nor a folder no");
  expect(await said("check", ".")).toContain("is a folder");
  expect(await said("figures", "plover.airframe", "--loading", "filmin")).toBe('plover.airframe has no loading "filmin"; did you mean filming?\n');
  expect(await said("chek", "plover.airframe")).toContain("Did you mean check?");
  expect(await said("check")).toContain("missing required argument");
  expect(await said("check", "plover.airframe", "--units", "cubits")).toContain("Allowed choices are metric, imperial");
  expect(await said("check", "plover.airframe", "--loud")).toContain("unknown option '--loud'");
  expect(await said("explain", "plover.airframe")).toContain("missing required argument");
});

test("help and version", async () => {
  expect(await run(["--version"])).toEqual({ code: 0, out: `${version}\n`, err: "" });
  const help = await run(["--help"]);
  expect(help.code).toBe(0);
  expect(help.out.replace(/\s+/g, " ")).toContain(caution);
  expect((await run(["check", "--help"])).out).toContain("--strict");
  expect((await run([])).code).toBe(2);
});

test("a design read from standard input", async () => {
  const made = folder({});
  const { code, out } = await made.run(["check", "-"], { stdin: broken });
  expect(code).toBe(1);
  expect(out).toContain("-:3:11 error");
});

test("used files are sought beside the design", async () => {
  const files = { "a.airframe": 'use "parts/b.airframe" as b\nservo x from b.s { at = (0 mm, 0 mm, 0 mm) }\n' };
  const made = folder(files);
  mkdirSync(join(made.path, "parts"));
  const missing = await made.run(["check", "a.airframe"]);
  expect(missing.out).toContain("file_not_found");
});

const untidy = "let  arm=1m\nitem a{weight=9 g;at=(arm,0 mm,0 mm)} # beside\n";

test("format writes in place, says what it wrote, and has nothing left to do", async () => {
  const made = folder({ "a.airframe": untidy, "b.airframe": "let arm = 1 m\n" });
  const text = (): string => readFileSync(join(made.path, "a.airframe"), "utf8");
  expect(await made.run(["format", "--check", "a.airframe", "b.airframe"])).toEqual({ code: 1, out: "a.airframe would change\n", err: "" });
  expect(text()).toBe(untidy);
  expect(await made.run(["format", "a.airframe", "b.airframe"])).toEqual({ code: 0, out: "a.airframe formatted\n", err: "" });
  expect(text()).toContain("let arm = 1 m\n");
  expect(text()).toContain("# beside");
  expect(await made.run(["format", "--check", "a.airframe", "b.airframe"])).toEqual({ code: 0, out: "", err: "" });
});

test("format from standard input to standard output", async () => {
  const made = folder({});
  const { code, out } = await made.run(["format", "-"], { stdin: untidy });
  expect([code, out.split("\n")[0]]).toEqual([0, "let arm = 1 m"]);
  expect(await made.run(["format", "-"], { stdin: out })).toEqual({ code: 0, out, err: "" });
  expect((await made.run(["format", "--check", "-"], { stdin: untidy })).code).toBe(1);
});

test("a new design is in the usual layout", async () => {
  const made = folder({});
  await made.run(["new", "a.airframe"]);
  expect((await made.run(["format", "--check", "a.airframe"])).code).toBe(0);
});

test("new writes a sound design, once", async () => {
  const made = folder({});
  expect(await made.run(["new", "old-goose"])).toEqual({ code: 0, out: "Wrote old-goose.airframe.\n", err: "" });
  expect(readFileSync(join(made.path, "old-goose.airframe"), "utf8")).toContain('airframe "Old goose"');
  const checked = await made.run(["check", "--strict", "old-goose.airframe"]);
  expect(checked.out).toBe(`old-goose.airframe: nothing found\n\n${caution}\n`);
  expect(checked.code).toBe(0);
  const again = await made.run(["new", "old-goose.airframe"]);
  expect(again).toEqual({ code: 2, out: "", err: "old-goose.airframe is there already; nothing was written\n" });
  expect((await made.run(["new", "no/where"])).err).toContain("there is no folder for no/where.airframe");
});
