import { afterEach, describe, expect, test } from "vitest";
import { atmosphere } from "../../../server/compute/atmosphere/atmosphere";
import { propellerAt } from "../../../server/compute/propeller/propeller-at";
import { propellerReport, type PropellerPoint } from "../../../shared/propeller-report";
import { propellerOf, rpm } from "../../published/propeller-data";
import { Folder, type Ran } from "./io";

const folders: Folder[] = [];
afterEach(() => folders.splice(0).forEach((folder) => folder.remove()));

const usual = { diameter: "10 in", pitch: "7 in", rpm: "6000" };
type Options = Readonly<Record<string, string | undefined>>;

async function run(options: Options, files: Readonly<Record<string, string>> = {}): Promise<Ran> {
  const made = new Folder(files);
  folders.push(made);
  const argv = Object.entries({ ...usual, ...options }).flatMap(([name, value]) => (value === undefined ? [] : [`--${name}`, value]));
  return made.run(["propeller", ...argv]);
}

async function points(options: Options, files?: Readonly<Record<string, string>>): Promise<PropellerPoint[]> {
  const { code, out, err } = await run({ ...options, format: "json" }, files);
  expect([code, err]).toEqual([0, ""]);
  return propellerReport.parse(JSON.parse(out)).points;
}

async function said(options: Options, files?: Readonly<Record<string, string>>): Promise<string> {
  const { code, out, err } = await run(options, files);
  expect([options, code, out]).toEqual([options, 2, ""]);
  return err.trimEnd();
}

describe("points", () => {
  test("from standing still to where it pulls no more", async () => {
    const all = await points({});
    expect(all.length).toBe(21);
    expect(all[0]).toMatchObject({ speed: 0, advance_ratio: 0, efficiency: 0 });
    const last = all[all.length - 1];
    // A ten-millionth of the advance ratio, at which thrust falls by 0.19 for each unit of it.
    expect(Math.abs(last.thrust_coefficient)).toBeLessThan(1e-6);
    expect(last.power_coefficient).toBeGreaterThan(0);
    for (let i = 1; i < all.length; i++) expect(all[i].thrust).toBeLessThan(all[i - 1].thrust);
  });

  test("are what the blade elements give, and their coefficients what they are defined as", async () => {
    const air = atmosphere({ altitude: 0 })!;
    const direct = propellerAt({ propeller: propellerOf(10, 7, "thin"), rotation: 6000 * rpm, speed: 12, air });
    const [point] = await points({ speed: "12 m/s" });
    const [turns, diameter] = [100, 0.254];
    // All to rounding.
    expect(point.rpm).toBeCloseTo(6000, 9);
    expect(point.thrust).toBeCloseTo(direct.thrust, 9);
    expect(point.power).toBeCloseTo(direct.power, 9);
    expect(point.advance_ratio).toBeCloseTo(12 / (turns * diameter), 9);
    expect(point.thrust_coefficient).toBeCloseTo(point.thrust / (air.density * turns ** 2 * diameter ** 4), 9);
    expect(point.power_coefficient).toBeCloseTo(point.power / (air.density * turns ** 3 * diameter ** 5), 9);
    expect(point.efficiency).toBeCloseTo((point.thrust * 12) / point.power, 9);
  });

  test("over the airspeeds asked for, in any unit of the language", async () => {
    const speeds = (await points({ speed: "0..25 m/s" })).map(({ speed }) => speed);
    expect([speeds.length, speeds[0], speeds[20]]).toEqual([21, 0, 25]);
    expect((await points({ speed: "18 km/h .. 20 m/s" }))[0].speed).toBeCloseTo(5, 12);
    const [metric] = await points({ diameter: "254 mm", pitch: "177.8mm", rpm: "6000 rpm", speed: "36 km/h" });
    const [imperial] = await points({ diameter: '10"', pitch: "7 in", speed: "10 m/s" });
    expect(metric.thrust).toBeCloseTo(imperial.thrust, 9);
  });

  test("rest on blades, type and air", async () => {
    const still = async (options: Options) => (await points({ ...options, speed: "0 m/s" }))[0];
    const usualPoint = await still({});
    expect((await still({ blades: "3" })).thrust).toBeGreaterThan(1.2 * usualPoint.thrust);
    for (const blade of ["wide", "thick", "folding"]) expect((await still({ blade })).thrust).not.toBe(usualPoint.thrust);
    const high = await still({ altitude: "2000 m" });
    // Thrust by density, 0.822 at 2000 m (ISO 2533); the Reynolds number takes up to 0.15 of that change more.
    expect(high.thrust / usualPoint.thrust).toBeLessThan(0.822);
    expect(high.thrust / usualPoint.thrust).toBeGreaterThan(0.79);
    expect((await still({ temperature: "35 degC" })).thrust).toBeLessThan(usualPoint.thrust);
  });

  test("of its own blade, with or without header and remarks", async () => {
    const radii = [0.15, 0.25, 0.35, 0.45, 0.55, 0.65, 0.75, 0.85, 0.95, 1];
    const rows = radii.map((radius) => [radius, 0.2, (Math.atan(0.7 / (Math.PI * radius)) * 180) / Math.PI]);
    const bare = rows.map((row) => row.join(",")).join("\n");
    const dressed = `# a blade\r\nr/R,c/R,beta\r\n\r\n${rows.map((row) => row.join(" ; ")).join("\r\n")}\r\n`;
    const files = { "bare.csv": bare, "dressed.csv": dressed };
    const [a] = await points({ stations: "bare.csv", pitch: undefined, speed: "5 m/s" }, files);
    const [b] = await points({ stations: "dressed.csv", speed: "5 m/s" }, files);
    const stations = rows.map(([radius, chord, degrees]) => ({ radius, chord, angle: (degrees * Math.PI) / 180 }));
    const own = propellerAt({ propeller: { ...propellerOf(10, 7, "thin"), stations }, rotation: 6000 * rpm, speed: 5, air: atmosphere({ altitude: 0 })! });
    expect(a.thrust).toBeCloseTo(own.thrust, 9);
    expect(b.thrust).toBeCloseTo(a.thrust, 12);
  });
});

