import { anywhere, bodyKinds, surfaceKinds, topmost } from "./places";
import { allLater, kind, named, property } from "./property";
import { celsius, notNegative, positive, positiveShare, share } from "./range";

const mirror = property.flag({
  text: "Is there a left one too, the image of what is written? `NAME.right` and `NAME.left` then name the two.", example: "yes", default: "no",
});

export const bodyProperties = named({
  at: property.point({ text: "Its nose, from the datum: aft, right, up.", example: "(-40 mm, 0 mm, 0 mm)", needed: true }),
  mirror,
  length: property.quantity("length", {
    text: "From nose to tail.", example: "960 mm", needed: true, unless: ["station"], range: positive,
  }),
  width: property.quantity("length", {
    text: "Greatest width; the outline between nose and tail is a usual one.", example: "96 mm", needed: true, unless: ["station"], range: positive,
  }),
  height: property.quantity("length", { text: "Greatest height.", example: "118 mm", default: "as the width", range: positive }),
  shape: property.word(["round", "oval", "box"], { text: "Its cross-section.", example: "box", default: "oval" }),
  weight: property.quantity("mass", {
    text: "The bare shell as weighed, without what is built in. It replaces what the skin would weigh.", example: "310 g ± 15 g", range: notNegative,
  }),
  balance: property.quantity("length", {
    text: "Where the weighed shell balances, aft of its nose. If not written: worked out from its surface.", example: "430 mm",
  }),
});

const inBlade = ["radius", "angle"];
const inBody = ["x", "width", "height", "z"];

export const stationProperties = named({
  x: property.quantity("length", { text: "Of a body: how far aft of the nose.", example: "120 mm", needed: true, unless: inBlade, range: notNegative }),
  width: property.quantity("length", { text: "Of a body: its width there.", example: "90 mm", needed: true, unless: inBlade, range: notNegative }),
  height: property.quantity("length", { text: "Of a body: its height there.", example: "110 mm", default: "as the width", range: notNegative }),
  z: property.quantity("length", { text: "Of a body: how far its middle lies above the nose.", example: "-5 mm", default: "0 mm" }),
  radius: property.quantity("ratio", { text: "Of a blade: its share of the propeller's radius.", example: "75 %", needed: true, unless: inBody, range: share }),
  chord: property.quantity("ratio", {
    text: "Of a blade: its width there, over the propeller's radius.", example: "0.14", needed: true, unless: inBody, range: positive,
  }),
  angle: property.quantity("angle", { text: "Of a blade: its angle to the disc there.", example: "17 deg", needed: true, unless: inBody }),
});

const start = property.point({ text: "One end.", example: "(180 mm, 40 mm, -30 mm)", needed: true });
const end = property.point({ text: "The other end.", example: "point(main, 55 %, 40 %)", needed: true });

export const memberProperties = named({
  start, end,
  chord: property.quantity("length", { text: "Its width streamwise, of a faired one.", example: "22 mm", range: positive }),
  diameter: property.quantity("length", { text: "Its thickness, of a round one.", example: "4 mm", range: positive }),
  weight: property.quantity("mass", { text: "Weight of one.", example: "11 g", range: notNegative }),
  mirror,
});

export const itemProperties = named({
  weight: property.quantity("mass", { text: "Its weight; of one, where it is mirrored.", example: "240 g ± 3 g", range: notNegative }),
  at: property.point({ text: "Its centre of gravity, from the datum: aft, right, up.", example: "(60 mm, 0 mm, -45 mm)", needed: true }),
  size: property.box({ text: "Length, width and height of its box, for inertia and drawing.", example: "(60 mm, 40 mm, 30 mm)" }),
  mirror,
  optional: property.flag({ text: "Is it left out unless a loading names it in `with`?", example: "yes", default: "no" }),
});

const stiffness = allLater(named({
  modulus: property.quantity("pressure", { text: "Young's modulus along the load.", example: "110 GPa", range: positive }),
  shear_modulus: property.quantity("pressure", { text: "Shear modulus.", example: "5 GPa", range: positive }),
  strength: property.quantity("pressure", { text: "Strength in tension.", example: "900 MPa", range: positive }),
  compression: property.quantity("pressure", { text: "Strength in compression.", example: "550 MPa", default: "as the strength", range: positive }),
  softens_at: property.quantity("temperature", { text: "Where it loses its stiffness in the heat.", example: "55 degC", range: celsius(20, 500) }),
  layer_factor: property.quantity("ratio", {
    text: "Strength across the printed layers, as a share of that along them.", example: "60 %", range: positiveShare,
  }),
}));

