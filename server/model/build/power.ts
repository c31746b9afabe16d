import { dimensions } from "../../../grammar/units/dimension";
import { metres, multiply, negate, plain, quantity, type Quantity } from "../../../grammar/units/quantity";
import type { Load, Vec3 } from "../design/geometry";
import type {
  Bench, BladeFamily, BladeStation, Chemistry, Controller, MeasuredLoad, Motor, Pack, Powerplant, Propeller, Source,
} from "../design/power";
import { readPropellerTable } from "../propeller-table/read";
import { cosine, sine } from "../evaluate/trigonometry";
import type { Instance } from "../resolve/instance";
import { textBeside } from "./beside";
import { movedBy, pathIn, placed, referencePath, turned, type Frame } from "./frame";
import type { Reader } from "./reader";

/** How far behind the hub a motor's middle lies where its place is not written: common practice, no source. */
const motorBehindHub = metres(0.025);

/** A powerplant of these parts and the weights they bring. Undefined when the place of its hub is broken. */
export function buildPowerplant(
  block: Instance, parts: readonly Instance[], reader: Reader, frame: Frame,
): { plant: Powerplant<Quantity>; loads: Load<Quantity>[]; benches: Bench<Quantity>[] } | undefined {
  const part = (kind: string) => parts.find((p) => p.kind === kind);
  const hub = reader.point(block, "at");
  if (!hub) return undefined;
  const axis = thrustAxis(block, reader);
  const pusher = reader.flag(block, "pusher") === true;
  const battery = reader.block(block, "battery");
  const propeller = part("propeller");
  const fan = part("fan");
  const fanDiameter = fan && reader.quantity(fan, "diameter");
  const esc = part("esc");
  const plant: Powerplant<Quantity> = {
    path: pathIn(frame, block),
    hub: placed(frame, hub),
    thrustAxis: turned(frame, axis),
    pusher,
    source: battery && referencePath(frame, battery.target, battery.path),
    motor: motorOf(part("motor"), reader),
    propeller: propeller && propellerOf(propeller, reader, frame.mirrored && reader.flag(block, "handed") !== false),
    controller: esc && controllerOf(esc, reader, frame),
    fan: fanDiameter && { diameter: fanDiameter },
  };
  const benches = parts.filter(({ kind }) => kind === "bench").map((bench) => benchOf(bench, plant.path, reader, frame));
  return { plant, loads: loadsOf(parts, reader, frame, hub, axis, pusher), benches };
}

const benchOf = (block: Instance, plant: string, reader: Reader, frame: Frame): Bench<Quantity> => ({
  path: pathIn(frame, block), plant,
  throttle: reader.quantity(block, "throttle") ?? plain(1),
  volts: reader.quantity(block, "volts"),
  amps: reader.quantity(block, "amps"),
  rotation: reader.quantity(block, "rpm"),
  thrust: reader.quantity(block, "thrust"),
  calibrate: reader.flag(block, "calibrate") === true,
});

/** Nose down and to the right from straight ahead, as the shaft angles say. */
function thrustAxis(block: Instance, reader: Reader): Vec3<Quantity> {
  const none = quantity(0, dimensions.angle);
  const down = reader.quantity(block, "down_thrust") ?? none;
  const right = reader.quantity(block, "right_thrust") ?? none;
  return [negate(multiply(cosine(down), cosine(right))), multiply(cosine(down), sine(right)), negate(sine(down))];
}

function loadsOf(
  parts: readonly Instance[], reader: Reader, frame: Frame, hub: Vec3<Quantity>, axis: Vec3<Quantity>, pusher: boolean,
): Load<Quantity>[] {
  const back = multiply(motorBehindHub, plain(pusher ? 1 : -1));
  const behind = movedBy(hub, [multiply(axis[0], back), multiply(axis[1], back), multiply(axis[2], back)]);
  const motor = parts.find((part) => part.kind === "motor");
  const atMotor = (motor && reader.point(motor, "at")) ?? behind;
  const places: Record<string, Vec3<Quantity>> = { motor: behind, propeller: hub, fan: hub, esc: atMotor };
  return parts.flatMap((part): Load<Quantity>[] => {
    const usual = places[part.kind];
    if (!usual) return [];
    const at = placed(frame, reader.point(part, "at") ?? usual);
    return [{ path: pathIn(frame, part), kind: part.kind, weight: reader.quantity(part, "weight"), at, size: reader.point(part, "size") }];
  });
}