describe("text", () => {
  test("is a table with what is left out and how to be careful", async () => {
    const { code, out } = await run({});
    expect(code).toBe(0);
    expect(out).toMatch(/^10 × 7 in, 2 thin blades, 6000 rpm: tips at 80 m\/s, Mach 0\.23, in air of 1\.225 kg\/m³\n\n/);
    const lines = out.split("\n").filter((line) => line.startsWith("  "));
    expect(lines.length).toBe(22);
    expect(new Set(lines.map((line) => line.length)).size).toBe(1);
    expect(lines[0]).toMatch(/speed m\/s +advance +thrust coeff\. +power coeff\. +efficiency +thrust N +power W$/);
    expect(out).toMatch(/It pulls up to \d+\.\d m\/s\./);
    expect(out).toContain("Not modelled: compressibility, twist under load");
    expect(out).toContain("Propellers cut:");
    expect(out.trimEnd().endsWith("Local law and the flying club's rules come first.")).toBe(true);
    expect(out).not.toContain("common practice");
    expect(out).not.toContain("brakes");
  });

  test("warns of more rpm than the type is turned at, and of braking", async () => {
    expect((await run({ rpm: "16000" })).out).toContain("usually turned at 14500 rpm at most");
    expect((await run({ speed: "30 m/s" })).out).toContain("Where it brakes hard");
  });
});

test("csv has a header and full numbers", async () => {
  const { code, out } = await run({ format: "csv", speed: "0..20 m/s" });
  const rows = out.trimEnd().split("\n");
  expect(code).toBe(0);
  expect(rows[0]).toBe("rpm,speed,advance_ratio,thrust_coefficient,power_coefficient,efficiency,thrust,power");
  expect(rows.length).toBe(22);
  expect(rows.slice(1).every((row) => row.split(",").length === 8 && row.split(",").every((cell) => Number.isFinite(Number(cell))))).toBe(true);
  const json = await points({ speed: "0..20 m/s" });
  expect(Number(rows[11].split(",")[6])).toBe(json[10].thrust);
});

