import { surfaceKinds } from "./places";
import { allLater, kind, named, property } from "./property";
import { notNegative, positive, share } from "./range";

export const sparProperties = named({
  outer: property.taper("length", { text: "Outer diameter of a tube or rod, from root `to` tip.", example: "10 mm", needed: true, unless: ["width"], range: positive }),
  inner: property.taper("length", { text: "Inner diameter of the tube; without it and `wall` it is a solid rod.", example: "8 mm", range: notNegative }),
  wall: property.taper("length", { text: "Thickness of the tube's wall, instead of `inner`.", example: "1 mm", range: positive }),
  width: property.taper("length", { text: "Width of a bar, fore and aft.", example: "8 mm", needed: true, unless: ["outer"], range: positive }),
  height: property.taper("length", { text: "Height of a bar.", example: "12 mm to 6 mm", needed: true, unless: ["outer"], range: positive }),
  material: property.reference(["material"], { text: "What it is made of.", example: "carbon", needed: true }),
  along: property.stretch("ratio", {
    text: "Where it begins and ends, as shares of the half-span, or of its panel.", example: "0 % to 80 %", default: "0 % to 100 %", range: share,
  }),
  chord: property.taper("ratio", { text: "Where it lies, as a share of the chord.", example: "35 %", default: "30 %", range: share }),
});

const jointProperties = named({
  at: property.quantity("ratio", { text: "Where the joint is, as a share of the half-span.", example: "35 %", needed: true, range: share }),
  overlap: property.quantity("length", { text: "How deep the one half sits in the other.", example: "60 mm", needed: true, range: positive }),
});

export const structure = [
  kind("spar", sparProperties, {
    text: "A tube, rod or bar through a surface; one on each side where the surface is mirrored. Its weight is section area × length × density.",
    within: [...surfaceKinds, "panel"], exclusive: [["inner", "wall"], ["outer", "width"], ["outer", "height"]],
    example: "spar tube { outer = 10 mm ; inner = 8 mm ; material = carbon ; chord = 30 % ; along = 0 % to 80 % }",
  }),
  kind("joint", allLater(jointProperties), {
    text: "Where a spar is taken apart for transport.", within: ["spar"], later: true, example: "joint { at = 35 % ; overlap = 60 mm }",
  }),
];
