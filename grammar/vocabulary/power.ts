import { anywhere } from "./places";
import { allLater, kind, named, property } from "./property";
import { notNegative, positive, positiveShare, share, withinDegrees } from "./range";

const weight = property.quantity("mass", { text: "Its weight.", example: "58 g", range: notNegative });
const size = property.box({ text: "Length, width and height of its box, for inertia and drawing.", example: "(130 mm, 42 mm, 30 mm)" });

const current = (text: string, example: string) => property.quantity("current", { text, example, range: positive });

export const batteryProperties = named({
  cells: property.count({ text: "Cells in series, the S of the label.", example: "4", needed: true, unless: ["packs"], most: 60 }),
  parallel: property.count({ text: "Cells side by side, the P of the label.", example: "2", default: "1", most: 40 }),
  chemistry: property.word(["lipo", "lihv", "liion", "life", "nimh"], { text: "What the cells are.", example: "liion", default: "lipo" }),
  capacity: property.quantity("charge", {
    text: "Charge of the whole pack, as on its label.", example: "4000 mAh", needed: true, unless: ["packs"], range: positive,
  }),
  c_rating: property.quantity("ratio", { text: "The lasting C of the label: allowed current over capacity, per hour.", example: "30", range: positive }),
  resistance: property.quantity("resistance", {
    text: "Internal resistance of the whole pack.", example: "18 mohm", default: "by chemistry and capacity", range: positive,
  }),
  usable: property.quantity("ratio", { text: "Share of the charge a flight may use.", example: "75 %", default: "80 %", range: positiveShare }),
  weight: property.quantity("mass", { text: "The whole pack as it flies, with its lead.", example: "418 g ± 4 g", range: notNegative }),
  at: property.point({ text: "Its middle, from the datum: aft, right, up.", example: "(95 mm, 0 mm, -20 mm)", needed: true, unless: ["packs"] }),
  size,
  packs: property.references(["battery"], { text: "Packs that are wired together, instead of cells of its own.", example: "[left_pack, right_pack]" }),
  wired: property.word(["series", "parallel"], { text: "How its `packs` are wired.", example: "parallel", default: "series" }),
});

export const powerplantProperties = named({
  at: property.point({ text: "The propeller's hub, from the datum: aft, right, up.", example: "(-50 mm, 0 mm, 5 mm)", needed: true }),
  battery: property.reference(["battery"], { text: "The battery that feeds it.", example: "pack" }),
  down_thrust: property.quantity("angle", {
    text: "How far the shaft points down from straight ahead.", example: "2 deg", default: "0 deg", range: withinDegrees(90),
  }),
  right_thrust: property.quantity("angle", {
    text: "How far the shaft points to the right from straight ahead.", example: "2 deg", default: "0 deg", range: withinDegrees(90),
  }),
  pusher: property.flag({ text: "Does the propeller sit behind its motor and push?", example: "yes", default: "no" }),
  mirror: property.flag({ text: "Is there a left one too, the image of what is written?", example: "yes", default: "no" }),
  handed: property.flag({ text: "Does the mirrored one turn the other way?", example: "no", default: "yes" }),
});

export const motorProperties = named({
  kv: property.quantity("motor_constant", { text: "Speed per volt without load.", example: "780 rpm/V", needed: true, range: positive }),
  resistance: property.quantity("resistance", { text: "Resistance of the winding.", example: "38 mohm", needed: true, range: positive }),
  no_load_current: property.quantity("current", {
    text: "Current it draws without a propeller. Without it the motor is taken to have no losses but its resistance.",
    example: "1.1 A", default: "0 A", range: notNegative,
  }),
  no_load_voltage: property.quantity("voltage", { text: "The voltage at which that current was measured.", example: "10 V", range: positive }),
  max_current: current("Current it stands for as long as the flight lasts.", "45 A"),
  burst_current: current("Current it stands for some seconds.", "60 A"),
  max_power: property.quantity("power", { text: "Electric power it stands for as long as the flight lasts.", example: "650 W", range: positive }),
  poles: property.count({ text: "Magnet poles, for reading a speed sensor.", example: "14", later: true, least: 2, most: 200 }),
  gear_ratio: property.quantity("ratio", { text: "Turns of the motor for one of the propeller.", example: "3.7", default: "1", range: positive }),
  weight,
  at: property.point({ text: "Its middle, from the datum.", example: "(-25 mm, 0 mm, 4 mm)", default: "25 mm behind the hub, along the shaft" }),
});

