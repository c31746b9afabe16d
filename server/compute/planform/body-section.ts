import type { Body } from "../../model/design/geometry";

export interface BodySection {
  readonly halfWidth: number;
  readonly top: number;
  readonly bottom: number;
}

/** A body's extent across and in height at a station x of the design, straight between its stations; undefined off its ends. */
export function bodySection(body: Body, x: number): BodySection | undefined {
  const from = x - body.nose[0];
  for (let i = 1; i < body.stations.length; i++) {
    const [a, b] = [body.stations[i - 1], body.stations[i]];
    if (from < a.x || from > b.x) continue;
    const share = b.x > a.x ? (from - a.x) / (b.x - a.x) : 0;
    const mix = (p: number, q: number) => p + share * (q - p);
    const middle = body.nose[2] + mix(a.z, b.z);
    const halfHeight = mix(a.height, b.height) / 2;
    return { halfWidth: mix(a.width, b.width) / 2, top: middle + halfHeight, bottom: middle - halfHeight };
  }
  return undefined;
}
