import { dimensions } from "../../grammar/units/dimension";
import { chain, divide, type Quantity } from "../../grammar/units/quantity";
import { referenceGeometry } from "../compute/planform/reference-geometry";
import { canardVolume, finVolume, tailVolume } from "../compute/planform/volumes";
import { propagateSettled } from "../compute/tolerance/propagate";
import { settler } from "../model/design/settle";
import { quantityOf } from "./banded";
import type { Account, Input } from "./figure";
import type { FigureSet } from "./figure-set";
import { shapeOf, type Shape } from "./shape";

const definition = "definition; mean aerodynamic chord as in R. C. Nelson, Flight Stability and Automatic Control, 1998";
const handbook = "D. P. Raymer, Aircraft Design: A Conceptual Approach, ch. 6; V-tails: NACA Report 823";

function planform({ surfaces, bodies }: Shape) {
  const reference = referenceGeometry(surfaces, bodies);
  if (!reference) return {};
  const { area, span, meanChord, meanChordX, aspectRatio } = reference;
  return {
    area, span, meanChord, meanChordX, aspectRatio,
    tail: tailVolume(surfaces, bodies, reference),
    canard: canardVolume(surfaces, bodies, reference),
    fin: finVolume(surfaces, reference),
  };
}

/** Areas, chords and volumes of a loading's surfaces, and its wing loading. */
export function putWing(set: FigureSet): void {
  const shape = settler(shapeOf(set.loading.design));
  set.facts.shape = shape;
  set.facts.reference = referenceGeometry(shape.nominal.surfaces, shape.nominal.bodies);
  const found = propagateSettled(shape, planform);
  const area = quantityOf(found.area, "area");
  const span = quantityOf(found.span, "length");
  const chord = quantityOf(found.meanChord, "length");
  const carried = set.facts.reference?.gaps.map(({ path, carried }): Input =>
    ({ name: `gap between the roots of ${path}`, value: carried ? "counts as wing" : "does not count" })) ?? [];
  const wings = shape.nominal.surfaces.filter((s) => s.kind === "wing" && s.reference).map((s) => s.path).join(", ");
  const account = (formula: string, ...inputs: Input[]): Account => ({
    formula, inputs: [{ name: "wings", value: wings || "none" }, ...carried, ...inputs], source: definition,
  });
  set.put("wing.area", area, account("∫c dy over both sides of all wings, projected on the plan"));
  set.put("wing.span", span, account("from tip to tip of the widest wing, projected on the plan"));
  set.put("wing.mean_chord", chord, account("∫c² dy / ∫c dy"));
  set.put("wing.mean_chord_x", quantityOf(found.meanChordX, "length"), account("area-weighted x of the quarter-chord line, less a quarter of the mean chord"));
  set.put("wing.aspect_ratio", quantityOf(found.aspectRatio, "ratio"), account("span² / area", ...named(set, "wing.span", "wing.area")));
  putVolumes(set, found);
  putLoading(set, area);
}

function putVolumes(set: FigureSet, found: ReturnType<typeof propagateSettled<Shape, string>>): void {
  const account = (formula: string): Account => ({
    formula, inputs: named(set, "wing.area", "wing.mean_chord", "wing.span"), source: handbook,
    notModelled: "the body's and the propeller's part in stability",
  });
  set.put("stability.tail_volume", quantityOf(found.tail, "ratio"), account("Σ tail area · cos²Γ × arm / (wing area × mean chord), quarter mean chord to quarter mean chord"));
  set.put("stability.canard_volume", quantityOf(found.canard, "ratio"), account("Σ canard area · cos²Γ × arm / (wing area × mean chord), arm forward"));
  set.put("stability.fin_volume", quantityOf(found.fin, "ratio"), account("Σ fin area · sin²Γ × arm / (wing area × span), winglets and V-tails included"));
}

function putLoading(set: FigureSet, area: Quantity | undefined): void {
  const mass = set.value("mass.total");
  if (!mass || !area) return;
  const inputs = named(set, "mass.total", "wing.area");
  set.put("wing.loading", divide(mass, area), { formula: "mass.total / wing.area", inputs, source: definition });
  const size = chain(area, area.value ** 1.5, 1.5 * area.value ** 0.5, dimensions.volume);
  set.put("wing.cube_loading", divide(mass, size), {
    formula: "mass.total / wing.area^1.5", inputs, source: "F. Reynolds, Model Builder, September 1989",
  });
}

/** Figures of the set as inputs of an account. */
export function named(set: FigureSet, ...names: string[]): Input[] {
  return names.flatMap((name) => {
    const value = set.value(name);
    return value ? [{ name, value }] : [];
  });
}

