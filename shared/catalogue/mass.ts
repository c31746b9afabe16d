import type { FigureEntry } from "./entry";

export const massEntries: readonly FigureEntry[] = [
  { name: "mass.total", title: "Weight", dimension: "mass", text: "All parts of the loading together, ready to fly." },
  { name: "mass.empty", title: "Empty weight", dimension: "mass", text: "The same without batteries and optional parts." },
  { name: "mass.<path>", title: "Weight of a part", dimension: "mass", text: "One part with all it holds, both sides of a mirrored one." },
  { name: "cg.x", title: "Balance point, aft", dimension: "length", text: "Centre of gravity aft of the datum." },
  { name: "cg.y", title: "Balance point, to the right", dimension: "length", text: "Centre of gravity to the right of the plane of symmetry." },
  { name: "cg.z", title: "Balance point, up", dimension: "length", text: "Centre of gravity above the datum." },
  { name: "cg.chord", title: "Balance point on the mean chord", dimension: "ratio", style: "share", text: "Centre of gravity as a share of the mean aerodynamic chord, from its leading edge." },
  { name: "cg.behind_leading_edge", title: "Balance point behind the leading edge", dimension: "length", text: "From the leading edge at the root of the largest wing, where a modeller measures." },
  { name: "inertia.roll", title: "Roll inertia", dimension: "inertia", text: "Moment of inertia about the x axis through the centre of gravity." },
  { name: "inertia.pitch", title: "Pitch inertia", dimension: "inertia", text: "Moment of inertia about the y axis through the centre of gravity." },
  { name: "inertia.yaw", title: "Yaw inertia", dimension: "inertia", text: "Moment of inertia about the z axis through the centre of gravity." },
  { name: "inertia.product", title: "Product of inertia", dimension: "inertia", text: "Product of inertia of x and z, ∫xz dm, about the centre of gravity." },
];
