/** A whole design, with what a designer writes day to day in it, laid out as the formatter lays it out. */
export const example = `airframe "Plover" { purpose = "printed camera ship for bog surveys" ; datum = "firewall" ; class = camera }

let tail_arm = 610 mm

material foamed_pla { density = 0.72 g/cm^3 ± 8 % ; modulus = 1.1 GPa ; strength = 16 MPa ; softens_at = 55 degC }
material carbon     { density = 1.55 g/cm^3 ; modulus = 110 GPa ; strength = 900 MPa ; compression = 550 MPa }

wing main {
  at        = (165 mm, 0 mm, 58 mm)
  foil      = naca("4412")
  incidence = 2 deg
  panel inner { span = 420 mm ; chord = 245 mm }
  panel outer {
    span = 340 mm ; chord = 245 mm to 170 mm ; dihedral = 4 deg ; twist = 0 deg to -2 deg
    aileron tip { along = 8 % to 96 % ; chord = 24 % ; up = 20 deg ; down = 12 deg ; servo = ail }
  }
  skin { material = foamed_pla ; wall = 0.8 mm ; rib_spacing = 60 mm }
  spar tube { outer = 10 mm ; inner = 8 mm ; material = carbon ; chord = 30 % ; along = 0 % to 80 % }
}

tailplane stab {
  at = (165 mm + tail_arm, 0 mm, 40 mm) ; foil = naca("0009") ; incidence = -1 deg ; weight = 92 g
  panel half { span = 240 mm ; chord = 150 mm to 120 mm }
  elevator full { along = 0 % to 100 % ; chord = 35 % ; up = 15 deg ; down = 15 deg ; joined = yes ; servo = ele }
}

battery pack {
  cells     = 4
  chemistry = lipo
  capacity  = 4000 mAh
  c_rating  = 30
  weight    = 418 g ± 4 g
  at        = (95 mm, 0 mm, -20 mm)
}

servo ail { torque = 3.2 kgf*cm ; weight = 22 g ; at = point(main, 70 %, 35 %) ; mirror = yes }
servo ele { torque = 3.2 kgf*cm ; weight = 22 g ; at = (610 mm, 20 mm, 10 mm) }
receiver rx { outputs = [ail.left, ail.right, ele] ; weight = 14 g ; at = (230 mm, 0 mm, 10 mm) }

loading survey { }
loading ferry  { without = [camera] }

require stability.static_margin within 5 % .. 20 %
require power.thrust_to_weight >= 0.6 for survey because "hand launch"
`;
