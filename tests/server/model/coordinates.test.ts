import { describe, expect, it } from "vitest";
import { nacaOutline } from "../../../server/compute/section/naca";
import { readCoordinates } from "../../../server/model/coordinates/read";

type Points = readonly (readonly [number, number])[];

const outline: Points = nacaOutline("2412", 20)!;
const nose = 20;
const upper = outline.slice(0, nose + 1);
const lower = outline.slice(nose);

const lines = (points: readonly (readonly number[])[], separator = " ") => points.map((row) => row.map((v) => v.toFixed(6)).join(separator)).join("\n");

function read(text: string): Points {
  const found = readCoordinates(text);
  if ("fault" in found) throw new Error(found.fault);
  return found.points;
}

const fault = (text: string) => {
  const found = readCoordinates(text);
  return "fault" in found ? found.fault : undefined;
};

describe("layouts of coordinate files", () => {
  const fromNose = [...upper].reverse();
  const layouts: Readonly<Record<string, string>> = {
    "around from the trailing edge": `A section\n${lines(outline)}`,
    "no title": lines(outline),
    "the other way around": `A section\n${lines([...outline].reverse())}`,
    "each side from the nose, with counts": `A section\n${upper.length}. ${lower.length}.\n\n${lines(fromNose)}\n\n${lines(lower)}\n`,
    "each side from the nose, below first": `A section\n${lines(lower)}\n\n${lines(fromNose)}`,
    "each side from the nose, no empty line": lines([...fromNose, ...lower]),
    "from the nose around": lines([...fromNose, ...[...lower].reverse()]),
    "each side to the nose": lines([...upper, ...[...lower].reverse()]),
    "per cent": lines(outline.map(([x, y]) => [x * 100, y * 100])),
    "millimetres, commas": lines(outline.map(([x, y]) => [x * 230, y * 230]), ", "),
    "semicolons": lines(outline, ";"),
    "decimal commas": lines(outline).replace(/\./g, ","),
    "tabs and Windows line ends": lines(outline, "\t").replace(/\n/g, "\r\n"),
    "columns turned": lines(outline.map(([x, y]) => [y, x])),
  };
  it.each(Object.entries(layouts))("%s", (_, text) => {
    const points = read(text);
    expect(points).toHaveLength(outline.length);
    points.forEach(([x, y], i) => {
      // Six digits, of which scaling keeps five; the outline's own nose lies a little off x = 0.
      expect(x).toBeCloseTo(outline[i][0], 3);
      expect(y).toBeCloseTo(outline[i][1], 4);
    });
  });

  it("three columns", () => {
    const rows = Array.from({ length: 21 }, (_, i) => {
      const x = (i / 20) ** 2;
      return [x, 0.2 * Math.sqrt(x) * (1 - x), -0.1 * Math.sqrt(x) * (1 - x)];
    });
    const points = read(lines(rows));
    expect(points).toHaveLength(41);
    expect(points[10][1]).toBeGreaterThan(0);
    expect(points[30][1]).toBeLessThan(0);
  });
});

describe("faults of coordinate files", () => {
  it.each<[string, string, string]>([
    ["too few points", lines(outline.filter((_, i) => i % 6 === 0)), "has 7 points; a section needs at least 10"],
    ["words", `${lines(outline)}\nsee page 12 for more\n`, "has no two numbers on its line 42"],
    ["one side", lines(upper), "does not run around a section: it needs two columns x and y, an upper and a lower side"],
    ["one column", outline.map(([x]) => x.toFixed(4)).join("\n"), "has 0 points; a section needs at least 10"],
    ["open", lines(outline.slice(0, -6)), "is open: its sides end 21 % of the chord apart at the trailing edge"],
    ["sides that cross", lines(outline.map(([x, y], i) => [x, i > nose && x > 0.5 ? y + 0.2 * (x - 0.5) : y])), "has sides that cross near x = "],
    ["out of order", lines(outline.map((_, i) => outline[i === 8 ? 5 : i === 5 ? 8 : i])), "has points out of order near x = "],
  ])("%s", (_, text, message) => {
    expect(fault(text)).toContain(message);
  });
});
