import { allLater, kind, named, property } from "./property";
import { notNegative, positive } from "./range";

const printerProperties = named({
  bed: property.box({ text: "What it can print at once: width, depth, height.", example: "(220 mm, 220 mm, 250 mm)", needed: true }),
  nozzle: property.quantity("length", { text: "Width of the nozzle.", example: "0.4 mm", range: positive }),
  margin: property.quantity("length", { text: "What stays free at the edges of the bed.", example: "5 mm", default: "0 mm", range: notNegative }),
});

export const build = [
  kind("printer", allLater(printerProperties), {
    text: "The printer the parts are made on.", within: ["file"], later: true, example: "printer { bed = (220 mm, 220 mm, 250 mm) }",
  }),
];
