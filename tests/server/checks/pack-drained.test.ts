import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { analyseText, root } from "../../service";
import { applied, codesOf } from "./edits";

const sample = readFileSync(join(root, "samples/faults/pack_drained.airframe"), "utf8");
const before = sample.slice(0, sample.indexOf("sortie evening"));
const check = (sortie: string, rest = "") => {
  const text = `${before}${rest}\nsortie day { ${sortie} }\n`;
  const findings = analyseText(text).findings;
  return { text, findings, codes: codesOf(findings), marked: findings.map(({ place }) => text.slice(place.start, place.end)) };
};
const mended = (text: string, title: RegExp): string => {
  const fix = analyseText(text).findings[0].fixes!.find((one) => title.test(one.title))!;
  const after = applied(text, fix);
  expect(codesOf(analyseText(after).findings), fix.title).toEqual([]);
  return after;
};

describe("legs that can't be flown", () => {
  it.each([
    ["slower than the stall", "leg out { speed = 5 m/s ; time = 1 min }", "5 m/s", /^leg out of day can't be flown: at 5 m\/s it stalls; it takes 7\.\d m\/s/, /^Write speed = 1[01] m\/s$/],
    ["too steep a turn", "leg turn { speed = 10 m/s ; bank = 70 deg ; time = 1 min }", "10 m/s", /banked 70 deg, it stalls; it takes 13/, /^Write speed = 1[78] m\/s$/],
    ["faster than it flies", "leg dash { speed = 60 m/s ; time = 1 min }", "60 m/s", /drags more than full throttle pulls; it flies level at 25/, /^Write speed = 2[23] m\/s$/],
    ["a climb that is too steep", "leg up { speed = 20 m/s ; climb = 15 m/s ; height = 50 m }", "15 m/s", /at 20 m\/s full throttle climbs \d/, /^Write climb = /],
    ["a height that is not reached", "leg up { climb = 0 m/s ; height = 50 m }", "50 m", /neither climbs nor sinks/, undefined],
    ["full throttle where it sinks", "leg up { speed = 30 m/s ; climb = full ; height = 50 m }", "30 m/s", /drags more than full throttle pulls/, undefined],
  ])("%s: said at the value, with a value that does", (_, leg, at, message, fix) => {
    const { text, findings, codes, marked } = check(leg);
    expect(codes).toEqual(["pack_drained"]);
    expect(marked).toEqual([at]);
    expect(findings[0]).toMatchObject({ severity: "error", message: expect.stringMatching(message) as string });
    if (fix) mended(text, fix);
    else expect(findings[0].fixes ?? []).toEqual([]);
  });

  it("a pack too weak for full throttle", () => {
    const weak = before.replace("c_rating = 40", "resistance = 900 mohm");
    const text = `${weak}sortie day { leg up { climb = full ; speed = 10 m/s ; height = 50 m } }`;
    const { findings } = analyseText(text);
    // With so weak a pack the motors give less too: that it climbs at all is said, and nothing of charge.
    for (const { code, message } of findings) if (code === "pack_drained") expect(message).toMatch(/sags too far|full throttle/);
  });
});

describe("charge", () => {
  it("is gone in the leg it is said at", () => {
    const { findings, marked } = check("leg out { distance = 4 km } ; leg wait { time = 30 min } ; leg back { distance = 4 km }");
    expect(marked).toEqual(["30 min"]);
    expect(findings[0].message).toMatch(/^day takes more than pack holds, of which 80 % may be used: that is gone \d.* into leg wait; shorten/);
  });
  it("with flights out and home alone, no leg is cut, and a larger pack is offered", () => {
    const { text, findings } = check("leg out { distance = 10 km } ; leg back { distance = 10 km }");
    expect(findings[0].fixes!.map(({ title }) => title)).toEqual([expect.stringMatching(/^Take a pack of 1[5-9]00 mAh, which will weigh more$/)]);
    mended(text, /^Take/);
  });
  it("one flight round is cut, in its own unit", () => {
    const { text } = check("leg round { distance = 20000 m }");
    expect(mended(text, /^Shorten leg round to 1[6-8]000 m$/)).toContain("distance = 1");
  });
  it("of lengths that are worked out is left to the designer", () => {
    const { findings } = check("leg wait { time = long }", "let long = 33 min");
    expect(findings[0].fixes!.map(({ title }) => title)).toEqual([expect.stringMatching(/^Take/)]);
  });
  it("just enough is a warning, and limits may ask for less or more", () => {
    const { findings, text } = check("leg wait { time = 31 min }");
    expect(findings[0]).toMatchObject({ code: "pack_drained", severity: "warning", figure: "flight.sortie.day.charge_left" });
    expect(findings[0].message).toMatch(/^day leaves \d.* % of the charge of pack that may be used; a motor glider needs 10 % for the landing/);
    mended(text, /^Shorten/);
    expect(check("leg wait { time = 31 min }", "limits { pack_drained = 1 % }").codes).toEqual([]);
    expect(check("leg wait { time = 20 min }", "limits { pack_drained = 60 % }").findings[0].message).toContain("limits asks for 60 %");
  });
  it("with a band across the limit is a hint, and none with the loading's name where there is one", () => {
    const { findings } = check("loading = a ; leg wait { time = 28 min ± 4 min }", "loading a { }");
    expect(findings[0]).toMatchObject({ severity: expect.stringMatching("hint|warning") as string });
    expect(findings[0].message).toMatch(/^day in a leaves .*band reaches/);
  });
});
