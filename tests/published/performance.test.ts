import { describe, expect, it } from "vitest";
import { standardGravity } from "../../server/compute/constants";
import { ceiling } from "../../server/compute/flight/ceiling";
import { bestEndurance, bestRange, leastDrag, leastPower, topSpeed } from "../../server/compute/flight/level";
import { farthestFlight, longestFlight } from "../../server/compute/flight/on-charge";
import { climbAt, fastestClimb, flattestGlide, glideAt, glideRatio, leastSink } from "../../server/compute/flight/path";
import { drain, peukertTime, type Store } from "../../server/compute/battery/store";
import { levelTurn, manoeuvringSpeed, plannedTurn, pullUpRadius, sustainedTurn } from "../../server/compute/flight/turn";
import { expectNear } from "./near";
import { parabolic, powered, shallow, speedFor } from "./parabolic";

const foot = 0.3048;
const degree = Math.PI / 180;

// Closed formulas: only rounding of the printed figures and of constants may differ.
const exact = 1e-3;
// The book works with g 9.8 and rounded steps.
const handbook = 5e-3;

// J. D. Anderson, Introduction to Flight, ch. 6: the light propeller aeroplane of its examples, 230 hp at 0.8.
const light = { weight: 13_127.5, area: 16.165, aspectRatio: 10.912 ** 2 / 16.165, spanEfficiency: 0.8, parasite: 0.025, stallSpeed: 20 };
const lightPower = 230 * 746 * 0.8;

describe("a light aeroplane (J. D. Anderson, Introduction to Flight, examples 6.1 to 6.19)", () => {
  const airframe = parabolic(light);

  it("glides 13.6 to 1 at 4.2°, at a lift coefficient of 0.680", () => {
    const glide = flattestGlide(airframe)!;
    expectNear(glideRatio(glide)!, 13.606, handbook);
    expectNear(-glide.angle / degree, 4.204, handbook);
    expectNear(leastDrag(airframe)!.at, speedFor(light.weight, light.area, 0.6803), handbook);
  });

  it("from 3000 ft as far as 40 800 ft", () => expectNear(3000 * glideRatio(flattestGlide(airframe)!)!, 40_818, handbook));

  it("sinks least at a lift coefficient of 1.178, where CL^1.5/CD is 12.79", () => {
    const { at, value } = leastPower(airframe)!;
    expectNear(at, speedFor(light.weight, light.area, 1.1783), handbook);
    expectNear(speedFor(light.weight, light.area, 1) / (value / light.weight), 12.791, handbook);
  });

  it("flies 79.7 m/s level; the book reads 81 m/s off a graph", () => {
    const speed = topSpeed(powered(airframe, lightPower))!;
    expectNear(speed, 79.73, handbook);
    expectNear(speed, 265 * foot, 0.02); // a graph's reading
  });

  it("climbs 7.61 m/s, printed 1494 ft/min", () => {
    expectNear(fastestClimb(powered(shallow(airframe), lightPower))!.rate, 7.609, handbook);
    expectNear(fastestClimb(powered(shallow(airframe), lightPower))!.rate, (1494 / 60) * foot, handbook);
  });

  it("climbs a little better with the lift that a climb of 12° takes, less than in level flight", () => {
    const gain = fastestClimb(powered(airframe, lightPower))!.rate / fastestClimb(powered(shallow(airframe), lightPower))!.rate;
    expect(gain).toBeGreaterThan(1);
    expect(gain).toBeLessThan(1.02); // (1 − cos² 11°) of the induced part of the drag
  });

  it("made unmanned, 9211.5 N: 81.0 m/s and 12.5 m/s of climb", () => {
    const unmanned = powered(parabolic({ ...light, weight: 9211.5, area: 16.16, aspectRatio: 10.912 ** 2 / 16.16 }), lightPower);
    expectNear(topSpeed(unmanned)!, 81.01, handbook);
    expectNear(fastestClimb(shallow(unmanned))!.rate, 12.52, handbook);
  });

  it("has its absolute ceiling where least power meets a power that falls with density: near 27 000 ft (from memory)", () => {
    const at = (density: number) => powered(parabolic({ ...light, density, stallSpeed: 15 }), (lightPower * density) / 1.225);
    const found = ceiling(at, 1.225)!;
    const leastAtSeaLevel = leastPower(airframe)!.value;
    expectNear(found.density, 1.225 * (leastAtSeaLevel / lightPower) ** (2 / 3), 1e-5); // closed form
    expectNear(found.altitude, 27_000 * foot, 0.01); // printed to two digits
    expect(ceiling(at, 1.225, 0.508)!.altitude).toBeLessThan(found.altitude);
  });
});

