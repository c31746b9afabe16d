import { describe, expect, it } from "vitest";
import { resolved } from "./resolved";

const plan = (text: string, loading?: string) => resolved(text).plain(loading).sorties;

describe("a sortie in the design", () => {
  it("has its legs in the order written, in SI, each with a speed that suits it", () => {
    const text = `sortie day {
  equipment = 6 W
  leg up   { climb = full ; height = 100 m }
  leg rise { climb = 90 m/min ; time = 1 min ; speed = 36 km/h }
  leg out  { distance = 1.2 km ; bank = 0 deg }
  leg wait { speed = best_endurance ; bank = 30 deg ; time = 8 min }
  leg down { glide = yes ; height = 100 m }
}`;
    expect(resolved(text).mistakes()).toEqual([]);
    expect(plan(text)).toEqual([{
      path: "day", equipment: 6, legs: [
        { name: "up", speed: "best_climb", climb: "full", for: { height: 100 } },
        { name: "rise", speed: 10, climb: 1.5, for: { time: 60 } },
        { name: "out", speed: "cruise", climb: 0, bank: 0, for: { distance: 1200 } },
        { name: "wait", speed: "best_endurance", climb: 0, bank: Math.PI / 6, for: { time: 480 } },
        { name: "down", speed: "best_glide", climb: "glide", for: { height: 100 } },
      ],
    }]);
  });

  it("takes speeds that are worked out, and words before values of the same name", () => {
    const legs = (text: string) => plan(text)[0].legs.map(({ speed }) => speed);
    expect(legs("let fast = 18 m/s\nlet cruise = 9 m/s\nsortie day { leg a { speed = fast ; time = 1 min } ; leg b { speed = 0.5 * fast ; time = 1 min } ; leg c { speed = cruise ; time = 1 min } }"))
      .toEqual([18, 9, "cruise"]);
  });

  it("is flown in the loading it names, else in the first; a loading may change it", () => {
    const text = `loading a { }
loading b { sortie two { leg out { time = 9 min } } }
sortie one { leg out { time = 1 min } }
sortie two { loading = b ; leg out { time = 2 min } }`;
    expect(resolved(text).mistakes()).toEqual([]);
    expect(plan(text, "a").map(({ path }) => path)).toEqual(["one"]);
    expect(plan(text, "b")).toMatchObject([{ path: "two", legs: [{ for: { time: 540 } }] }]);
  });

  it("goes on from another: a leg changed keeps its place, one left out goes, new ones come last", () => {
    const text = `sortie day { leg up { climb = full ; height = 50 m } ; leg out { distance = 1 km } ; leg back { distance = 1 km } }
sortie far from day { drop = [back] ; leg out { distance = 3 km } ; leg down { glide = yes ; height = 50 m } }`;
    expect(resolved(text).mistakes()).toEqual([]);
    expect(plan(text)[1].legs.map(({ name, for: length }) => [name, length])).toEqual([["up", { height: 50 }], ["out", { distance: 3000 }], ["down", { height: 50 }]]);
  });

  it("with a broken leg, or for a loading that isn't there, is left out whole", () => {
    expect(plan("sortie day { leg a { time = 1 min } ; leg b { time = 5 } }")).toEqual([]);
    expect(plan("loading a { }\nsortie day { loading = c ; leg a { time = 1 min } }")).toEqual([]);
    expect(plan("sortie day { leg a { height = 10 m } }")).toEqual([]);
    expect(plan("sortie day { leg a { time = 1 min ; distance = 1 km } }")).toEqual([]);
  });
});
