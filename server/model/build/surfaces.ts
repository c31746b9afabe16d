import { dimensions } from "../../../grammar/units/dimension";
import { add, multiply, plain, quantity, subtract, type Quantity } from "../../../grammar/units/quantity";
import type { Control, Half, Panel, Spar, Station, Surface, SurfaceKind, Vec3 } from "../design/geometry";
import { pathOf, type Instance } from "../resolve/instance";
import { movedBy, pathIn, placed, referencePath, type Frame } from "./frame";
import { panelShares, panelsOf, pointOnHalf, writtenHalf, type WrittenHalf } from "./half";
import type { Reader } from "./reader";
import { skinOf } from "./skin";

export const surfaceKinds = new Set<string>(["wing", "tailplane", "canard", "fin"]);

export const controlKinds = new Set([
  "aileron", "elevator", "rudder", "flap", "elevon", "ruddervator", "flaperon", "airbrake", "spoiler",
]);

const throwNames = [
  "up", "down", "left", "right", "pitch_up", "pitch_down", "roll_up", "roll_down", "yaw_out", "yaw_in", "droop",
];

/** A surface with both its sides, as one copy of it stands in the design. */
export function buildSurface(block: Instance, reader: Reader, frame: Frame): Surface<Quantity> | undefined {
  const at = reader.point(block, "at");
  const half = at && writtenHalf(block, reader);
  if (!half) return undefined;
  const path = pathIn(frame, block);
  const mirror = reader.flag(block, "mirror") === true;
  const sides: readonly Frame[] = mirror ? [frame, { ...frame, mirrored: !frame.mirrored }] : [frame];
  return {
    path,
    kind: block.kind as SurfaceKind,
    halves: sides.map((side) => halfIn(half, at, side, mirror)),
    reference: reader.flag(block, "reference") ?? true,
    carryThrough: reader.flag(block, "carry_through") ?? "auto",
    ventral: reader.flag(block, "ventral") === true,
    weight: reader.quantity(block, "weight"),
    balance: reader.quantity(block, "balance"),
    skin: skinOf(block, reader),
    spars: sides.flatMap((side, i) => sparsIn(block, half, at, reader, side, mirror ? `.${i === 0 ? "right" : "left"}` : "")),
    controls: controlsOf(block, half, reader, frame),
  };
}

function halfIn(half: WrittenHalf, at: Vec3<Quantity>, frame: Frame, mirror: boolean): Half<Quantity> {
  const station = (s: Station<Quantity>): Station<Quantity> => ({ ...s, leadingEdge: placed(frame, movedBy(at, s.leadingEdge)) });
  const panels = half.panels.map(({ name, inner, outer, weight }): Panel<Quantity> =>
    ({ name, inner: station(inner), outer: station(outer), weight }));
  return { side: mirror ? (frame.mirrored ? "left" : "right") : "only", panels };
}

/** What a thing's `along` counts from: the panel it stands in or names, else the whole half. */
function stretchOf(block: Instance, half: WrittenHalf, reader: Reader): readonly [Quantity, Quantity] | undefined {
  const panel = block.parent?.kind === "panel" ? block.parent : reader.block(block, "panel")?.target;
  const base = panel && panelShares(half, panel);
  if (panel && !base) return notItsPanel(block, panel, reader);
  const own = reader.taper(block, "along") ?? [plain(0), plain(1)];
  if (!base) return own;
  const width = subtract(base[1], base[0]);
  return [add(base[0], multiply(own[0], width)), add(base[0], multiply(own[1], width))];
}

function notItsPanel(block: Instance, panel: Instance, reader: Reader): undefined {
  const slot = reader.world.slot(block, "panel");
  if (!slot?.entry.value) return undefined;
  reader.world.problems.addFor(block, "wrong_value", slot.home.file, slot.entry.value, `${pathOf(panel)} is a panel of another surface`);
}

function inside(surface: Instance, wanted: (kind: string) => boolean): Instance[] {
  return [surface, ...panelsOf(surface)].flatMap((block) => [...block.children.values()].filter((child) => wanted(child.kind)));
}

function controlsOf(surface: Instance, half: WrittenHalf, reader: Reader, frame: Frame): Control<Quantity>[] {
  return inside(surface, (kind) => controlKinds.has(kind)).flatMap((block) => {
    const along = stretchOf(block, half, reader);
    const allMoving = reader.flag(block, "all_moving") === true;
    const chord = reader.taper(block, "chord") ?? (allMoving ? ([plain(1), plain(1)] as const) : undefined);
    if (!along || !chord) return [];
    const throws = Object.fromEntries(throwNames.flatMap((name) => {
      const q = reader.own(block, name);
      return q ? [[name, q]] : [];
    }));
    const servos = reader.blocks(block, "servo").map((s) => referencePath(frame, s.target, s.path));
    return [{
      path: pathIn(frame, block), kind: block.kind, along, chord, throws, allMoving, servos,
      pivot: reader.quantity(block, "pivot"), reflex: reader.own(block, "reflex"), joined: reader.flag(block, "joined") === true,
    }];
  });
}

function sparsIn(surface: Instance, half: WrittenHalf, at: Vec3<Quantity>, reader: Reader, frame: Frame, side: string): Spar<Quantity>[] {
  return inside(surface, (kind) => kind === "spar").flatMap((block) => {
    const along = stretchOf(block, half, reader);
    const density = densityOf(block, reader);
    const section = sparSection(block, reader);
    if (!along || !density || !section) return [];
    const chord = reader.taper(block, "chord") ?? [plain(0.3), plain(0.3)];
    const end = (i: 0 | 1): Vec3<Quantity> => placed(frame, movedBy(at, pointOnHalf(half, along[i], chord[i])));
    return [{ path: pathIn(frame, block) + side, start: end(0), end: end(1), section, density }];
  });
}

function densityOf(block: Instance, reader: Reader): Quantity | undefined {
  const material = reader.block(block, "material")?.target;
  return material && reader.quantity(material, "density");
}

const none = quantity(0, dimensions.length);

function sparSection(block: Instance, reader: Reader): Spar<Quantity>["section"] | undefined {
  const outer = reader.taper(block, "outer");
  if (!outer) {
    const [width, height] = [reader.taper(block, "width"), reader.taper(block, "height")];
    return width && height && { type: "bar", width, height };
  }
  const inner = reader.taper(block, "inner");
  const wall = reader.taper(block, "wall");
  const bore = (i: 0 | 1) => (wall ? subtract(outer[i], multiply(plain(2), wall[i])) : none);
  return { type: "tube", outer, inner: inner ?? [bore(0), bore(1)] };
}
