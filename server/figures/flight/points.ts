import { dimensions, type DimensionName } from "../../../grammar/units/dimension";
import { quantity, type Quantity } from "../../../grammar/units/quantity";
import type { FlightModel } from "../../compute/aircraft/flight-model";
import { overStall, sinkRate, type FlightPoints } from "../../compute/aircraft/flight-points";
import { parasiteAccount, parasiteNotModelled, printedAccount } from "../../compute/drag/accounts";
import { isPrinted } from "../../compute/drag/printed";
import { reynoldsOf } from "../../compute/drag/flow";
import { latticeAccount } from "../../compute/stability/accounts";
import type { Account, Input } from "../figure";
import type { FigureSet } from "../figure-set";
import { named } from "../wing";

const sections = "sections: measured table, else potential flow and boundary layers of the shape after M. Drela and M. B. Giles, AIAA Journal 25(10), 1987";
const first = "a wing is taken to stall where its first section does: R. F. Anderson, NACA Report 572";
export const sectionsAccount =
  "Sections are smooth, in a quiet stream; the highest lift of one is right to about 0.1, which is 4 % in stall speed. Below a Reynolds number of 100,000 take it for a rough guide.";

/** Numbers of the points of flight that have figures, by name. */
export function pointNumbers({ basis, air }: FlightModel, { stall, cruise, glide, sink, forward }: FlightPoints) {
  const { meanChord } = basis.reference;
  const reynolds = (speed: number) => reynoldsOf({ speed, air }, meanChord);
  return {
    stallSpeed: stall.speed, liftMax: stall.limit.liftCoefficient, station: wingLimit(stall)?.station,
    reynoldsStall: reynolds(stall.speed), reynoldsCruise: reynolds(cruise.speed), cruiseSpeed: cruise.speed, parasite: cruise.parasite,
    glide: glide.state.liftCoefficient / glide.drag, sink: sinkRate(sink), forward: forward?.x,
  };
}

/** Where the first wing reaches its limit, also where a canard ends the slowest flight before. */
export const wingLimit = (stall: FlightPoints["stall"]) =>
  (stall.limit.kind === "wing" ? stall.limit : stall.limits.find(({ kind, sense }) => kind === "wing" && sense === "up"));

type Of = (name: keyof ReturnType<typeof pointNumbers>, dimension: DimensionName) => Quantity | undefined;

export function putPoints(set: FigureSet, points: FlightPoints, model: FlightModel, of: Of): void {
  const { stall, cruise, glide, sink, forward } = points;
  const input = (name: string, value: number, dimension: DimensionName): Input => ({ name, value: quantity(value, dimensions[dimension]) });
  const density = input("air density", model.air.density, "density");
  const trimmed: Input = { name: "controls", value: model.basis.controls.length > 0 ? `${model.basis.controls.map(({ path }) => path).join(", ")} trimmed` : "none pitches: not trimmed" };
  const limit: readonly Input[] = [
    { name: "first limit", value: `${stall.limit.path}, at ${Math.round(100 * stall.limit.station)} % of its half-span` },
    input("angle of the x axis there", stall.limit.angle, "angle"), trimmed,
  ];
  const about = (formula: string, inputs: readonly Input[], source: string, notModelled: string): Account => ({ formula, inputs, source, notModelled });
  const stallLeaves = `flow past the first limit, lift of bodies, the propeller and its slipstream, ground effect, wind. ${sectionsAccount} ${latticeAccount}`;
  const stalling = (formula: string, more: readonly Input[] = []) => about(formula, [...limit, ...more], `${first}; ${sections}`, stallLeaves);
  set.put("aero.lift_max", of("liftMax", "ratio"), stalling("lift coefficient of the trimmed aircraft where the first strip of a wing or canard reaches its section's highest lift at its own Reynolds number"));
  const wing = wingLimit(stall);
  set.put("aero.stall_station", of("station", "ratio"), stalling("distance from the plane of symmetry of the wing's strip that first reaches its section's highest lift / half-span of that wing",
    wing ? [{ name: "wing", value: wing.path }] : []));
  set.put("flight.stall_speed", of("stallSpeed", "speed"), stalling("√(2 × weight / (air density × wing area × aero.lift_max))", [...named(set, "mass.total", "wing.area", "aero.lift_max"), density]));
  set.put("wing.reynolds_stall", of("reynoldsStall", "ratio"), about("air density × flight.stall_speed × wing.mean_chord / viscosity", named(set, "flight.stall_speed", "wing.mean_chord"), "definition", stallLeaves));
  putForward(set, forward, of);
  const given = set.loading.design.cruise !== undefined;
  const dragging: Input[] = [
    input("induced drag at cruise", cruise.induced, "ratio"), input("section drag at cruise", cruise.state.profile, "ratio"),
    ...cruise.parts.parts.filter(({ area }) => area > 0).map(({ path, area }) => input(`drag of ${path}`, area / model.basis.reference.area, "ratio")),
  ];
  const printed = set.loading.design.surfaces.some(({ skin }) => isPrinted(skin as never)) ? ` ${printedAccount}` : "";
  const drag = (formula: string, inputs: readonly Input[], extra = "") =>
    about(`${formula}. ${parasiteAccount}${printed}`, inputs, `${sections}; induced drag: L. Prandtl, NACA Technical Note 182`, `${extra}${parasiteNotModelled} ${sectionsAccount}`);
  set.put("flight.cruise_speed", of("cruiseSpeed", "speed"), given
    ? about("as the design gives it", [], "definition", "")
    : drag(`speed of least drag, at least ${overStall} × flight.stall_speed`, [...named(set, "flight.stall_speed"), input("speed of least drag", glide.speed, "speed")]));
  set.put("wing.reynolds_cruise", of("reynoldsCruise", "ratio"), about("air density × flight.cruise_speed × wing.mean_chord / viscosity", named(set, "flight.cruise_speed", "wing.mean_chord"), "definition", ""));
  set.put("aero.drag_parasite", of("parasite", "ratio"), drag("(drag of sections + bodies + members + gear + gaps) / (dynamic pressure × wing area), level at cruise", [...named(set, "flight.cruise_speed"), ...dragging]));
  const noPropeller = "a propeller, which unless it folds can cost a third of this: ";
  set.put("flight.glide_ratio", of("glide", "ratio"), drag("lift / drag, greatest over speed", [input("at", glide.speed, "speed"), trimmed], noPropeller));
  set.put("flight.sink_rate", of("sink", "speed"), drag("speed × drag / lift, least over speed", [input("at", sink.speed, "speed"), trimmed], noPropeller));
}

function putForward(set: FigureSet, forward: FlightPoints["forward"], of: Of): void {
  if (!forward) return;
  const { stall, rotation, rule } = forward;
  const place = (name: string, x: number): Input => ({ name, value: quantity(x, dimensions.length) });
  set.put("stability.cg_forward", of("forward", "length"), {
    formula: "balance point where full nose-up throw just trims at the stall" + (rotation ? ", or just lifts the nose wheel at 1.1 × stall speed; the one farther aft" : ""),
    inputs: [place("by the stall", stall.x), ...(rotation ? [place("by the nose wheel", rotation.x)] : []), { name: "what rules", value: rule === "stall" ? "the stall" : "the nose wheel" }],
    source: "R. C. Nelson, Flight Stability and Automatic Control, 1998, ch. 2; speed of lifting the nose common practice, no source",
    notModelled: `ground effect at the tail, thrust and friction on the ground, the loss of the wing's wake at the tail, gaps of the controls. ${sectionsAccount}`,
  });
}
