/** Of both propellers, seen from behind. */
export type Turning = "inboard" | "outboard" | "clockwise" | "anticlockwise";

export interface TwinForm {
  /** Where blades go down, or how both turn. */
  readonly turning?: Turning;
  /** Of the motors from the plane of symmetry, mm. */
  readonly spread?: number;
  /** Degrees each way. */
  readonly rudder?: number;
  /** Of the propellers, in. */
  readonly diameter?: number;
  readonly more?: string;
}

/** A twin of half a kilogram and a bit, invented. */
export function twinText({ turning = "inboard", spread = 180, rudder = 30, diameter = 7, more = "" }: TwinForm = {}): string {
  const right = turning === "clockwise" || turning === "outboard" ? "clockwise" : "anticlockwise";
  const left = turning === "clockwise" || turning === "inboard" ? "clockwise" : "anticlockwise";
  const plant = (name: string, y: number, rotation: string) => `powerplant ${name} {
  at = (-60 mm, ${y} mm, 0 mm) ; battery = pack
  motor { kv = 1200 rpm/V ; resistance = 80 mohm ; no_load_current = 0.9 A ; weight = 40 g }
  propeller { diameter = ${diameter} in ; pitch = 5 in ; rotation = ${rotation} ; weight = 10 g }
}`;
  return `airframe "Sparrow" { class = sport }
wing main {
  at = (0 mm, 0 mm, 0 mm) ; foil = naca("2412") ; weight = 220 g
  panel half { span = 650 mm ; chord = 200 mm ; dihedral = 3 deg }
  aileron tip { along = 50 % to 95 % ; chord = 25 % ; up = 20 deg ; down = 20 deg }
}
tailplane stab {
  at = (600 mm, 0 mm, 0 mm) ; foil = flat(4 %) ; weight = 25 g
  panel half { span = 220 mm ; chord = 120 mm }
  elevator full { chord = 35 % ; up = 20 deg ; down = 20 deg }
}
fin upright {
  at = (600 mm, 0 mm, 0 mm) ; foil = flat(4 %) ; weight = 12 g
  panel only { span = 180 mm ; chord = 140 mm }
  ${rudder > 0 ? `rudder full { chord = 45 % ; left = ${rudder} deg ; right = ${rudder} deg }` : ""}
}
fuselage hull { at = (-200 mm, 0 mm, 0 mm) ; length = 940 mm ; width = 60 mm ; height = 70 mm ; weight = 150 g }
battery pack { cells = 2 ; capacity = 2200 mAh ; c_rating = 30 ; weight = 350 g ; at = (-70 mm, 0 mm, 0 mm) }
${plant("right", spread, right)}
${plant("left", -spread, left)}
${more}`;
}
