import { kind, named, property } from "./property";
import { notNegative, positive, type Range } from "./range";

/** Speeds that follow from the aircraft: of cruise, and those at which something is best. */
export const legSpeeds = ["cruise", "best_range", "best_endurance", "best_climb", "best_glide", "least_sink"] as const;

/** Steeper turns are no steady flight for a model. */
const bank: Range = { holds: (x) => x >= 0 && x <= (80 * Math.PI) / 180 + 1e-9, message: "must lie between 0 deg and 80 deg" };

const sortieProperties = named({
  loading: property.reference(["loading"], { text: "The loading it is flown in.", example: "survey", default: "the first loading" }),
  equipment: property.quantity("power", {
    text: "What receiver, servos and payload take from the flight packs all the while, each pack as much as its share of the motors' power.", example: "6 W", default: "0 W", range: notNegative,
  }),
});

const lengths = ["time", "distance", "height"];

const legProperties = named({
  time: property.quantity("time", { text: "How long it lasts.", example: "10 min", needed: true, unless: ["distance", "height"], range: positive }),
  distance: property.quantity("length", { text: "How far it goes over level ground, in still air.", example: "1.2 km", range: positive }),
  height: property.quantity("length", { text: "How much height it gains, or loses gliding or sinking, as its size.", example: "100 m", range: positive }),
  speed: property.quantityOr("speed", legSpeeds, {
    text: "Its airspeed, or the name of one that follows from the aircraft; of these none lies under 1.3 × the stall in its bank.", example: "16 m/s", default: "best_climb at full throttle, best_glide gliding, else cruise",
    range: positive,
  }),
  climb: property.quantityOr("speed", ["full"], {
    text: "Height gained each second, negative where it sinks under power; or `full`, what full throttle gives.", example: "full", default: "0 m/s",
  }),
  glide: property.flag({ text: "Are the motors off?", example: "yes", default: "no" }),
  bank: property.quantity("angle", { text: "Of a turn or of circles, all the while.", example: "25 deg", default: "0 deg", range: bank }),
});

export const flying = [
  kind("sortie", sortieProperties, {
    text: "A flight leg by leg, in the order written, on packs that are full at its beginning.", within: ["file"],
    example: `sortie survey_day {
  leg up     { climb = full ; height = 100 m }
  leg out    { distance = 1.2 km }
  leg circle { speed = best_endurance ; bank = 25 deg ; time = 8 min }
  leg back   { speed = 17 m/s ; distance = 1.2 km }
  leg down   { glide = yes ; height = 100 m }
}`,
  }),
  kind("leg", legProperties, {
    text: "A steady piece of a flight: a time, a distance or a height, at a speed.", within: ["sortie"],
    exclusive: [lengths, ["climb", "glide"]], example: "leg out { speed = 16 m/s ; distance = 1.2 km }",
  }),
];
