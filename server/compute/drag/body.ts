import type { Body, Surface } from "../../model/design/geometry";
import type { Powerplant } from "../../model/design/power";
import { bodySides } from "../mass/body";
import { fineness } from "../stability/body-moment";
import { coveredBy } from "../stability/covered";
import { freeEnd, sectionArea } from "./ends";
import { reynoldsOf, type PartDrag } from "./flow";
import { bodyForm } from "./form";
import { naturalTransition, plateFriction } from "./friction";
import { forwardShare, sandOf } from "./printed";

/** What stands around a body. */
export interface Company {
  readonly bodies: readonly Body[];
  readonly surfaces: readonly Surface[];
  readonly powerplants: readonly Pick<Powerplant, "hub" | "propeller">[];
}

/** Sharp edges along a body raise its form drag by this (D. P. Raymer, Aircraft Design, sec. 12.5; from memory). */
const boxForm = 1.4;

/** Of a flat face with sharp edges on a long cylinder (S. F. Hoerner, Fluid-Dynamic Drag, ch. 3; from memory). */
const flatFace = 0.8;

/** No pressure on a body is worse than that on a square plate across the flow (Marks' Handbook). */
const plate = 1.17;

/** A hub this share of the length behind the nose still counts as at it. */
const nosePart = 0.05;

/**
 * Drag of a body along the flow: friction of its wetted surface × form factor, its blunt front and its base. The layer is
 * laminar up to the first of: 500,000, the largest section, a surface that crosses it; turbulent from the nose behind a
 * propeller. A front counts on its own share of the largest section, since where a nose goes on to widen, its shoulder
 * gives most of it back (no source). The base is 0.029/√(friction on the base's area) (Hoerner, ch. 3; from memory).
 */
export function bodyDrag(body: Body, company: Company): PartDrag {
  const { path, shape, stations } = body;
  const length = lengthOf(body);
  const largest = Math.max(...stations.map((s) => sectionArea(body, s)));
  const wetted = bodySides(body).mass;
  const run = laminarRun(body, company);
  const form = bodyForm(fineness(body)) * (shape === "box" ? boxForm : 1);
  const face = freeEnd(body, stations[0], company.bodies, company.surfaces);
  const end = freeEnd(body, stations[stations.length - 1], company.bodies, company.surfaces);
  const front = largest > 0 ? (flatFace * face * face) / largest : 0;
  const sand = sandOf(body.skin);
  const lengthBySand = sand === undefined ? undefined : length / sand;
  const more = `${sand === undefined ? "" : ", layer lines"}) × form ${form.toFixed(2)} (Hoerner${shape === "box" ? ", edges Raymer" : ""})` +
    `${face > 0 ? ", blunt front" : ""}${end > 0 ? ", base" : ""}`;
  return (flow) => {
    const reynolds = reynoldsOf(flow, length);
    const transition = Math.min(naturalTransition, reynoldsOf(flow, run)) * (sand === undefined ? 1 : 1 - forwardShare(flow));
    const coefficient = plateFriction(reynolds, { transition, lengthBySand });
    const friction = wetted * coefficient;
    const base = friction > 0 ? 0.029 * end * Math.sqrt(end / friction) : 0;
    const pressure = friction * (form - 1) + front + base;
    const layer = transition >= reynolds ? "laminar" : transition > 0 ? "laminar in front, turbulent behind" : "turbulent from the nose";
    return { path, area: friction + Math.min(pressure, plate * largest), how: `friction ${coefficient.toFixed(4)} (${layer}${more}` };
  };
}

/** The longest run from the nose that the layer may be laminar on, whatever the speed, m. */
function laminarRun(body: Body, { bodies, surfaces, powerplants }: Company): number {
  if (powerplants.some((plant) => blowsOn(plant, body))) return 0;
  const [first] = body.stations;
  const crossed = coveredBy(body, surfaces, bodies).map(([from]) => from - body.nose[0] - first.x);
  const widest = body.stations.reduce((a, b) => (sectionArea(body, b) > sectionArea(body, a) ? b : a));
  // One as wide at the front as anywhere has no widest place.
  const limits = widest === first ? crossed : [...crossed, widest.x - first.x];
  return Math.max(0, Math.min(lengthOf(body), ...limits));
}

/** Does a propeller that stands at the nose, or ahead of it, send its stream over the body? */
function blowsOn({ hub, propeller }: Company["powerplants"][number], body: Body): boolean {
  if (!propeller) return false;
  const { x, z } = body.stations[0];
  const [behind, y, up] = [hub[0] - body.nose[0] - x, hub[1] - body.nose[1], hub[2] - body.nose[2] - z];
  return behind <= nosePart * lengthOf(body) && Math.hypot(y, up) < propeller.diameter / 2;
}

const lengthOf = ({ stations }: Body): number => stations[stations.length - 1].x - stations[0].x;
