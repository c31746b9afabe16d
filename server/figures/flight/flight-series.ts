import type { FlightModel, Loaded } from "../../compute/aircraft/flight-model";
import type { FlightPoints } from "../../compute/aircraft/flight-points";
import { stripAir } from "../../compute/aircraft/air-at";
import { stateOf } from "../../compute/aircraft/air-state";
import type { LevelTable } from "../../compute/aircraft/level-table";
import { reserve } from "../../compute/aircraft/performance";
import type { Aeroplane } from "../../compute/flight/aeroplane";
import { levelOnCharge } from "../../compute/flight/on-charge";
import type { Facts, SortieFlown } from "../facts";
import type { FigureSet } from "../figure-set";
import type { Row } from "../series";
import { wingLimit } from "./points";

/** What plots show of a loading's flight: nominal values. */
export function putFlightSeries(set: FigureSet, model: FlightModel, loaded: Loaded, points: FlightPoints, { flights }: LevelTable): void {
  const speeds: Row = { title: "Speed", dimension: "speed", values: flights.map(({ speed }) => speed) };
  const pressure = (speed: number) => (model.air.density * speed ** 2 * model.basis.reference.area) / 2;
  const force = (title: string, of: (flight: (typeof flights)[number]) => number): Row =>
    ({ title, dimension: "force", values: flights.map((flight) => pressure(flight.speed) * of(flight)) });
  set.putSeries({
    name: "flight.drag", title: "Drag in level flight over speed", x: speeds,
    lines: [force("Drag", ({ drag }) => drag), force("Induced", ({ induced }) => induced), force("Parasite", ({ parasite }) => parasite)],
  });
  set.putSeries({
    name: "aero.polar", title: "Lift over drag of the trimmed aircraft", x: { title: "Drag coefficient", dimension: "ratio", values: flights.map(({ drag }) => drag) },
    lines: [{ title: "Lift coefficient", dimension: "ratio", values: flights.map(({ state }) => state.liftCoefficient) }],
  });
  const trimmed = flights.every(({ state }) => state.trimmed);
  set.putSeries({
    name: "trim.speed", title: "Trim over speed", x: speeds,
    lines: [
      { title: "Angle of the x axis", dimension: "angle", values: flights.map(({ state }) => state.angle) },
      ...(trimmed ? model.basis.controls : []).map(({ path }, i): Row =>
        ({ title: path, dimension: "angle", values: flights.map(({ state }) => state.deflections[i]?.angle) })),
    ],
  });
  putSpan(set, model, points);
  putMargin(set, model, loaded, points);
}

/** Of the wing that stalls first, at its stall: lift of each strip and the most its section has. */
function putSpan(set: FigureSet, model: FlightModel, { stall }: FlightPoints): void {
  const limit = wingLimit(stall);
  if (!limit) return;
  const { liftCoefficients } = stateOf(model.basis, limit);
  const strips = model.basis.strips.map((strip, i) => ({ strip, i })).filter(({ strip }) => strip.path === limit.path && strip.y >= 0)
    .sort((a, b) => a.strip.y - b.strip.y);
  set.putSeries({
    name: "aero.span_loading", title: `Lift along ${limit.path} where it first stalls`,
    x: { title: "From the plane of symmetry", dimension: "length", values: strips.map(({ strip }) => strip.y) },
    lines: [
      { title: "Lift coefficient", dimension: "ratio", values: strips.map(({ i }) => liftCoefficients[i]) },
      { title: "Highest lift of the section", dimension: "ratio", values: strips.map(({ i }) => stripAir(model.basis, stall.sections, i, limit.pitch).liftMax) },
    ],
  });
}

/** Places of the balance point at which the margin is given. */
const places = 9;

function putMargin(set: FigureSet, { pitch }: FlightModel, { x }: Loaded, { forward }: FlightPoints): void {
  const aft = pitch.x;
  const { meanChord } = pitch.reference;
  const fore = Math.min(x, forward?.x ?? aft - meanChord / 2);
  const xs = Array.from({ length: places }, (_, i) => fore + ((aft - fore) * i) / (places - 1));
  set.putSeries({
    name: "stability.margin", title: "Static margin over the balance point", x: { title: "Balance point", dimension: "length", values: xs },
    lines: [{ title: "Static margin", dimension: "ratio", style: "share", values: xs.map((at) => (aft - at) / meanChord) }],
  });
}

/** Time and distance on the usable charge less the reserve, level at each speed. */
export function putEndurance(set: FigureSet, aeroplane: Aeroplane, { table: { flights }, fed = [] }: NonNullable<Facts["flight"]>): void {
  const level = flights.map(({ speed }) => levelOnCharge(aeroplane, speed, fed, { reserve }));
  set.putSeries({
    name: "flight.endurance", title: "Time and distance on the charge in level flight over speed",
    x: { title: "Speed", dimension: "speed", values: flights.map(({ speed }) => speed) },
    lines: [
      { title: "Time", dimension: "time", values: level.map((flight) => flight?.time) },
      { title: "Distance", dimension: "length", style: "distance", values: level.map((flight) => flight?.distance) },
    ],
  });
}

/** From the beginning of a sortie to its end, straight between the ends of its legs. */
export function putSortieSeries(set: FigureSet, { plan: { path }, flown: { legs } }: SortieFlown): void {
  const summed = (start: number, of: (leg: (typeof legs)[number]) => number): number[] =>
    legs.reduce((all, leg) => [...all, all[all.length - 1] + of(leg)], [start]);
  set.putSeries({
    name: `flight.sortie.${path}`, title: `Sortie ${path}`, x: { title: "Time", dimension: "time", values: summed(0, ({ time }) => time) },
    lines: [
      {
        title: "Charge left", dimension: "ratio", style: "share",
        values: legs.some(({ stores }) => stores.length > 0) ? [1, ...legs.map(({ stores }) => Math.min(...stores.map(({ charge }) => charge)))] : [],
      },
      { title: "Height", dimension: "length", style: "distance", values: summed(0, ({ height }) => height) },
    ],
  });
}