describe("a paper glider (R. F. Stengel, Flight Dynamics, example 1.3-1)", () => {
  const area = 0.017;
  const weight = 0.003 * 9.8;
  const glider = parabolic({ weight, area, aspectRatio: 0.86, spanEfficiency: 0.9, parasite: 0.02, stallSpeed: 2 });
  it("glides 5.51 to 1, 10.28° down, at 3.55 m/s", () => {
    const glide = flattestGlide(glider)!;
    expectNear(glideRatio(glide)!, 5.513, exact);
    expectNear(glide.angle / degree, -10.28, exact);
    expectNear(glide.speed, 3.549, exact);
  });
});

// Parabolic polar of a model, 2 kg: formulas of Introduction to Flight, ch. 6, evaluated.
const small = { weight: 2 * standardGravity, area: 0.45, aspectRatio: 8.88889, spanEfficiency: 0.8, parasite: 0.03, stallSpeed: 0 };
const stalling = (liftMax: number) => parabolic({ ...small, stallSpeed: speedFor(small.weight, small.area, liftMax) });

describe("a model with a parabolic polar", () => {
  const model = stalling(1.2);

  it("stalls at 7.701 m/s", () => expectNear(model.stallSpeed, 7.701, exact));
  it("has its least drag, 1.4375 N, at 9.323 m/s, and a glide of 13.644", () => {
    expectNear(leastDrag(model)!.at, 9.323, exact);
    expectNear(leastDrag(model)!.value, 1.4375, exact);
    expectNear(glideRatio(flattestGlide(model)!)!, 13.644, exact);
  });
  it("would sink least, 0.5995 m/s, at 7.084 m/s, the fourth root of 3 slower", () => {
    const { at, value } = leastPower(stalling(2))!;
    expectNear(at, 7.084, exact);
    expectNear(value / small.weight, 0.5995, exact);
    expectNear(leastDrag(model)!.at / at, 1.3161, exact);
  });
  it("can't fly that slowly: the least is at the stall, and said so", () => {
    expect(leastPower(model)).toMatchObject({ at: model.stallSpeed, end: "low" });
    expect(leastSink(model)).toMatchObject({ speed: model.stallSpeed, end: "low" });
    expect(leastSink(stalling(2))!.end).toBeUndefined();
  });
  it("60 W of thrust power at 14 m/s: drag 1.9394 N, climb 1.6748 m/s at 6.871°", () => {
    expectNear(model.drag(14)!, 1.9394, exact);
    const climb = climbAt(powered(shallow(model), 60), 14)!;
    expectNear(climb.rate, 1.6748, exact);
    expectNear(climb.angle / degree, 6.871, exact);
  });
  it("6 N at 15 m/s holds a turn at 3.861 g, 6.152 m; at a greatest lift of 1.2 the stall comes first", () => {
    const pulled = (liftMax: number) => sustainedTurn({ ...stalling(liftMax), thrust: () => 6 }, 15)!;
    expect(pulled(1.3).limit).toBe("thrust");
    expectNear(pulled(1.3).loadFactor, 3.861, handbook);
    expectNear(pulled(1.3).radius, 6.152, handbook);
    expectNear((1.2 * pulled(1.3).loadFactor) / pulled(1.2).loadFactor, 1.221, handbook);
    expect(pulled(1.2).limit).toBe("lift");
    expectNear(pulled(1.2).loadFactor, (15 / model.stallSpeed) ** 2, 1e-12); // definition
  });
});

