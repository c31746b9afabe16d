import * as fc from "fast-check";
import { expect, test } from "vitest";
import type { Finding } from "../../../shared/finding";
import { moveFindings } from "../../../server/session/move";

const file = "file:///a";
const finding = (start: number, end: number): Finding => ({ code: "x", severity: "hint", message: "", place: { file, start, end } });

/** Where `«…»` goes when `from` is replaced once by `to`. */
function moved(text: string, from: string, to: string): string {
  const start = text.indexOf("«");
  const end = text.indexOf("»") - 1;
  const bare = text.replace(/[«»]/g, "");
  const at = bare.indexOf(from);
  const after = bare.slice(0, at) + to + bare.slice(at + from.length);
  const [one] = moveFindings([finding(start, end)], file, { start: at, end: at + from.length, length: to.length });
  if (!one) return after;
  const { place } = one;
  return `${after.slice(0, place.start)}«${after.slice(place.start, place.end)}»${after.slice(place.end)}`;
}

test("findings move with the text around them", () => {
  expect(moved("ab «cd» ef", "ab", "abab")).toBe("abab «cd» ef");
  expect(moved("ab «cd» ef", "ef", "")).toBe("ab «cd» ");
  expect(moved("ab «cde» f", "d", "ddd")).toBe("ab «cddde» f");
  expect(moved("ab «cd» ef", "b c", "x")).toBe("ax«d» ef");
  expect(moved("ab «cd» ef", "d e", "x")).toBe("ab «c»xf");
});

test("a finding whose text is taken away is gone; typed right behind it, it stays as it was", () => {
  expect(moved("ab «cd» ef", " cd ", "")).toBe("abef");
  const [one] = moveFindings([finding(3, 5)], file, { start: 5, end: 5, length: 4 });
  expect(one.place).toMatchObject({ start: 3, end: 5 });
});

test("no move leaves the text or turns a place round", () => {
  const number = fc.nat({ max: 40 });
  fc.assert(fc.property(number, number, number, number, number, (a, b, c, d, length) => {
    const [start, end] = [Math.min(a, b), Math.max(a, b)];
    const change = { start: Math.min(c, d), end: Math.max(c, d), length };
    const size = 40 + length - (change.end - change.start);
    for (const { place } of moveFindings([finding(start, end)], file, change)) {
      expect(place.start).toBeGreaterThanOrEqual(0);
      expect(place.end).toBeGreaterThanOrEqual(place.start);
      expect(place.end).toBeLessThanOrEqual(size);
    }
  }));
});

test("findings of other files stay; fixes, which were for the older text, go", () => {
  const other: Finding = { ...finding(5, 6), place: { file: "file:///b", start: 5, end: 6 }, fixes: [{ title: "", edits: [] }] };
  expect(moveFindings([other], file, { start: 0, end: 0, length: 9 })).toEqual([{ code: "x", severity: "hint", message: "", place: { file: "file:///b", start: 5, end: 6 } }]);
});
