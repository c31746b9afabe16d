/** Layouts that a careless check would cry wolf at. All invented. */
export const sound: Readonly<Record<string, string>> = {
  "twin boom with a pusher between the booms": `
airframe "Dunlin" { class = camera }
wing main {
  at = (200 mm, 0 mm, 0 mm) ; foil = naca("2412") ; weight = 420 g
  panel inner { span = 250 mm ; chord = 230 mm }
  panel outer { span = 450 mm ; chord = 230 mm to 170 mm ; dihedral = 3 deg }
}
fuselage pod { at = (-120 mm, 0 mm, 0 mm) ; length = 520 mm ; width = 90 mm ; weight = 230 g }
boom tube { at = (300 mm, 200 mm, 0 mm) ; length = 640 mm ; width = 16 mm ; weight = 48 g ; mirror = yes }
tailplane bridge { at = (840 mm, 0 mm, 60 mm) ; foil = naca("0009") ; weight = 60 g ; panel half { span = 200 mm ; chord = 130 mm } }
fin tail { at = (820 mm, 200 mm, 0 mm) ; mirror = yes ; foil = naca("0009") ; weight = 22 g ; panel only { span = 130 mm ; chord = 140 mm to 110 mm } }
battery pack { cells = 4 ; capacity = 4000 mAh ; c_rating = 30 ; weight = 420 g ; at = (150 mm, 0 mm, 0 mm) }
powerplant tail_motor {
  at = (450 mm, 0 mm, 0 mm) ; battery = pack ; pusher = yes
  motor { kv = 850 rpm/V ; resistance = 40 mohm ; no_load_current = 1.1 A ; max_current = 50 A ; weight = 130 g ; at = (410 mm, 0 mm, 0 mm) }
  propeller { diameter = 11 in ; pitch = 5.5 in ; weight = 22 g }
  esc { max_current = 60 A ; weight = 48 g ; at = (300 mm, 0 mm, 0 mm) }
}
item camera { weight = 250 g ; at = (60 mm, 0 mm, 0 mm) }`,

  "two motors ahead of the wing, no nacelles, propellers turning the same way": `
airframe "Sanderling" { class = scale }
wing main { at = (180 mm, 0 mm, 0 mm) ; foil = naca("2412") ; weight = 300 g ; panel half { span = 600 mm ; chord = 220 mm to 160 mm ; dihedral = 4 deg } }
fuselage hull { at = (-60 mm, 0 mm, 0 mm) ; length = 960 mm ; width = 90 mm ; weight = 260 g }
tailplane stab { at = (760 mm, 0 mm, 0 mm) ; foil = naca("0009") ; weight = 40 g ; panel half { span = 220 mm ; chord = 140 mm } }
fin upright { at = (750 mm, 0 mm, 0 mm) ; foil = naca("0009") ; weight = 24 g ; panel only { span = 180 mm ; chord = 150 mm to 110 mm } }
battery pack { cells = 3 ; capacity = 3300 mAh ; c_rating = 30 ; weight = 250 g ; at = (40 mm, 0 mm, 0 mm) }
powerplant engine {
  at = (120 mm, 200 mm, 0 mm) ; battery = pack ; mirror = yes ; handed = no ; right_thrust = 2 deg
  motor { kv = 1100 rpm/V ; resistance = 70 mohm ; no_load_current = 0.8 A ; max_current = 30 A ; weight = 62 g }
  propeller { diameter = 9 in ; pitch = 5 in ; weight = 12 g }
  esc { max_current = 40 A ; weight = 34 g }
}`,

  "motor glider with a pylon motor over its hull": `
airframe "Swift" { class = motor_glider }
wing main { at = (300 mm, 0 mm, 20 mm) ; foil = naca("2410") ; weight = 480 g ; panel half { span = 1100 mm ; chord = 190 mm to 110 mm ; dihedral = 4 deg } }
fuselage hull { at = (0 mm, 0 mm, 0 mm) ; length = 1100 mm ; width = 60 mm ; weight = 240 g }
tailplane vee { at = (980 mm, 0 mm, 20 mm) ; foil = naca("0008") ; weight = 44 g ; panel half { span = 280 mm ; chord = 120 mm to 80 mm ; dihedral = 40 deg } }
strut pylon { start = (380 mm, 0 mm, 30 mm) ; end = (400 mm, 0 mm, 170 mm) ; chord = 30 mm ; weight = 22 g }
battery pack { cells = 3 ; capacity = 2200 mAh ; c_rating = 30 ; weight = 180 g ; at = (90 mm, 0 mm, 0 mm) }
powerplant top {
  at = (410 mm, 0 mm, 170 mm) ; battery = pack ; pusher = yes
  motor { kv = 1100 rpm/V ; resistance = 70 mohm ; no_load_current = 0.8 A ; max_current = 35 A ; weight = 62 g }
  propeller { diameter = 9 in ; pitch = 5 in ; folding = yes ; weight = 14 g }
}
item nose_weight { weight = 130 g ; at = (25 mm, 0 mm, 0 mm) }`,

  "indoor biplane of a few grams": `
airframe "Gnat" { class = indoor }
wing lower { at = (60 mm, 0 mm, -30 mm) ; foil = flat(2 %) ; weight = 5 g ; panel half { span = 300 mm ; chord = 120 mm } }
wing upper { at = (60 mm, 0 mm, 60 mm) ; foil = flat(2 %) ; weight = 5 g ; panel half { span = 300 mm ; chord = 120 mm } }
body stick { at = (-20 mm, 0 mm, 0 mm) ; length = 480 mm ; width = 8 mm ; weight = 6 g }
tailplane stab { at = (380 mm, 0 mm, 0 mm) ; foil = flat(2 %) ; weight = 2 g ; panel half { span = 130 mm ; chord = 90 mm } }
fin upright { at = (380 mm, 0 mm, 0 mm) ; foil = flat(2 %) ; weight = 1.5 g ; panel only { span = 120 mm ; chord = 90 mm } }
battery pack { cells = 1 ; capacity = 400 mAh ; c_rating = 35 ; weight = 14 g ; at = (0 mm, 0 mm, 0 mm) }
powerplant nose {
  at = (-30 mm, 0 mm, 0 mm) ; battery = pack
  motor { kv = 2000 rpm/V ; resistance = 400 mohm ; no_load_current = 0.3 A ; weight = 9 g }
  propeller { diameter = 7 in ; pitch = 3.5 in ; blade = wide ; max_rpm = 12000 rpm ; weight = 3 g }
}`,

  "full-size-like tricycle with the nose wheel lower than the main ones": `
airframe "Curlew" { class = trainer }
wing main { at = (260 mm, 0 mm, 80 mm) ; foil = naca("2412") ; weight = 700 g ; panel half { span = 1000 mm ; chord = 320 mm ; dihedral = 3 deg } }
fuselage hull { at = (0 mm, 0 mm, 0 mm) ; length = 1400 mm ; width = 140 mm ; weight = 800 g }
tailplane stab { at = (1150 mm, 0 mm, 20 mm) ; foil = naca("0009") ; weight = 140 g ; panel half { span = 380 mm ; chord = 220 mm } }
fin upright { at = (1150 mm, 0 mm, 30 mm) ; foil = naca("0009") ; weight = 70 g ; panel only { span = 280 mm ; chord = 230 mm to 160 mm } }
gear legs {
  wheel nose { at = (60 mm, 0 mm, -235 mm) ; diameter = 80 mm ; weight = 70 g }
  wheel main { at = (400 mm, 220 mm, -230 mm) ; diameter = 90 mm ; mirror = yes ; weight = 90 g }
}
battery pack { cells = 6 ; capacity = 5000 mAh ; c_rating = 30 ; weight = 760 g ; at = (100 mm, 0 mm, 0 mm) }
powerplant nose {
  at = (-30 mm, 0 mm, 0 mm) ; battery = pack ; right_thrust = 2 deg ; down_thrust = 2 deg
  motor { kv = 400 rpm/V ; resistance = 30 mohm ; no_load_current = 1.4 A ; max_current = 65 A ; weight = 330 g }
  propeller { diameter = 15 in ; pitch = 8 in ; weight = 60 g }
  esc { max_current = 80 A ; weight = 90 g ; at = (60 mm, 0 mm, 0 mm) }
}`,
};
