import type { SectionShape } from "../../model/design/geometry";

/** To be raised when polars come out otherwise than before, so that none kept in a file is taken for a new one. */
const method = 2;

/** Names the polar of a shape, or of its key, at a Reynolds number: letters, digits and hyphens, the same in every run. */
export const polarKey = (shape: SectionShape | string, reynolds: number): string =>
  `${typeof shape === "string" ? shape : shapeKey(shape)}-${Math.round(reynolds)}-${method}`;

/** Names a shape: its digits, or a number made of all its ordinates. */
export function shapeKey(shape: SectionShape): string {
  if (shape.type === "naca") return `naca${shape.digits.replace(/[^0-9]/g, "x")}`;
  if (shape.type === "flat") return `flat${hashOf(String(shape.thickness))}`;
  return `points${hashOf(shape.points.join(" "))}`;
}

/** Two runs of the FNV-1a hash (G. Fowler, L. C. Noll, K.-P. Vo, 1991) from different starts: 64 bits. */
const hashOf = (text: string): string => [0x811c9dc5, 0x050c5d1f].map((start) => fnv(text, start).toString(16).padStart(8, "0")).join("");

function fnv(text: string, start: number): number {
  let hash = start;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  return hash >>> 0;
}