describe("turns and pull-ups", () => {
  it.each([[20, 45, 1.4142, 40.789, 28.094], [15, 60, 2, 13.247, 64.88]])("%d m/s, %d°", (speed, bank, loadFactor, radius, rate) => {
    const turn = levelTurn(speed, bank * degree)!;
    expectNear(turn.loadFactor, loadFactor, exact);
    expectNear(turn.radius, radius, exact);
    expectNear(turn.rate / degree, rate, exact);
  });
  it("9 g against 25 g at one speed: 2.79 times the radius (Introduction to Flight, example 6.20)", () => {
    const radius = (n: number) => levelTurn(30, Math.acos(1 / n))!.radius;
    expectNear(radius(9) / radius(25), 2.7928, exact);
  });
  it("planned: 45° at 1.3 × stall", () => expectNear(plannedTurn({ stallSpeed: 8 })!.radius, (1.3 * 8) ** 2 / standardGravity, 1e-12)); // tan 45°
  it("pull-up at 3 g and 25 m/s: 31.866 m", () => expectNear(pullUpRadius(25, 3)!, 31.866, exact));
  it("manoeuvring speed of a stall at 50 and 3.8 g: 97.47 (14 CFR 23.335)", () => expectNear(manoeuvringSpeed(50, 3.8), 97.47, exact));
});

describe("on the charge", () => {
  const hour = 3600;
  const even = (volts: number, resistance = 0): Store => ({ capacity: 2.2 * hour, usable: 1, emf: () => volts, resistance });

  // L. W. Traub, J. Aircraft 48(2), 2011 (form from memory): 11.1 V, 2.2 Ah, 60 W. Four printed digits.
  it.each([[1, 24.42], [1.05, 23.35], [1.1, 22.32], [1.3, 18.65]])("Peukert exponent %d: %d min", (exponent, minutes) =>
    expectNear(peukertTime(11.1, 2.2 * hour, 60, exponent) / 60, minutes, 5e-4));
  it("a pack of even volts without resistance lasts as the exponent of 1 says", () =>
    expectNear(drain(even(11.1), 60, Infinity).time / 60, 24.42, 5e-4));
  it("with resistance, as the current of P = (E − RI)I says", () => {
    const current = (12 - Math.sqrt(144 - 4 * 0.1 * 60)) / 0.2;
    const { time, heat, ended } = drain(even(12, 0.1), 60, Infinity);
    expectNear(time, (2.2 * hour) / current, 1e-9); // even steps of an even current
    expectNear(heat, current ** 2 * 0.1 * time, 1e-9);
    expect(ended).toBe("charge");
  });

  // Range E η (L/D)/W and time E η/(D V)min of an efficiency that is the same at every speed (M. Hepperle, Electric Flight, NATO STO
  // MP-AVT-209, 2012; from memory).
  it("flies as far as energy × efficiency × glide ratio over weight, fastest at least drag", () => {
    const model = { ...stalling(2), thrust: () => 8, electricPower: (thrust: number, speed: number) => (thrust * speed) / 0.6 };
    const energy = 11.1 * 2.2 * hour;
    const fed = [{ store: even(11.1), share: 1 }];
    const far = farthestFlight(model, fed)!;
    expectNear(far.distance, (energy * 0.6 * 13.644) / small.weight, exact);
    expectNear(far.speed, 9.323, exact);
    const long = longestFlight(model, fed)!;
    expectNear(long.time, (energy * 0.6) / (0.5995 * small.weight), exact);
    expectNear(long.speed, 7.084, exact);
    expectNear(farthestFlight(model, fed, { reserve: 0.2 })!.distance, 0.8 * far.distance, 1e-9); // even volts
    expect(bestRange(model, 0, 4)!.at).toBeGreaterThan(far.speed);
    expect(bestEndurance(model, 10)!.at).toBeCloseTo(long.speed, 5);
  });
});

it("an idle propeller's drag steepens the glide by its own share", () => {
  const model = stalling(1.2);
  const speed = 12;
  const drag = model.drag(speed)!;
  const ratio = glideRatio(glideAt({ ...shallow(model), idleDrag: () => 0.5 * drag }, speed)!)!;
  const sine = (1.5 * drag) / small.weight;
  expectNear(ratio, Math.sqrt(1 - sine ** 2) / sine, 1e-9); // closed form
});
