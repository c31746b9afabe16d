import { topmost } from "./places";
import { kind, named, property } from "./property";

export const placeProperties = named({
  at: property.point({
    text: "Where the assembly's own origin goes.", example: "(0 mm, 260 mm, 0 mm)", default: "(0 mm, 0 mm, 0 mm)",
  }),
  mirror: property.flag({ text: "Is there a left one too, the image of this?", example: "yes", default: "no" }),
  flip: property.flag({ text: "Is the one that is placed the image of what is written?", example: "yes", default: "no" }),
});

/** Any block that is a copy (`from`) may have these. */
export const copyProperties = named({
  drop: property.names({ text: "Children of the copied block that are left out.", example: "[tip, tube]" }),
});

export const composition = [
  kind("assembly", {}, {
    text: "Blocks that belong together, in axes of their own. It weighs nothing until it is placed.", within: topmost,
    example: "assembly pod { body shell { at = (0 mm, 0 mm, 0 mm) ; length = 180 mm ; width = 60 mm ; weight = 45 g } }",
  }),
  kind("place", placeProperties, {
    text: "Puts an assembly into the design: `place NAME from ASSEMBLY { … }`.", within: topmost,
    example: "place pods from pod { at = (0 mm, 260 mm, 0 mm) ; mirror = yes }",
  }),
];