export const materialProperties = {
  ...named({
    density: property.quantity("density", {
      text: "Weight per volume, of the printed part as it comes off the bed.", example: "0.72 g/cm^3 ± 8 %", needed: true, unless: ["areal_density"],
      range: positive,
    }),
    areal_density: property.quantity("areal_density", {
      text: "Weight per area, of a film or cloth; its thickness is in it.", example: "60 g/m^2", range: positive,
    }),
  }),
  ...stiffness,
};

export const skinProperties = named({
  material: property.reference(["material"], { text: "What it is made of.", example: "foamed_pla", needed: true }),
  wall: property.quantity("length", { text: "Thickness of the wall; needed with a material that gives a density.", example: "0.8 mm", range: positive }),
  rib_spacing: property.quantity("length", { text: "From one rib to the next; each rib is a wall thick.", example: "60 mm", range: positive }),
  infill: property.quantity("ratio", { text: "Share of the volume inside that is filled.", example: "5 %", default: "0 %", range: share }),
});

export const partProperties = named({
  file: property.text({ text: "The mesh of the printed part, STL or 3MF.", example: '"nose.stl"', needed: true }),
  at: property.point({ text: "Where the mesh's origin lies, from the datum.", example: "(0 mm, 0 mm, 0 mm)", default: "(0 mm, 0 mm, 0 mm)" }),
  material: property.reference(["material"], { text: "What it is printed from.", example: "foamed_pla", needed: true }),
  wall: property.quantity("length", { text: "Thickness of its wall, if it is a shell.", example: "0.8 mm", range: positive }),
  infill: property.quantity("ratio", { text: "Share of its volume that is filled, if it is solid.", example: "15 %", range: share }),
});

const shell = (name: string, text: string, example: string) => kind(name, bodyProperties, { text, within: anywhere, massive: true, example });

const member = (name: string, text: string, example: string) =>
  kind(name, memberProperties, { text, within: anywhere, massive: true, exclusive: [["chord", "diameter"]], example });

export const bodies = [
  shell("fuselage", "The body that carries wing and tail.",
    "fuselage hull { at = (-40 mm, 0 mm, 0 mm) ; length = 960 mm ; width = 96 mm ; height = 118 mm ; weight = 310 g }"),
  shell("body", "A further body: pod, nacelle or float.",
    "body pod { at = (60 mm, 0 mm, -80 mm) ; length = 180 mm ; width = 60 mm ; weight = 45 g }"),
  shell("boom", "A long tube that carries the tail.",
    "boom tail { at = (300 mm, 0 mm, 20 mm) ; length = 620 mm ; width = 16 mm ; weight = 48 g }"),
  kind("station", stationProperties, {
    text: "A cross-section of a body, from nose to tail; or of a propeller blade, from hub to tip. Two or more replace the usual outline.",
    within: [...bodyKinds, "propeller"], exclusive: [["x", "radius"], ["width", "chord"], ["z", "angle"]],
    example: "station firewall { x = 60 mm ; width = 80 mm ; height = 90 mm }",
  }),
  member("strut", "A strut between two points, faired or round.",
    "strut lift { start = (180 mm, 40 mm, -30 mm) ; end = point(main, 55 %, 40 %) ; chord = 22 mm ; weight = 11 g ; mirror = yes }"),
  member("wire", "A round wire between two points: bracing or gear.",
    "wire brace { start = (180 mm, 40 mm, -30 mm) ; end = point(main, 55 %, 40 %) ; diameter = 1 mm ; mirror = yes }"),
  kind("item", itemProperties, {
    text: "Anything else that weighs: camera, payload, ballast, wiring, canopy.", within: anywhere, massive: true,
    example: "item camera { weight = 240 g ; at = (60 mm, 0 mm, -45 mm) }",
  }),
  kind("material", materialProperties, {
    text: "What skins, spars and parts are made of.", within: topmost, exclusive: [["density", "areal_density"]],
    example: "material foamed_pla { density = 0.72 g/cm^3 }",
  }),
  kind("skin", skinProperties, {
    text: "The shell of a surface or body, from which its weight is worked out where none is written.", within: [...surfaceKinds, ...bodyKinds],
    example: "skin { material = foamed_pla ; wall = 0.8 mm ; rib_spacing = 60 mm }",
  }),
  kind("part", allLater(partProperties), {
    text: "A printed part, read from its mesh.", within: anywhere, massive: true, later: true, exclusive: [["wall", "infill"]],
    example: 'part nose_cone { file = "nose.stl" ; material = foamed_pla ; wall = 0.8 mm }',
  }),
];
