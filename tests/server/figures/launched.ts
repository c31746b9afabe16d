export interface Change {
  readonly lead?: string;
  readonly weight?: string;
  readonly chord?: string;
  readonly propeller?: string | false;
  readonly motor?: boolean;
  readonly wheels?: boolean;
}

const legs = `gear legs { wheel main { at = (20 mm, 120 mm, -140 mm) ; diameter = 60 mm ; weight = 20 g ; mirror = yes }
  wheel tail { at = (640 mm, 0 mm, -30 mm) ; diameter = 20 mm ; weight = 5 g ; steer = yes } }`;

/** A single on plates, which wait for no polar; to be thrown unless it has wheels. */
export const single = ({ lead = "", weight = "300 g", chord = "180 mm", propeller = "", motor = true, wheels = false }: Change = {}) => `
airframe "Thrown" { class = sport }
wing main { at = (0 mm, 0 mm, 0 mm) ; foil = flat(3 %) ; weight = 120 g ; panel half { span = 500 mm ; chord = ${chord} } }
tailplane stab { at = (560 mm, 0 mm, 20 mm) ; foil = flat(3 %) ; weight = 20 g
  panel half { span = 180 mm ; chord = 100 mm ; elevator full { chord = 35 % ; up = 20 deg ; down = 20 deg } } }
fin upright { at = (560 mm, 0 mm, 20 mm) ; foil = flat(3 %) ; weight = 12 g ; panel only { span = 130 mm ; chord = 110 mm } }
fuselage hull { at = (-200 mm, 0 mm, 0 mm) ; length = 860 mm ; width = 60 mm ; height = 70 mm ; weight = 150 g }
item lead { weight = ${weight} ${lead} ; at = (0 mm, 0 mm, 0 mm) }
${wheels ? legs : ""}
${motor ? `battery pack { cells = 3 ; capacity = 2200 mAh ; weight = 180 g ; at = (-60 mm, 0 mm, 0 mm) }
powerplant nose { at = (-205 mm, 0 mm, 0 mm) ; battery = pack
  motor { kv = 1000 rpm/V ; resistance = 60 mohm ; no_load_current = 1 A ; weight = 70 g }
  ${propeller === false ? "" : `propeller { diameter = 10 in ; pitch = 5 in ; weight = 12 g ; ${propeller} }`}
  esc { weight = 25 g } }` : ""}
`;
