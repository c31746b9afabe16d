/** Kinds and their properties, transcribed from the language's vocabulary. Control surfaces have the throws that are theirs. */
const words = (text: string) => text.trim().split(/\s+/);

const surface = "at mirror foil incidence weight balance carry_through reference";
const control = "panel along chord reflex joined all_moving pivot servo servo_arm horn";
const body = "at mirror length width height shape weight balance";

export const promised: Readonly<Record<string, readonly string[]>> = Object.fromEntries(Object.entries({
  wing: surface, tailplane: surface, canard: surface, fin: `${surface} cant ventral`,
  panel: "span chord sweep sweep_quarter offset dihedral twist washout foil weight",
  aileron: `${control} up down`, elevator: `${control} up down`, rudder: `${control} left right`, flap: `${control} up down`,
  elevon: `${control} pitch_up pitch_down roll_up roll_down`, ruddervator: `${control} pitch_up pitch_down yaw_out yaw_in`,
  flaperon: `${control} roll_up roll_down droop`, airbrake: `${control} up down`, spoiler: `${control} up down`,
  foil: "shape file polar lift_max zero_lift_angle moment",
  fuselage: body, body, boom: body,
  station: "x width height z radius chord angle",
  strut: "start end chord diameter weight mirror", wire: "start end chord diameter weight mirror",
  item: "weight at size mirror optional",
  material: "density areal_density modulus shear_modulus strength compression softens_at layer_factor",
  skin: "material wall rib_spacing infill",
  part: "file at material wall infill",
  battery: "cells parallel chemistry capacity c_rating resistance usable weight at size packs wired",
  powerplant: "at battery down_thrust right_thrust pusher mirror handed",
  motor: "kv resistance no_load_current no_load_voltage max_current burst_current max_power poles gear_ratio weight at",
  propeller: "diameter pitch blades blade rotation folding spinner max_rpm weight measured",
  fan: "diameter measured weight",
  esc: "max_current burst_current resistance bec weight at",
  bench: "throttle volts amps rpm thrust calibrate",
  spar: "outer inner wall width height material along chord",
  joint: "at overlap",
  gear: "travel retracts",
  wheel: "at diameter steer mirror weight", skid: "at diameter steer mirror weight",
  servo: "torque speed stall_current supply weight at mirror",
  receiver: "outputs supply weight at failsafe",
  supply: "volts amps source",
  printer: "bed nozzle margin",
  airframe: "purpose datum class cruise allowance",
  air: "altitude temperature pressure wind",
  loads: "positive_g negative_g gust safety_factor sink_rate never_exceed",
  loading: "without with flaps cruise",
  limits: "drop",
  weighed: "date loading",
  assembly: "drop",
  place: "at mirror flip",
  sortie: "loading equipment",
  leg: "time distance height speed climb glide bank",
}).map(([kind, text]) => [kind, words(text)]));

/** Kinds that are read and checked, but give no figure yet. */
export const laterKinds = words("part fan joint supply printer weighed");

/** Properties figures rest on. */
export const computed = words(`
  wing.at wing.mirror wing.foil wing.incidence wing.weight wing.balance wing.carry_through wing.reference fin.cant fin.ventral
  panel.span panel.chord panel.sweep panel.sweep_quarter panel.offset panel.dihedral panel.twist panel.washout panel.foil panel.weight foil.shape foil.file
  aileron.servo aileron.along aileron.chord aileron.up elevon.roll_up rudder.left ruddervator.yaw_out elevator.panel elevator.all_moving elevator.joined elevator.up elevon.pitch_up elevon.reflex
  ruddervator.pitch_down flap.down flaperon.droop loading.flaps spar.outer spar.inner spar.wall spar.width spar.height spar.material spar.along spar.chord
  skin.material skin.wall skin.rib_spacing skin.infill material.density material.areal_density
  fuselage.length fuselage.width fuselage.height fuselage.shape fuselage.weight fuselage.balance station.x strut.weight wire.diameter
  item.weight item.at item.size item.optional battery.cells battery.capacity battery.packs battery.wired
  powerplant.at powerplant.battery powerplant.down_thrust powerplant.pusher motor.kv motor.resistance motor.no_load_current motor.gear_ratio
  propeller.diameter propeller.pitch propeller.blades propeller.blade propeller.max_rpm propeller.measured bench.throttle bench.volts bench.amps bench.rpm bench.thrust bench.calibrate fan.weight esc.max_current esc.resistance
  servo.weight servo.at receiver.weight receiver.outputs wheel.weight wheel.at wheel.diameter skid.at
  loads.never_exceed airframe.class airframe.allowance airframe.cruise loading.cruise battery.usable wheel.steer air.altitude air.temperature air.pressure loading.without loading.with place.at
  sortie.loading sortie.equipment leg.time leg.distance leg.height leg.speed leg.climb leg.glide leg.bank`);

export const laterProperties = words(`
  elevator.pivot airbrake.up
  aileron.servo_arm aileron.horn material.modulus material.strength material.softens_at part.file
  motor.poles fan.diameter esc.bec joint.overlap gear.travel gear.retracts servo.torque servo.speed
  servo.stall_current servo.supply receiver.failsafe receiver.supply supply.volts printer.bed air.wind loads.positive_g weighed.date`);
