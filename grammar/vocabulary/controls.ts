import { surfaceKinds } from "./places";
import { kind, named, property } from "./property";
import { positive, positiveShare, share, upToDegrees, withinDegrees } from "./range";

/** What every control surface has besides its throws. */
export const controlProperties = named({
  panel: property.reference(["panel"], {
    text: "The panel it is part of; `along` then counts along that panel. If not written: the panel it stands in, else the whole half.",
    example: "outer",
  }),
  along: property.stretch("ratio", {
    text: "Where it begins and ends, as shares of the half-span, or of its panel.", example: "8 % to 96 %", default: "0 % to 100 %", range: share,
  }),
  chord: property.taper("ratio", {
    text: "Its share of the local chord, from inner `to` outer end.", example: "25 %", needed: true, unless: ["all_moving"], range: positiveShare,
  }),
  reflex: property.quantity("angle", {
    text: "How far it stands up in neutral, as tailless models need it.", example: "3 deg", default: "0 deg", range: withinDegrees(45),
  }),
  joined: property.flag({ text: "Are both halves one piece, moved by one servo? It then goes on through the gap between the roots.", example: "yes", default: "no" }),
  all_moving: property.flag({ text: "Does the whole surface turn, with no fixed part?", example: "yes", default: "no" }),
  pivot: property.quantity("ratio", {
    text: "Where an all-moving surface is hinged, as a share of its root chord.", example: "25 %", later: true, range: share,
  }),
  servo: property.references(["servo"], {
    text: "The servo that moves it, or several in a list. A mirrored servo drives each side with its own.", example: "ail",
  }),
  servo_arm: property.quantity("length", {
    text: "From the servo's axis to the hole of the linkage in its arm.", example: "12 mm", later: true, range: positive,
  }),
  horn: property.quantity("length", {
    text: "From the hinge line to the hole of the linkage in the control horn.", example: "15 mm", later: true, range: positive,
  }),
});

const throwing = (later: boolean) => (way: string, example = "20 deg") =>
  property.quantity("angle", { text: `Throw: ${way}, as its size.`, example, later, range: upToDegrees(90) });

const thrown = throwing(false);
const thrownLater = throwing(true);

const upDown = (throwOf: typeof thrown) => named({ up: throwOf("trailing edge up"), down: throwOf("trailing edge down", "12 deg") });
const sideways = named({ left: thrown("trailing edge left", "25 deg"), right: thrown("trailing edge right", "25 deg") });
const inPitch = named({
  pitch_up: thrown("trailing edges up when pulling the nose up"), pitch_down: thrown("trailing edges down when pushing the nose down"),
});
const inRoll = named({ roll_up: thrown("trailing edge up in a roll"), roll_down: thrown("trailing edge down in a roll", "12 deg") });
const inYaw = named({ yaw_out: thrown("trailing edge outward in a yaw"), yaw_in: thrown("trailing edge inward in a yaw") });
const drooped = named({ droop: thrown("trailing edges down together as flaps", "15 deg") });

/** Throws of each control surface: plain ones by direction, mixed ones by what they are mixed for. */
const throws = {
  aileron: upDown(thrown), elevator: upDown(thrown), rudder: sideways, flap: upDown(thrown), elevon: { ...inPitch, ...inRoll },
  ruddervator: { ...inPitch, ...inYaw }, flaperon: { ...inRoll, ...drooped }, airbrake: upDown(thrownLater), spoiler: upDown(thrownLater),
} as const;

const control = (name: keyof typeof throws, text: string, example: string) =>
  kind(name, { ...controlProperties, ...throws[name] }, { text, within: [...surfaceKinds, "panel"], example });

export const controls = [
  control("aileron", "Rolls the model: one side goes up as the other goes down.",
    "aileron tip { along = 8 % to 96 % ; chord = 24 % ; up = 20 deg ; down = 12 deg ; servo = ail }"),
  control("elevator", "Pitches the model; on the tailplane or the canard.",
    "elevator full { chord = 35 % ; up = 15 deg ; down = 15 deg ; joined = yes ; servo = ele }"),
  control("rudder", "Yaws the model; on a fin.", "rudder full { chord = 40 % ; left = 25 deg ; right = 25 deg ; servo = rud }"),
  control("flap", "Goes down on both sides alike, for more lift and drag.", "flap root { along = 5 % to 50 % ; chord = 25 % ; down = 40 deg }"),
  control("elevon", "Elevator and aileron in one, on a tailless model.",
    "elevon outer { along = 40 % to 95 % ; chord = 25 % ; pitch_up = 15 deg ; pitch_down = 15 deg ; roll_up = 20 deg ; roll_down = 15 deg }"),
  control("ruddervator", "Rudder and elevator in one, on a V-tail.",
    "ruddervator full { chord = 35 % ; pitch_up = 15 deg ; pitch_down = 15 deg ; yaw_out = 20 deg ; yaw_in = 20 deg }"),
  control("flaperon", "Flap and aileron in one, along the whole wing.",
    "flaperon full { along = 10 % to 95 % ; chord = 22 % ; roll_up = 20 deg ; roll_down = 12 deg ; droop = 15 deg }"),
  control("airbrake", "A plate or split flap that adds drag, used on the descent.", "airbrake upper { along = 20 % to 40 % ; chord = 15 % ; up = 80 deg }"),
  control("spoiler", "A flap on the upper side that takes lift away.", "spoiler mid { along = 20 % to 45 % ; chord = 15 % ; up = 60 deg }"),
];
