import { runAt, type RunResult } from "../../compute/powertrain/run-at";
import { settle } from "../../model/design/settle";
import type { FigureSet } from "../figure-set";
import type { Memory } from "../memory";
import { mapsIn } from "../propeller-maps";

/** A running point of all powerplants at an airspeed, m/s. */
export interface EnvelopePoint {
  readonly speed: number;
  readonly run: RunResult;
}

/** What the powerplants do over the speeds a loading flies at, beside standing still. */
export interface Envelope {
  /** Full throttle on a full charge: from above rest to the top speed of level flight, or to the fastest speed if that is less. */
  readonly full: readonly EnvelopePoint[];
  /** At the fastest speed: full throttle on a full charge, and throttle shut. */
  readonly dive: { readonly open: EnvelopePoint; readonly shut: EnvelopePoint };
  /** Is the fastest speed the design's own `never_exceed`? */
  readonly ownLimit: boolean;
  /** At the best climb, full throttle on a full charge. */
  readonly climb?: EnvelopePoint;
  /** Level at cruise, packs half charged. */
  readonly cruise?: EnvelopePoint;
}

/** Fine enough: what powerplants draw over speed has one hump at most, and a broad one. */
const places = 12;

/** Over the top speed of level flight, where the design has no limit of its own: the definition of the fastest speed. */
const overTop = 1.2;

/** The powerplants over the speeds flown; nothing without motors that fly it. */
export function* putEnvelope(set: FigureSet, memory: Memory): Generator<void, void> {
  const { flight } = set.facts;
  set.facts.envelope = undefined;
  const top = flight?.performance?.topSpeed;
  if (!flight?.power || top === undefined) return;
  const { model: { air }, points: { cruise }, performance, power, throttle } = flight;
  const { powerplants, sources, neverExceed } = settle({
    powerplants: set.design.powerplants, sources: set.design.sources, neverExceed: set.design.neverExceed,
  });
  const point = (speed: number, throttle = 1): EnvelopePoint =>
    ({ speed, run: runAt({ powerplants, sources, air, state: "full", throttle, speed, mapOf: mapsIn(memory) }) });
  const fastest = neverExceed ?? overTop * top;
  const full: EnvelopePoint[] = [];
  for (let i = 1; i <= places; i++) {
    if (i % 4 === 1) yield;
    full.push(point((i / places) * Math.min(top, fastest)));
  }
  yield;
  const climb = performance?.climb && point(performance.climb.speed);
  set.facts.envelope = {
    full, dive: { open: point(fastest), shut: point(fastest, 0) }, ownLimit: neverExceed !== undefined,
    ...(climb && { climb }), ...(throttle === undefined ? {} : { cruise: { speed: cruise.speed, run: power.run(cruise.speed, throttle) } }),
  };
}