export const propellerProperties = named({
  diameter: property.quantity("length", { text: "Diameter of its disc.", example: "12 in", needed: true, range: positive }),
  pitch: property.quantity("length", { text: "Pitch, as stamped on the blade.", example: "6 in", needed: true, range: positive }),
  blades: property.count({ text: "How many blades it has.", example: "3", default: "2", most: 12 }),
  blade: property.word(["thin", "wide", "thick"], {
    text: "The blade's type: thin for electric motors, wide for slow flight, thick for sport engines.", example: "wide", default: "thin",
  }),
  rotation: property.word(["clockwise", "anticlockwise"], { text: "Which way it turns, seen from behind.", example: "anticlockwise", default: "clockwise" }),
  folding: property.flag({ text: "Do the blades fold back when the motor stops?", example: "yes", default: "no" }),
  spinner: property.quantity("length", { text: "Diameter of the spinner.", example: "40 mm", later: true, range: positive }),
  max_rpm: property.quantity("rotation", {
    text: "The greatest speed its maker allows.", example: "12000 rpm", default: "by blade type and diameter", range: positive,
  }),
  weight,
  measured: property.text({
    text: "A table of measured thrust and shaft power, by rpm and airspeed. It goes before the computed, which leads on beyond it.", example: '"prop-12x6.csv"',
  }),
});

const fanProperties = named({
  diameter: property.quantity("length", { text: "Inner diameter of its duct.", example: "70 mm", needed: true, range: positive }),
  measured: property.text({ text: "A table of measured thrust and power.", example: '"fan-70.csv"' }),
  weight,
});

export const escProperties = named({
  max_current: current("Current it stands for as long as the flight lasts.", "60 A"),
  burst_current: current("Current it stands for some seconds.", "80 A"),
  resistance: property.quantity("resistance", { text: "Resistance of the controller and its leads.", example: "3 mohm", range: notNegative }),
  bec: property.reference(["supply"], { text: "The `supply` for receiver and servos that it has built in.", example: "five_volts", later: true }),
  weight,
  at: property.point({ text: "Its middle, from the datum.", example: "(20 mm, 0 mm, -15 mm)", default: "as the motor" }),
});

const benchProperties = named({
  throttle: property.quantity("ratio", { text: "Throttle of the run.", example: "100 %", default: "100 %", range: share }),
  volts: property.quantity("voltage", { text: "Voltage at the controller.", example: "14.6 V", range: positive }),
  amps: property.quantity("current", { text: "Current drawn.", example: "38 A", range: notNegative }),
  rpm: property.quantity("rotation", { text: "Speed of the propeller.", example: "8900 rpm", range: positive }),
  thrust: property.quantity("force", { text: "Thrust on the stand.", example: "2.1 kgf", range: notNegative }),
  calibrate: property.flag({
    text: "Is the powerplant to be computed so that it does what this run shows? The one input that explains it best is moved: kv, resistance, no-load current or pitch.",
    example: "yes", default: "no",
  }),
});

export const power = [
  kind("battery", batteryProperties, {
    text: "A flight pack, whole, as on its label; or several wired together.", within: anywhere, massive: true,
    exclusive: ["cells", "capacity", "parallel", "resistance", "weight"].map((name) => [name, "packs"]),
    example: "battery pack { cells = 4 ; chemistry = lipo ; capacity = 4000 mAh ; c_rating = 30 ; weight = 418 g ; at = (95 mm, 0 mm, -20 mm) }",
  }),
  kind("powerplant", powerplantProperties, {
    text: "A motor with its propeller and controller, at one hub.", within: anywhere,
    example: `powerplant nose {
  at = (-50 mm, 0 mm, 5 mm)
  battery = pack
  motor { kv = 780 rpm/V ; resistance = 38 mohm ; no_load_current = 1.1 A ; weight = 152 g }
  propeller { diameter = 12 in ; pitch = 6 in ; weight = 27 g }
  esc { max_current = 60 A ; weight = 58 g ; at = (20 mm, 0 mm, -15 mm) }
}`,
  }),
  kind("motor", motorProperties, {
    text: "An electric motor, by its constants.", within: ["powerplant"], massive: true,
    example: "motor { kv = 780 rpm/V ; resistance = 38 mohm ; no_load_current = 1.1 A ; no_load_voltage = 10 V ; max_current = 45 A ; weight = 152 g }",
  }),
  kind("propeller", propellerProperties, {
    text: "A propeller, by diameter, pitch and blade type.", within: ["powerplant"], massive: true,
    example: "propeller { diameter = 12 in ; pitch = 6 in ; blade = thin ; rotation = clockwise ; weight = 27 g }",
  }),
  kind("fan", { ...allLater(fanProperties), weight: fanProperties.weight }, {
    text: "A ducted fan, in place of a propeller. Its weight counts; its thrust is not computed.", within: ["powerplant"], massive: true, later: true,
    example: "fan { diameter = 70 mm ; weight = 84 g }",
  }),
  kind("esc", escProperties, {
    text: "The motor's speed controller.", within: ["powerplant"], massive: true,
    example: "esc { max_current = 60 A ; weight = 58 g ; at = (20 mm, 0 mm, -15 mm) }",
  }),
  kind("bench", benchProperties, {
    text: "One measured run of this powerplant on the stand, in the air of the field.", within: ["powerplant"],
    example: "bench full { throttle = 100 % ; volts = 14.6 V ; amps = 38 A ; rpm = 8900 rpm ; thrust = 2.1 kgf }",
  }),
];
