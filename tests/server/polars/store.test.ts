import { mkdirSync, mkdtempSync, readdirSync, rmSync, utimesSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { polarKey } from "../../../server/compute/section-air/polar-key";
import { PolarShelf } from "../../../server/compute/section-air/polar-shelf";
import { cacheFolder, polarStore } from "../../../server/polar-store";
import { madeUp } from "../compute/section-air/made-up";

let top = "";
let folder = "";
beforeEach(() => {
  top = mkdtempSync(join(tmpdir(), "sparwright-polars-"));
  folder = join(top, "deep", "polars");
});
afterEach(() => rmSync(top, { recursive: true, force: true }));

const section = { type: "naca", digits: "2412" } as const;
const key = polarKey(section, 150e3);

describe("a store of polars", () => {
  it("gives a later run what an earlier one worked out", () => {
    new PolarShelf(polarStore(folder, "one")).put(key, madeUp(150e3));
    expect(new PolarShelf(polarStore(folder, "one")).get(section, 150e3)).toEqual(madeUp(150e3));
    expect(readdirSync(folder)).toEqual([`one-${key}.json`]);
  });

  it("gives nothing that other code worked out", () => {
    new PolarShelf(polarStore(folder, "one")).put(key, madeUp(150e3));
    expect(new PolarShelf(polarStore(folder, "two")).get(section, 150e3)).toBe("pending");
  });

  it("passes over what is no polar, too large, or no file at all", () => {
    const shelf = () => new PolarShelf(polarStore(folder, "one"));
    const whole = JSON.stringify(madeUp(150e3));
    mkdirSync(folder, { recursive: true });
    for (const text of ["", "{", whole.slice(0, -40), "[1]", whole + " ".repeat(100_000), "\u0000\u0001"]) {
      writeFileSync(join(folder, `one-${key}.json`), text);
      expect(shelf().get(section, 150e3)).toBe("pending");
    }
    rmSync(join(folder, `one-${key}.json`));
    mkdirSync(join(folder, `one-${key}.json`));
    expect(shelf().get(section, 150e3)).toBe("pending");
    expect(() => shelf().put(key, madeUp(150e3))).not.toThrow();
  });

  it("does without a folder that can't be made", () => {
    writeFileSync(join(top, "deep"), "a file");
    const shelf = new PolarShelf(polarStore(folder, "one"));
    shelf.put(key, madeUp(150e3));
    expect(shelf.get(section, 150e3)).toEqual(madeUp(150e3));
    expect(new PolarShelf(polarStore(folder, "one")).get(section, 150e3)).toBe("pending");
  });

  it("holds so many files, the oldest of any code and drafts left behind going first, and nobody else's", () => {
    mkdirSync(folder, { recursive: true });
    const old = (name: string, age: number) => {
      writeFileSync(join(folder, name), "{}");
      utimesSync(join(folder, name), new Date(Date.now() - age * 1000), new Date(Date.now() - age * 1000));
    };
    for (let i = 0; i < 6; i++) old(`zero-${i}.json`, 100 - i);
    old("left.draft", 200);
    old("mine.txt", 300);
    polarStore(folder, "one", 4).write(key, "{}");
    expect(readdirSync(folder).sort()).toEqual(["mine.txt", `one-${key}.json`, "zero-3.json", "zero-4.json", "zero-5.json"].sort());
  });
});

describe("the cache folder", () => {
  it("is the system's own, unless the user names another or none", () => {
    expect(cacheFolder({}, "linux", "/home/a")).toBe(join("/home/a", ".cache", "sparwright"));
    expect(cacheFolder({ XDG_CACHE_HOME: "/fast" }, "linux", "/home/a")).toBe(join("/fast", "sparwright"));
    // The base directory specification: a relative one is to be passed over.
    expect(cacheFolder({ XDG_CACHE_HOME: "fast" }, "linux", "/home/a")).toBe(join("/home/a", ".cache", "sparwright"));
    expect(cacheFolder({}, "darwin", "/Users/a")).toBe(join("/Users/a", "Library", "Caches", "sparwright"));
    expect(cacheFolder({ LOCALAPPDATA: "/local" }, "win32", "/a")).toBe(join("/local", "sparwright", "cache"));
    expect(cacheFolder({ SPARWRIGHT_CACHE: "/own", XDG_CACHE_HOME: "/fast" }, "linux", "/home/a")).toBe("/own");
    expect(cacheFolder({ SPARWRIGHT_CACHE: "" }, "linux", "/home/a")).toBeUndefined();
  });
});
