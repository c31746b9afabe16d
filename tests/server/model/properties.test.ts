import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { format } from "../../../grammar/printer/format";
import { settle } from "../../../server/model/design/settle";
import { analyseStill, figureOf, root } from "../../service";

const folder = join(root, "samples");
const samples = Object.fromEntries(readdirSync(folder).filter((name) => name.endsWith(".airframe")).map((name) => [name, readFileSync(join(folder, name), "utf8")]));

/** A design of its own in every length, so that it can be moved and scaled as text. m */
interface Layout {
  readonly shift: readonly [number, number];
  readonly scale: number;
  readonly arm: number;
  readonly chord: number;
  readonly half: number;
  readonly pack: number;
}

const layouts = fc.record({
  shift: fc.tuple(fc.double({ min: -3, max: 3, noNaN: true }), fc.double({ min: -1, max: 1, noNaN: true })),
  scale: fc.double({ min: 0.3, max: 3, noNaN: true }),
  arm: fc.double({ min: 0.5, max: 1, noNaN: true }),
  chord: fc.double({ min: 0.15, max: 0.35, noNaN: true }),
  half: fc.double({ min: 0.4, max: 1.2, noNaN: true }),
  pack: fc.double({ min: -0.2, max: 0.2, noNaN: true }),
});

function design({ shift: [dx, dz], scale, arm, chord, half, pack }: Layout): string {
  const m = (value: number) => `${(value * scale).toFixed(9)} m`;
  const at = (x: number, y: number, z: number) => `(${(x * scale + dx).toFixed(9)} m, ${m(y)}, ${(z * scale + dz).toFixed(9)} m)`;
  return `airframe "Any" { class = sport }
wing main { at = ${at(0, 0, 0.05)} ; foil = naca("2412") ; weight = 300 g ; panel half { span = ${m(half)} ; chord = ${m(chord)} to ${m(0.7 * chord)} ; dihedral = 3 deg } }
tailplane stab { at = ${at(arm, 0, 0.1)} ; foil = naca("0009") ; weight = 60 g ; panel half { span = ${m(0.3 * half)} ; chord = ${m(0.5 * chord)} } }
fuselage hull { at = ${at(-0.2, 0, 0)} ; length = ${m(arm + 0.4)} ; width = ${m(0.08)} ; height = ${m(0.1)} ; weight = 200 g }
battery pack { cells = 3 ; capacity = 2200 mAh ; weight = 180 g ; at = ${at(pack, 0, 0)} }
assembly pod { body shell { at = (0 m, 0 m, 0 m) ; length = ${m(0.2)} ; width = ${m(0.05)} ; weight = 40 g } ; item load { weight = 90 g ; at = (${m(0.1)}, ${m(0.01)}, 0 m) } }
place pods from pod { at = ${at(0.05, 0.5 * half, 0)} ; mirror = yes }
`;
}

// Places are written to a nanometre; the lattice's answer moves by rounding.
function near(a: number | undefined, b: number, within: number): void {
  expect(Math.abs(a! - b)).toBeLessThan(within);
}

describe("any design", () => {
  it("moved as a whole, its balance and neutral points move along, and nothing else changes", () => {
    fc.assert(fc.property(layouts, (layout) => {
      const [here, there] = [{ ...layout, shift: [0, 0] as const }, layout].map((one) => analyseStill(design(one)));
      near(figureOf(there, "cg.x"), figureOf(here, "cg.x")! + layout.shift[0], 1e-7);
      near(figureOf(there, "cg.z"), figureOf(here, "cg.z")! + layout.shift[1], 1e-7);
      near(figureOf(there, "stability.neutral_point"), figureOf(here, "stability.neutral_point")! + layout.shift[0], 1e-6);
      near(figureOf(there, "stability.static_margin"), figureOf(here, "stability.static_margin")!, 1e-5);
    }), { numRuns: 12 });
  });

  it("scaled in all lengths, areas go by the square and volumes, margin and slopes stay", () => {
    fc.assert(fc.property(layouts, (layout) => {
      const [one, other] = [{ ...layout, scale: 1, shift: [0, 0] as const }, { ...layout, shift: [0, 0] as const }].map((l) => analyseStill(design(l)));
      const ratio = (name: string) => figureOf(other, name)! / figureOf(one, name)!;
      near(ratio("wing.area"), layout.scale ** 2, 1e-6);
      near(ratio("wing.mean_chord"), layout.scale, 1e-6);
      for (const name of ["stability.tail_volume", "wing.aspect_ratio", "aero.lift_slope"]) near(ratio(name), 1, 1e-5);
    }), { numRuns: 12 });
  });

  it("with mirrored twins balances on y = 0", () => {
    fc.assert(fc.property(layouts, (layout) => near(figureOf(analyseStill(design(layout)), "cg.y"), 0, 1e-9)), { numRuns: 20 });
  });
});

describe.each(Object.keys(samples))("%s", (name) => {
  it("means the same however it is laid out", () => {
    const loose = samples[name].replace(/ ; /g, ";").replace(/ = /g, "=").replace(/\n( *)(\w)/g, "\n$1  $2");
    const designs = (text: string) => analyseStill(text, samples).sets.map((set) => JSON.stringify(settle(set.loading.design)));
    expect(format(loose)).not.toBe(loose);
    expect(designs(format(loose))).toEqual(designs(loose));
  });

  it("survives any of its lines left out, or a brace put before it", () => {
    const lines = samples[name].split("\n");
    for (let i = 0; i < lines.length; i += 6) {
      const [before, after] = [lines.slice(0, i), lines.slice(i)];
      for (const text of [[...before, ...after.slice(1)], [...before, "}", ...after]]) analyseStill(text.join("\n"), samples);
    }
  });

  it("never throws, whatever is cut out, doubled or put in", () => {
    const text = samples[name];
    const places = fc.tuple(fc.nat(text.length), fc.nat(60), fc.constantFrom("", "{", "}", "(", '"', "=", "±", " 3 m ", "\n", ";", "use", "from main"));
    fc.assert(fc.property(fc.array(places, { minLength: 1, maxLength: 3 }), fc.boolean(), (edits, doubled) => {
      const damaged = edits.reduce((t, [at, length, put]) => t.slice(0, at) + put + (doubled ? t.slice(at, at + length) : "") + t.slice(doubled ? at : at + length), text);
      for (const finding of analyseStill(damaged, samples).findings) {
        expect(finding.place.start).toBeGreaterThanOrEqual(0);
        expect(finding.place.end).toBeLessThanOrEqual(damaged.length);
      }
    }), { numRuns: 12 });
  });
});
