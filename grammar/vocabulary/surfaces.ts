import { anywhere, surfaceKinds, topmost } from "./places";
import { kind, named, property } from "./property";
import { notNegative, positive, withinDegrees } from "./range";

/** What all surfaces have. Only `mirror` starts differently for a fin. */
const surface = (mirror: "yes" | "no") => named({
  at: property.point({
    text: "The leading edge at the root, from the datum: aft, right, up.", example: "(165 mm, 0 mm, 58 mm)", needed: true,
  }),
  mirror: property.flag({
    text: "Is there a left side too, the image of what is written? `NAME.right` and `NAME.left` then name the two.",
    example: mirror === "yes" ? "no" : "yes", default: mirror,
  }),
  foil: property.section({
    text: "The section of all panels that don't say another: NACA digits, a flat plate of some thickness, or the name of a `foil`.",
    example: 'naca("4412")', default: "flat(3 %)",
  }),
  incidence: property.quantity("angle", {
    text: "Angle of the root chord to the x axis, nose up.", example: "2 deg", default: "0 deg", range: withinDegrees(45),
  }),
  weight: property.quantity("mass", {
    text: "The whole surface as weighed, both sides, without servos. It replaces what skin, spars and panels would weigh.",
    example: "92 g", range: notNegative,
  }),
  balance: property.quantity("length", {
    text: "Where the weighed surface balances, aft of its root leading edge. If not written: worked out from its area.", example: "70 mm",
  }),
  carry_through: property.flag({
    text: "Does the gap between the two roots carry lift? If not written: yes where a fuselage bridges it.", example: "yes",
  }),
  reference: property.flag({
    text: "Does it count in wing area, span and mean chord? Only wings ever do; `no` takes one out.", example: "no", default: "yes",
  }),
});

export const surfaceProperties = surface("yes");

export const finProperties = {
  ...surface("no"),
  ...named({
    cant: property.quantity("angle", {
      text: "How far the tip leans outward from upright.", example: "15 deg", default: "0 deg", range: withinDegrees(90),
    }),
    ventral: property.flag({ text: "Does the fin hang below instead of standing up?", example: "yes", default: "no" }),
  }),
};

export const panelProperties = named({
  span: property.quantity("length", {
    text: "Length of one side's panel, along the panel as built; dihedral folds it up.", example: "420 mm", needed: true, range: positive,
  }),
  chord: property.taper("length", {
    text: "Chord at its root, `to` that at its tip, measured streamwise. A later panel starts with the tip chord of the one before.",
    example: "245 mm to 170 mm", needed: true, inherited: true, range: positive,
  }),
  sweep: property.quantity("angle", {
    text: "Sweep of the leading edge, aft positive.", example: "20 deg", default: "0 deg", range: withinDegrees(80),
  }),
  sweep_quarter: property.quantity("angle", {
    text: "Sweep of the quarter-chord line, instead of `sweep`.", example: "15 deg", range: withinDegrees(80),
  }),
  offset: property.quantity("length", {
    text: "How far the tip's leading edge lies aft of the root's, instead of `sweep`.", example: "35 mm",
  }),
  dihedral: property.quantity("angle", {
    text: "Angle of the panel to the horizontal, tip up. A later panel starts with that of the one before.",
    example: "4 deg", default: "0 deg (a fin: 90 deg)", inherited: true, range: withinDegrees(180),
  }),
  twist: property.taper("angle", {
    text: "Nose-up angle of the chord against the root of the surface, from this panel's root `to` its tip.",
    example: "0 deg to -2 deg", default: "0 deg", inherited: true, range: withinDegrees(45),
  }),
  washout: property.quantity("angle", {
    text: "How far the tip is turned nose down against this panel's root, instead of `twist`.", example: "2 deg", range: withinDegrees(45),
  }),
  foil: property.sections({
    text: "The section at its root, `to` that at its tip. A later panel starts with that of the one before.", example: 'naca("2412")',
    default: "as its surface", inherited: true,
  }),
  weight: property.quantity("mass", {
    text: "Weight of this panel on one side, where the surface has none written.", example: "85 g", range: notNegative,
  }),
});

export const foilProperties = named({
  shape: property.shape({
    text: "Its outline by formula.", example: 'naca("2412")', needed: true, unless: ["file", "polar"],
  }),
  file: property.text({
    text: "A text file of coordinates, two columns, from the trailing edge over the upper side and back.",
    example: '"wing-root.dat"',
  }),
  polar: property.text({
    text: "A table of lift, drag and moment as measured, by Reynolds number and angle. It goes before computed polars. Without `shape` or `file`, weights take the section as a plate of 3 %.",
    example: '"wing-root-polar.csv"',
  }),
  lift_max: property.quantity("ratio", {
    text: "Greatest lift coefficient of the section, in place of the estimate.", example: "1.25", range: positive,
  }),
  zero_lift_angle: property.quantity("angle", {
    text: "Angle of the chord at which the section gives no lift, in place of the estimate.", example: "-3.5 deg", range: withinDegrees(20),
  }),
  moment: property.quantity("ratio", {
    text: "Moment coefficient of the section about the quarter chord, nose up positive, in place of the estimate.", example: "-0.06",
  }),
});

const panelled = (name: string, what: string, example: string) =>
  kind(name, surfaceProperties, { text: what, within: anywhere, massive: true, example });

export const surfaces = [
  panelled("wing", "A lifting surface that counts in wing area and loading. It holds its panels, root to tip.", `wing main {
  at = (165 mm, 0 mm, 58 mm)
  foil = naca("4412")
  panel inner { span = 420 mm ; chord = 245 mm }
  panel outer { span = 340 mm ; chord = 245 mm to 170 mm ; dihedral = 4 deg }
}`),
  panelled("tailplane", "The horizontal tail, or with dihedral a V-tail. It stabilises, and does not count in wing area.", `tailplane stab {
  at = (775 mm, 0 mm, 40 mm)
  foil = naca("0009")
  panel half { span = 240 mm ; chord = 150 mm to 120 mm }
}`),
  panelled("canard", "A smaller surface ahead of the wing. It does not count in wing area.", `canard front {
  at = (0 mm, 0 mm, 20 mm)
  foil = naca("2412")
  panel half { span = 210 mm ; chord = 110 mm to 90 mm }
}`),
  kind("fin", finProperties, {
    text: "An upright surface: tail fin, winglet or ventral fin. One, unless mirrored.", within: anywhere, massive: true,
    example: `fin upright {
  at = (775 mm, 0 mm, 45 mm)
  foil = naca("0009")
  panel only { span = 190 mm ; chord = 170 mm to 110 mm ; sweep = 20 deg }
}`,
  }),
  kind("panel", panelProperties, {
    text: "A straight-edged piece of one side of a surface. Panels follow one another from root to tip.", within: surfaceKinds,
    exclusive: [["sweep", "sweep_quarter", "offset"], ["twist", "washout"]],
    example: "panel outer { span = 340 mm ; chord = 245 mm to 170 mm ; dihedral = 4 deg ; twist = 0 deg to -2 deg }",
  }),
  kind("foil", foilProperties, {
    text: "A wing section with a name. Surfaces and panels take it by `foil = NAME`.", within: topmost, exclusive: [["shape", "file"]],
    example: 'foil thick_root { shape = naca("4415") ; lift_max = 1.3 }',
  }),
];
