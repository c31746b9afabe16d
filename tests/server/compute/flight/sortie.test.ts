import { describe, expect, it } from "vitest";
import { leastUsableLeft, sortie, type Leg } from "../../../../server/compute/flight/sortie";
import { drain, storeOf, type Store } from "../../../../server/compute/battery/store";
import { parabolic } from "../../../published/parabolic";

const airframe = parabolic({ weight: 20, area: 0.45, aspectRatio: 9, spanEfficiency: 0.8, parasite: 0.03, stallSpeed: 8 });
const model = { ...airframe, thrust: (speed: number) => 14 - 0.4 * speed, electricPower: (thrust: number, speed: number) => (thrust * (speed + 4)) / 0.6 };
const lipo = storeOf({ path: "pack", wired: "single", packs: [{ path: "pack", cells: 3, parallel: 1, chemistry: "lipo", capacity: 2.2 * 3600, usable: 0.8 }] }) as Store;
const fed = [{ store: lipo, share: 1 }];

describe("a sortie", () => {
  const climb: Leg = { name: "climb", speed: 11, climb: "full", for: { height: 100 } };
  const cruise: Leg = { name: "out", speed: 13, for: { distance: 2000 } };
  const circle: Leg = { name: "circle", speed: 13, bank: 0.7, for: { time: 60 } };
  const home: Leg = { name: "down", speed: 11, climb: "glide", for: { height: 100 } };
  const flown = sortie([climb, cruise, circle, home], model, fed, 4);

  it("ends where it began, leg after leg, on less and less charge", () => {
    expect(flown.ended).toBeUndefined();
    expect(flown.legs.map(({ leg }) => leg.name)).toEqual(["climb", "out", "circle", "down"]);
    expect(flown.legs.reduce((sum, { height }) => sum + height, 0)).toBeCloseTo(0, 9);
    const left = flown.legs.map(({ stores }) => stores[0].charge);
    left.forEach((charge, i) => expect(charge).toBeLessThan(i === 0 ? 1 : left[i - 1]));
    expect(flown.legs.reduce((sum, { stores }) => sum + stores[0].taken, 0)).toBeCloseTo((1 - left[3]) * lipo.capacity, 6);
  });
  it("takes the power of each leg: a turn more than straight flight, a glide only what the rest takes", () => {
    const [, out, turn, down] = flown.legs;
    expect(out.power).toBeCloseTo(model.electricPower(airframe.drag(13)!, 13) + 4, 9);
    expect(turn.power).toBeCloseTo(model.electricPower(airframe.drag(13, 1 / Math.cos(0.7))!, 13) + 4, 9);
    expect(down.power).toBe(4);
  });
  it("a climb at a rate takes the drag and the weight's part", () => {
    const [leg] = sortie([{ speed: 12, climb: 1.5, for: { time: 10 } }], model, fed).legs;
    const cosine = Math.sqrt(1 - (1.5 / 12) ** 2);
    expect(leg.power).toBeCloseTo(model.electricPower(airframe.drag(12, cosine)! + (20 * 1.5) / 12, 12), 9);
    expect(leg.height).toBeCloseTo(15, 9);
  });
  it("stops where the charge ends, having flown as long as the pack lasts", () => {
    const cut = sortie([cruise, { ...cruise, for: { time: 1e5 } }, home], model, fed);
    expect(cut.ended).toBe("charge");
    expect(cut.legs).toHaveLength(2);
    expect(cut.legs[1].stores[0].charge).toBeCloseTo(0.2, 9);
    // One discharge cut in two: the steps fall elsewhere.
    expect(cut.time / drain(lipo, cut.legs[0].power, Infinity).time).toBeCloseTo(1, 4);
  });
  it.each<[string, Leg]>([
    ["stall", { speed: 9, bank: 1, for: { time: 1 } }], ["stall", { speed: 7, for: { time: 1 } }],
    ["thrust", { speed: 30, for: { time: 1 } }], ["thrust", { speed: 12, climb: 8, for: { time: 1 } }],
    ["thrust", { speed: 25, climb: "full", for: { height: 10 } }],
    ["no such way", { speed: 12, for: { height: 10 } }],
  ])("says why a leg can't be flown: %s", (why, leg) => expect(sortie([leg], model, fed)).toMatchObject({ ended: why, time: 0, distance: 0 }));
  it("a weak pack can't give the power", () =>
    expect(sortie([cruise], model, [{ store: { ...lipo, resistance: 2 }, share: 1 }]).ended).toBe("power"));
  it("two packs that share the power last as one of both", () => {
    const long = [{ ...cruise, for: { time: 1e5 } }];
    const both = sortie(long, model, [{ store: lipo, share: 0.5 }, { store: lipo, share: 0.5 }]);
    const one = sortie(long, model, [{ store: { ...lipo, capacity: 2 * lipo.capacity, resistance: lipo.resistance / 2 }, share: 1 }]);
    expect(both.time).toBeCloseTo(one.time, 6);
  });
  it("tells what is left of the usable charge: all at first, none where it ends", () => {
    expect(leastUsableLeft({ legs: [] }, fed)).toBe(1);
    expect(leastUsableLeft(sortie([{ ...cruise, for: { time: 1e5 } }], model, fed), fed)).toBeCloseTo(0, 9);
    const some = sortie([cruise], model, fed);
    expect(leastUsableLeft(some, fed)).toBeCloseTo(1 - (1 - some.legs[0].stores[0].charge) / 0.8, 12);
  });
});