function motorOf(block: Instance | undefined, reader: Reader): Motor<Quantity> | undefined {
  const kv = block && reader.quantity(block, "kv");
  const resistance = block && reader.quantity(block, "resistance");
  if (!kv || !resistance) return undefined;
  return {
    kv, resistance,
    noLoadCurrent: reader.quantity(block, "no_load_current") ?? quantity(0, dimensions.current),
    noLoadVoltage: reader.quantity(block, "no_load_voltage"),
    maxCurrent: reader.quantity(block, "max_current"),
    burstCurrent: reader.quantity(block, "burst_current"),
    maxPower: reader.quantity(block, "max_power"),
    gearRatio: reader.quantity(block, "gear_ratio") ?? plain(1),
  };
}

function propellerOf(block: Instance, reader: Reader, image: boolean): Propeller<Quantity> | undefined {
  const diameter = reader.quantity(block, "diameter");
  const pitch = reader.quantity(block, "pitch");
  if (!diameter || !pitch) return undefined;
  const family = reader.raw(block, "blade");
  const clockwise = reader.raw(block, "rotation") !== "anticlockwise";
  return {
    diameter, pitch,
    blades: reader.count(block, "blades") ?? 2,
    family: (typeof family === "string" ? family : "thin") as BladeFamily,
    folding: reader.flag(block, "folding") === true,
    stations: bladeStations(block, reader),
    clockwise: clockwise !== image,
    measured: measuredLoads(block, reader),
    maxRotation: reader.quantity(block, "max_rpm"),
  };
}

function measuredLoads(block: Instance, reader: Reader): readonly MeasuredLoad[] | undefined {
  const beside = textBeside(block, "measured", reader);
  const read = beside && readPropellerTable(beside.text);
  if (read && "points" in read) return read.points;
  if (read) beside.complain(read.fault);
  return undefined;
}

function bladeStations(block: Instance, reader: Reader): BladeStation<Quantity>[] | undefined {
  const stations = [...block.children.values()].filter((c) => c.kind === "station").map((s) => {
    const [radius, chord, angle] = ["radius", "chord", "angle"].map((name) => reader.quantity(s, name));
    return radius && chord && angle && { radius, chord, angle };
  });
  return stations.length >= 2 && stations.every((s) => s !== undefined) ? stations : undefined;
}

function controllerOf(block: Instance, reader: Reader, frame: Frame): Controller<Quantity> {
  return {
    path: pathIn(frame, block),
    maxCurrent: reader.quantity(block, "max_current"),
    burstCurrent: reader.quantity(block, "burst_current"),
    resistance: reader.quantity(block, "resistance"),
  };
}

function packOf(block: Instance, reader: Reader, frame: Frame): Pack<Quantity> | undefined {
  const cells = reader.count(block, "cells");
  const capacity = reader.quantity(block, "capacity");
  if (!cells || !capacity) return undefined;
  const chemistry = reader.raw(block, "chemistry");
  return {
    path: pathIn(frame, block),
    cells, capacity,
    parallel: reader.count(block, "parallel") ?? 1,
    chemistry: (typeof chemistry === "string" ? chemistry : "lipo") as Chemistry,
    cRating: reader.quantity(block, "c_rating"),
    resistance: reader.quantity(block, "resistance"),
    usable: reader.quantity(block, "usable") ?? plain(0.8),
  };
}

/** What a `battery` block feeds motors with: its own pack, or the packs it wires together. */
export function buildSource(block: Instance, reader: Reader, frame: Frame): Source<Quantity> | undefined {
  const path = pathIn(frame, block);
  const names = reader.blocks(block, "packs");
  if (names.length === 0) {
    const pack = packOf(block, reader, frame);
    return pack && { path, wired: "single", packs: [pack] };
  }
  const packs = names.map(({ target, path: named }) => {
    const pack = packOf(target, reader, frame);
    return pack && { ...pack, path: referencePath(frame, target, named) };
  });
  if (!packs.every((p) => p !== undefined)) return undefined;
  return { path, wired: reader.raw(block, "wired") === "parallel" ? "parallel" : "series", packs };
}
