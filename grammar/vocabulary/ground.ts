import { anywhere } from "./places";
import { allLater, kind, named, property } from "./property";
import { notNegative, positive } from "./range";

const gearProperties = allLater(named({
  travel: property.quantity("length", { text: "How far the gear springs in.", example: "20 mm", range: positive }),
  retracts: property.flag({ text: "Is it drawn in after takeoff?", example: "yes", default: "no" }),
}));

export const wheelProperties = named({
  at: property.point({ text: "Where it touches the ground, from the datum: aft, right, up.", example: "(110 mm, 130 mm, -140 mm)", needed: true }),
  diameter: property.quantity("length", { text: "Diameter of the wheel, or height of the skid.", example: "65 mm", range: positive }),
  steer: property.flag({ text: "Does it steer?", example: "yes", default: "no" }),
  mirror: property.flag({ text: "Is there a left one too, the image of what is written?", example: "yes", default: "no" }),
  weight: property.quantity("mass", { text: "Weight of one, with its leg.", example: "28 g", range: notNegative }),
});

export const ground = [
  kind("gear", gearProperties, {
    text: "The landing gear: its wheels and skids.", within: anywhere,
    example: `gear main_gear {
  wheel main { at = (110 mm, 130 mm, -140 mm) ; diameter = 65 mm ; weight = 28 g ; mirror = yes }
  wheel tail { at = (780 mm, 0 mm, -30 mm) ; diameter = 25 mm ; weight = 9 g ; steer = yes }
}`,
  }),
  kind("wheel", wheelProperties, {
    text: "A wheel with its leg.", within: ["gear"], massive: true,
    example: "wheel main { at = (110 mm, 130 mm, -140 mm) ; diameter = 65 mm ; weight = 28 g ; mirror = yes }",
  }),
  kind("skid", wheelProperties, {
    text: "A skid, where the model slides on the ground.", within: ["gear"], massive: true,
    example: "skid tail { at = (780 mm, 0 mm, -30 mm) ; weight = 4 g }",
  }),
];
