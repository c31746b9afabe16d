import { allLater, kind, named, property } from "./property";
import { altitude, atLeast, celsius, notNegative, positive, share, withinDegrees } from "./range";

const classes = [
  "trainer", "sport", "aerobatic", "glider", "motor_glider", "tailless", "camera", "scale", "speed", "slow", "indoor", "seaplane",
] as const;

const cruise = (text: string, standard: string) =>
  property.quantity("speed", { text, example: "16 m/s", default: standard, range: positive });

export const airframeProperties = named({
  purpose: property.text({ text: "What it is built for, in a few words.", example: '"camera ship for bog surveys"' }),
  datum: property.text({ text: "The point all places are measured from, for people.", example: '"firewall"' }),
  class: property.word(classes, { text: "What kind of model it is: checks take their thresholds from it.", example: "trainer", default: "sport" }),
  cruise: cruise("The airspeed it is meant to fly at.", "least drag, at least 1.3 × stall"),
  allowance: property.quantity("ratio", {
    text: "Share added to computed weights of skins and spars for glue and paint.", example: "5 %", default: "0 %", range: share,
  }),
});

export const airProperties = named({
  altitude: property.quantity("length", { text: "Height of the flying field above the sea.", example: "450 m", default: "0 m", range: altitude }),
  temperature: property.quantity("temperature", {
    text: "Temperature at the field.", example: "25 degC", default: "standard atmosphere", range: celsius(-60, 60),
  }),
  pressure: property.quantity("pressure", {
    text: "Pressure at the field itself, not reduced to the sea.", example: "96 kPa", default: "standard atmosphere", range: positive,
  }),
  wind: property.quantity("speed", { text: "Wind at the field.", example: "4 m/s", default: "0 m/s", later: true, range: notNegative }),
});

const loadsProperties = named({
  positive_g: property.quantity("ratio", { text: "Greatest load upward, in times the weight.", example: "6", range: positive }),
  negative_g: property.quantity("ratio", { text: "Greatest load downward, in times the weight, as its size.", example: "3", range: notNegative }),
  gust: property.quantity("speed", { text: "Vertical gust it must stand at cruise.", example: "6 m/s", range: notNegative }),
  safety_factor: property.quantity("ratio", { text: "What the strength must exceed the load by.", example: "1.5", range: atLeast(1) }),
  sink_rate: property.quantity("speed", { text: "Sink rate of the hardest landing.", example: "1.2 m/s", range: notNegative }),
  never_exceed: property.quantity("speed", {
    text: "The airspeed it must never exceed, in a dive.", example: "45 m/s", default: "1.2 × top speed; without a motor 3 × stall", range: positive,
  }),
});

export const loadingProperties = named({
  without: property.references(["*"], { text: "Parts left out in this loading.", example: "[camera]" }),
  with: property.references(["*"], { text: "Optional parts that are in.", example: "[ballast]" }),
  flaps: property.quantity("angle", {
    text: "How far the flaps are down; each at most by its throw, flaperons by their droop.", example: "20 deg", default: "0 deg", range: withinDegrees(90),
  }),
  cruise: cruise("The airspeed flown in this loading.", "as the airframe"),
});

const weighedProperties = named({
  date: property.text({ text: "When it was weighed.", example: '"spring"' }),
  loading: property.reference(["loading"], { text: "The loading it was weighed in.", example: "survey" }),
});

export const whole = [
  kind("airframe", airframeProperties, {
    text: "The design as a whole; one in a file.", within: ["file"],
    example: 'airframe "Plover" { purpose = "camera ship for bog surveys" ; datum = "firewall" ; class = camera }',
  }),
  kind("air", airProperties, {
    text: "The air of the flying field. What is not written is that of the standard atmosphere.", within: ["file"],
    example: "air { altitude = 450 m ; temperature = 25 degC }",
  }),
  kind("loads", { ...allLater(loadsProperties), never_exceed: loadsProperties.never_exceed }, {
    text: "The loads the structure must stand, and how fast it may fly.", within: ["file"], example: "loads { positive_g = 6 ; negative_g = 3 ; safety_factor = 1.5 }",
  }),
  kind("loading", loadingProperties, {
    text: "A way the model flies: which parts are aboard and where. A block in it with a part's kind and name changes that part. "
      + "Every figure exists for every loading.",
    within: ["file"], example: "loading ferry { without = [camera] ; battery pack { at = (110 mm, 0 mm, -20 mm) } }",
  }),
  kind("limits", {}, {
    text: "Thresholds of checks by their code, in place of those of the class.", within: ["file"], open: true,
    example: "limits { cg_aft_of_limit = 8 % }",
  }),
  kind("weighed", allLater(weighedProperties), {
    text: "What was measured on the finished model, beside the computed figures.", within: ["file"], open: true, later: true,
    example: "weighed { loading = survey ; mass.total = 1480 g }",
  }),
];
