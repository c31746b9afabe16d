/** A small sound design that tests build on. */
export const glider = `airframe "Wheatear" { class = glider ; datum = "nose" }
let arm = 640 mm

wing main {
  at = (180 mm, 0 mm, 30 mm)
  foil = naca("2410")
  weight = 260 g ± 6 g
  panel inner { span = 500 mm ; chord = 180 mm }
  panel tip { span = 300 mm ; chord = 180 mm to 110 mm ; dihedral = 6 deg }
}

tailplane stab {
  at = (180 mm + arm, 0 mm, 20 mm)
  foil = naca("0009")
  weight = 40 g
  panel half { span = 200 mm ; chord = 110 mm to 90 mm }
}

fin upright {
  at = (180 mm + arm, 0 mm, 30 mm)
  foil = naca("0009")
  weight = 15 g
  panel only { span = 180 mm ; chord = 140 mm to 90 mm ; sweep = 15 deg }
}

servo ele { torque = 2 kgf*cm ; weight = 12 g ; at = (300 mm, 0 mm, 0 mm) }
battery pack { cells = 2 ; capacity = 800 mAh ; weight = 150 g ; at = (0 mm, 0 mm, 0 mm) }
item camera { weight = 90 g ; at = (240 mm, 0 mm, 0 mm) ; optional = yes }

loading bare { }
loading filming { with = [camera] }
`;
