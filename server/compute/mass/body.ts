import type { Body, BodyStation } from "../../model/design/geometry";
import { addMoments, addPoint, noMoments, type Moments, type Sum } from "./moments";
import { addSlice, ellipse, gauss, mix, rectangle, type Slice } from "./slice";

type Shape = Body["shape"];
export type BodyForm = Pick<Body, "nose" | "shape" | "stations">;

/**
 * The surface of a body, ends closed, at 1 kg/m²: `mass` is the wetted area. Straight between stations. Round and oval
 * sections are ellipses, a box has square edges.
 */
export function bodyShell(body: BodyForm): Moments {
  const sum = noMoments();
  addMoments(sum, bodySides(body));
  addSection(sum, 1, body, body.stations[0]);
  addSection(sum, 1, body, body.stations[body.stations.length - 1]);
  return sum;
}

/** The surface of a body without its two ends. */
export function bodySides({ nose, shape, stations }: BodyForm): Moments {
  const sum = noMoments();
  const outline = outlines[shape === "box" ? "box" : "oval"];
  for (let i = 1; i < stations.length; i++) addSides(sum, nose, outline, stations[i - 1], stations[i]);
  return sum;
}

/** What a body encloses, at 1 kg/m³: `mass` is the volume. */
export function bodyVolume(body: BodyForm): Moments {
  const sum = noMoments();
  const { stations } = body;
  for (let i = 1; i < stations.length; i++) {
    const a = stations[i - 1];
    const b = stations[i];
    const length = Math.abs(b.x - a.x);
    for (const [t, weight] of gauss) {
      addSection(sum, weight * length, body, {
        x: mix(a.x, b.x, t), z: mix(a.z, b.z, t), width: mix(a.width, b.width, t), height: mix(a.height, b.height, t),
      });
    }
  }
  return sum;
}

function addSection(to: Sum, weight: number, { nose, shape }: BodyForm, at: BodyStation): void {
  const centre = [nose[0] + at.x, nose[1], nose[2] + at.z] as const;
  addSlice(to, weight, areaOf(shape, at.width, at.height), centre, [0, 1, 0], [0, 0, 1]);
}

function areaOf(shape: Shape, width: number, height: number): Slice {
  return shape === "box" ? rectangle(width, height) : ellipse(width, height);
}

/** A place on the outline in half-widths and half-heights, the outline's direction there, and its quadrature weight. */
interface OutlinePoint {
  readonly y: number;
  readonly z: number;
  readonly dy: number;
  readonly dz: number;
  readonly weight: number;
}

const outlines: Readonly<Record<"oval" | "box", readonly OutlinePoint[]>> = { oval: ovalOutline(32), box: boxOutline() };

/** Equal steps of the angle: for a closed smooth curve their sum converges faster than any power of the step. */
function ovalOutline(n: number): OutlinePoint[] {
  return Array.from({ length: n }, (_, i) => {
    const angle = ((i + 0.5) * 2 * Math.PI) / n;
    return { y: Math.cos(angle), z: Math.sin(angle), dy: -Math.sin(angle), dz: Math.cos(angle), weight: (2 * Math.PI) / n };
  });
}

function boxOutline(): OutlinePoint[] {
  return gauss.flatMap(([t, weight]) => [1, -1].flatMap((side) => [
    { y: side, z: 2 * t - 1, dy: 0, dz: 2, weight },
    { y: 2 * t - 1, z: side, dy: 2, dz: 0, weight },
  ]));
}

function addSides(to: Sum, nose: Body["nose"], outline: readonly OutlinePoint[], a: BodyStation, b: BodyStation): void {
  const dx = b.x - a.x;
  for (const [t, along] of gauss) {
    const halfWidth = mix(a.width, b.width, t) / 2;
    const halfHeight = mix(a.height, b.height, t) / 2;
    const x = nose[0] + mix(a.x, b.x, t);
    const z = nose[2] + mix(a.z, b.z, t);
    for (const p of outline) {
      const dy = (p.y * (b.width - a.width)) / 2;
      const dz = (p.z * (b.height - a.height)) / 2 + (b.z - a.z);
      const oy = p.dy * halfWidth;
      const oz = p.dz * halfHeight;
      // |tangent along × tangent around|
      const area = Math.sqrt((dx * oy) ** 2 + (dx * oz) ** 2 + (dy * oz - dz * oy) ** 2);
      addPoint(to, along * p.weight * area, x, nose[1] + p.y * halfWidth, z + p.z * halfHeight);
    }
  }
}
