import { anywhere } from "./places";
import { allLater, kind, named, property } from "./property";
import { notNegative, positive } from "./range";

const at = property.point({ text: "Its middle, from the datum: aft, right, up.", example: "(610 mm, 20 mm, 10 mm)", needed: true });
const weight = property.quantity("mass", { text: "Its weight with lead; of one, where it is mirrored.", example: "22 g", range: notNegative });
const supply = property.reference(["supply"], { text: "The `supply` that feeds it.", example: "five_volts", later: true });

export const servoProperties = {
  ...allLater(named({
    torque: property.quantity("torque", { text: "Stall torque at the voltage it gets.", example: "3.2 kgf*cm", range: positive }),
    speed: property.quantity("rotation", { text: "How fast it turns without load.", example: "60 deg/0.12 s", range: positive }),
    stall_current: property.quantity("current", { text: "Current it draws when held fast.", example: "1.4 A", range: positive }),
  })),
  ...named({
    supply,
    weight,
    at,
    mirror: property.flag({ text: "Is there a left one too? `NAME.right` and `NAME.left` then name the two.", example: "yes", default: "no" }),
  }),
};

export const receiverProperties = named({
  outputs: property.outputs(["servo", "esc", "item", "gear", "wheel"], {
    text: "What each channel drives, in order: a name, `none`, or a list for a Y-lead.", example: "[ail.left, ail.right, ele, none, nose.esc]",
  }),
  supply,
  weight,
  at,
  failsafe: property.word(["hold", "preset"], {
    text: "What the outputs do when the link is lost: hold their last position, or go to a preset one with the motor off.",
    example: "preset", later: true,
  }),
});

const supplyProperties = named({
  volts: property.quantity("voltage", { text: "Voltage it gives.", example: "6 V", needed: true, range: positive }),
  amps: property.quantity("current", { text: "Current it can give as long as the flight lasts.", example: "5 A", range: positive }),
  source: property.reference(["battery", "esc"], { text: "What it draws from.", example: "pack" }),
});

export const control = [
  kind("servo", servoProperties, {
    text: "A servo. Control surfaces name it, and a receiver's outputs.", within: anywhere, massive: true,
    example: "servo ail { torque = 3.2 kgf*cm ; weight = 22 g ; at = point(main, 70 %, 35 %) ; mirror = yes }",
  }),
  kind("receiver", receiverProperties, {
    text: "The receiver, and what each of its channels drives.", within: anywhere, massive: true,
    example: "receiver rx { outputs = [ail.left, ail.right, ele, rud, nose.esc] ; weight = 14 g ; at = (230 mm, 0 mm, 10 mm) }",
  }),
  kind("supply", allLater(supplyProperties), {
    text: "What feeds receiver and servos: a BEC or a battery of their own.", within: anywhere, later: true,
    example: "supply five_volts { volts = 5 V ; amps = 4 A ; source = nose.esc }",
  }),
];
