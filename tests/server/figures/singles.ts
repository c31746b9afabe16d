export interface SingleForm {
  /** As written: `right_thrust = 2 deg ;`. */
  readonly head?: string;
  readonly rotation?: "clockwise" | "anticlockwise";
  /** Degrees each way; none for 0. */
  readonly rudder?: number;
  readonly ailerons?: boolean;
  readonly kv?: number;
  readonly more?: string;
}

/** A strong low-wing tractor of a bit over a kilogram whose wing stands clear of the slipstream's middle, invented. */
export function singleText({ head = "", rotation = "clockwise", rudder = 25, ailerons = true, kv = 1100, more = "" }: SingleForm = {}): string {
  return `airframe "Siskin" { class = sport }
wing main {
  at = (0 mm, 0 mm, -40 mm) ; foil = naca("2412") ; weight = 260 g
  panel half { span = 600 mm ; chord = 230 mm to 180 mm ; dihedral = 3 deg }
  ${ailerons ? "aileron tip { along = 45 % to 95 % ; chord = 25 % ; up = 20 deg ; down = 20 deg }" : ""}
}
tailplane stab {
  at = (620 mm, 0 mm, 0 mm) ; foil = flat(4 %) ; weight = 30 g
  panel half { span = 230 mm ; chord = 130 mm }
  elevator full { chord = 35 % ; up = 20 deg ; down = 20 deg }
}
fin upright {
  at = (620 mm, 0 mm, 0 mm) ; foil = flat(4 %) ; weight = 16 g
  panel only { span = 190 mm ; chord = 150 mm to 110 mm }
  ${rudder > 0 ? `rudder full { chord = 40 % ; left = ${rudder} deg ; right = ${rudder} deg }` : ""}
}
fuselage hull { at = (-240 mm, 0 mm, 0 mm) ; length = 1000 mm ; width = 70 mm ; height = 80 mm ; weight = 210 g }
battery pack { cells = 3 ; capacity = 2200 mAh ; c_rating = 40 ; weight = 190 g ; at = (-110 mm, 0 mm, 0 mm) }
powerplant nose {
  at = (-250 mm, 0 mm, 0 mm) ; battery = pack ; ${head}
  motor { kv = ${kv} rpm/V ; resistance = 50 mohm ; no_load_current = 1 A ; weight = 90 g }
  propeller { diameter = 10 in ; pitch = 5 in ; rotation = ${rotation} ; weight = 16 g }
}
${more}`;
}