describe("what is wrong is said, with 2", () => {
  test.each<readonly [Options, string]>([
    [{ diameter: "10" }, "--diameter takes a length: 10 has no unit; did you mean 10 mm?"],
    [{ diameter: "10 inch" }, '--diameter: no unit "inch"; did you mean 10 in?'],
    [{ diameter: "10 xyzzy" }, '--diameter: no unit "xyzzy"; a unit such as mm comes after the number'],
    [{ diameter: "10 g" }, "--diameter takes a length; 10 g is a weight"],
    [{ diameter: "ten" }, '--diameter takes a length such as "10 mm", not "ten"'],
    [{ diameter: "0 in" }, "--diameter must be more than 0; here it is 0 in"],
    [{ pitch: "-3 in" }, "--pitch must be more than 0; here it is -3 in"],
    [{ pitch: undefined }, "a propeller needs its --pitch, or --stations that say its angles"],
    [{ rpm: "6000 m" }, "--rpm takes a speed of rotation; 6000 m is a length"],
    [{ speed: "10" }, "--speed takes a speed: 10 has no unit; did you mean 10 m/s?"],
    [{ speed: "0..25" }, "--speed takes a speed: 25 has no unit; did you mean 25 m/s?"],
    [{ speed: "25..5 m/s" }, "--speed goes from the lower to the higher; 25..5 m/s does not"],
    [{ speed: "1..2..3 m/s" }, '--speed goes from one value to another, such as "0..25 m/s", not "1..2..3 m/s"'],
    [{ blade: "thn" }, '--blade is one of thin, wide, thick, folding; "thn" is none of them; did you mean thin?'],
    [{ blade: "foldng" }, '--blade is one of thin, wide, thick, folding; "foldng" is none of them; did you mean folding?'],
    [{ blades: "2.5" }, "--blades takes a whole number from 1 to 12, not 2.5"],
    [{ altitude: "20 km" }, "--altitude must lie between -500 m and 11 km; here it is 20 km"],
    [{ temperature: "90 degC" }, "--temperature must lie between -60 degC and 60 degC; here it is 90 degC"],
  ])("%j", async (options, message) => expect(await said(options)).toBe(message));

  test.each([
    ["0.2,0.1,30\n0.3,0.1\n", "b.csv:2: a station is three numbers, r/R, c/R and the angle in degrees; here are 2"],
    ["# blade\nr/R,c/R,beta\n0.2,o.1,30\n", 'b.csv:3: "o.1" is no number; a station is r/R, c/R and the angle in degrees'],
    ["0.2,,30\n", "b.csv:1: a number is missing; a station is r/R, c/R and the angle in degrees"],
    ["r,c,b\nr,c,b\n", 'b.csv:2: "r" is no number; a station is r/R, c/R and the angle in degrees'],
    ["2,0.1,30\n", "b.csv:1: r/R must be more than 0.02 and at most 1; here it is 2"],
    ["0.3,0.1,30\n0.2,0.1,30\n", "b.csv:2: r/R must grow from line to line; 0.2 comes after 0.3"],
    ["0.3,-0.1,30\n", "b.csv:1: c/R must lie between 0 and 2; here it is -0.1"],
    ["0.3,0.1,300\n", "b.csv:1: the angle must lie between -90 and 90 degrees; here it is 300"],
    ["0.3,0.1,30\n", "b.csv has one station; a blade needs two or more"],
    ["r,c,b\n", "b.csv has no station; a blade needs two or more"],
  ])("stations %j", async (text, message) => expect(await said({ stations: "b.csv" }, { "b.csv": text })).toBe(message));

  test("of options and files as everywhere", async () => {
    expect(await said({ stations: "none.csv" })).toBe("there is no file none.csv");
    expect(await said({ rpm: undefined })).toContain("required option '--rpm <number>' not specified");
    expect(await said({ format: "yaml" })).toContain("Allowed choices are text, json, csv");
    expect(await said({ pich: "7 in" })).toContain("Did you mean --pitch?");
  });

  test("a blade that does not pull needs a --speed", async () => {
    const flat = { "b.csv": "0.2,0.1,-30\n1,0.1,-30\n" };
    expect(await said({ stations: "b.csv" }, flat)).toBe("it does not pull standing still: say at which --speed it is wanted");
    expect((await points({ stations: "b.csv", speed: "5 m/s" }, flat))[0].thrust).toBeLessThan(0);
  });
});
