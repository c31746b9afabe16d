import { divide, halfWidth, quantity, subtract, type Quantity } from "../../grammar/units/quantity";
import { massFigures } from "../compute/mass/figures";
import type { KnownMoments } from "../compute/mass/part-moments";
import type { Account } from "./figure";
import type { FigureSet } from "./figure-set";

const mechanics = "Statics of a system of bodies: any handbook, e.g. Meriam & Kraige, Engineering Mechanics";
const bands = "bands to first order, JCGM 100:2008";

/** Weight, balance and inertia of a loading, and the weight of each part. */
export function putMass(set: FigureSet, known?: KnownMoments): void {
  const { design } = set.loading;
  const mass = massFigures(design, known);
  set.facts.mass = mass;
  if (!mass) return;
  const parts = [...mass.byPath].filter(([path]) => !path.includes("."));
  const inputs = parts.map(([name, part]) => ({ name, value: part.mass }));
  const sums: Account = { formula: "the weights of all parts, added", inputs, source: `${mechanics}; ${bands}` };
  set.put("mass.total", mass.mass, sums);
  set.put("mass.empty", mass.empty, { ...sums, formula: "the weights of all parts but batteries and optional ones, added" });
  for (const [path, part] of mass.byPath) {
    set.put(`mass.${path}`, part.mass, {
      formula: "as written, or wall × surface × density of its skin with ribs, infill and spars",
      inputs: [{ name: "balances at x", value: part.cg[0] }, { name: "y", value: part.cg[1] }, { name: "z", value: part.cg[2] }],
      source: "weighed by the designer, or from the material's density",
    });
  }
  const moments = parts.map(([name, part]) => ({ name: `${name} at x`, value: part.cg[0] }));
  const balance: Account = {
    formula: "Σ weight × place / Σ weight", inputs: [{ name: "mass.total", value: mass.mass }, ...moments], source: `${mechanics}; ${bands}`,
  };
  (["x", "y", "z"] as const).forEach((axis, i) => set.put(`cg.${axis}`, withoutNoise(mass.cg[i]), balance));
  putInertia(set, mass.inertia);
}

/** Mirrored halves cancel but for rounding: under a nanometre is nothing. */
function withoutNoise(place: Quantity): Quantity {
  return Math.abs(place.value) + halfWidth(place) < 1e-9 ? quantity(0, place.dimension) : place;
}

function putInertia(set: FigureSet, inertia: { readonly xx: Quantity; readonly yy: Quantity; readonly zz: Quantity; readonly xz: Quantity }): void {
  const account: Account = {
    formula: "own inertia of each part (box, tube, shell, thin panel) and weight × distance², about the centre of gravity",
    inputs: ["mass.total", "cg.x", "cg.y", "cg.z"].flatMap((name) => {
      const value = set.value(name);
      return value ? [{ name, value }] : [];
    }),
    source: `${mechanics}, parallel-axis theorem; ${bands}`,
    notModelled: "the spread of weight inside motors, packs and servos without a size",
  };
  set.put("inertia.roll", inertia.xx, account);
  set.put("inertia.pitch", inertia.yy, account);
  set.put("inertia.yaw", inertia.zz, account);
  set.put("inertia.product", inertia.xz, account);
}

/** The balance point as a modeller measures it; needs the wing figures. */
export function putBalanceOnWing(set: FigureSet): void {
  const x = set.value("cg.x");
  const chord = set.value("wing.mean_chord");
  const edge = set.value("wing.mean_chord_x");
  if (x && chord && edge) {
    set.put("cg.chord", divide(subtract(x, edge), chord), {
      formula: "(cg.x − wing.mean_chord_x) / wing.mean_chord",
      inputs: [{ name: "cg.x", value: x }, { name: "wing.mean_chord_x", value: edge }, { name: "wing.mean_chord", value: chord }],
      source: "definition",
    });
  }
  const root = largestRoot(set);
  if (x && root) {
    set.put("cg.behind_leading_edge", subtract(x, root.edge), {
      formula: "cg.x − leading edge at the root of the largest wing",
      inputs: [{ name: "cg.x", value: x }, { name: `root leading edge of ${root.path}`, value: root.edge }],
      source: "definition",
    });
  }
}

function largestRoot(set: FigureSet): { path: string; edge: Quantity } | undefined {
  const { surfaces } = set.loading.design;
  const sized = surfaces.filter((s) => s.kind === "wing").map((surface) => {
    const panels = surface.halves.flatMap((half) => half.panels);
    const size = panels.reduce((sum, { inner, outer }) => {
      const width = Math.hypot(...[1, 2].map((i) => outer.leadingEdge[i].value - inner.leadingEdge[i].value));
      return sum + ((inner.chord.value + outer.chord.value) / 2) * width;
    }, 0);
    return { surface, size };
  });
  const largest = sized.sort((a, b) => b.size - a.size)[0]?.surface;
  const edge = largest?.halves[0]?.panels[0]?.inner.leadingEdge[0];
  return largest && edge ? { path: largest.path, edge } : undefined;
}

