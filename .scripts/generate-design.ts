import { pathToFileURL } from "node:url";

/**
 * A valid design of exactly `lines` lines (at least 112), for timing: one aircraft, then bay upon bay of labels, runs of
 * wire and the requirements on them, as a big file grows. The aircraft gains panels with size, up to eight a side.
 */
export function generateDesign(lines: number): string {
  const panels = Math.min(8, 2 + Math.floor(lines / 800));
  const out = core(panels);
  for (let bay = 1; out.length + bayOf(bay).length <= lines; bay++) out.push(...bayOf(bay));
  while (out.length < lines) out.push(`# line ${out.length + 1}`);
  if (out.length > lines) throw new Error(`a design has at least ${out.length} lines`);
  return `${out.join("\n")}\n`;
}

const shared = (total: number, parts: number): string => `${Math.round(total / parts)} mm`;

function panel(index: number, count: number): string[] {
  const chord = (end: number): number => 245 - Math.round((75 * end) / count);
  return [
    `  panel p${index + 1} {`,
    `    span = ${shared(760, count)}`,
    `    chord = ${chord(index)} mm to ${chord(index + 1)} mm`,
    ...(index > 0 ? ["    dihedral = 3 deg"] : []),
    ...(index === count - 1
      ? [
        "    twist = 0 deg to -2 deg",
        "    aileron tip {",
        "      along = 8 % to 96 %",
        "      chord = 24 %",
        "      up = 20 deg",
        "      down = 12 deg",
        "      servo = ail",
        "    }",
      ]
      : []),
    "  }",
  ];
}

const core = (panels: number): string[] => [
  'airframe "Heron" {',
  '  purpose = "a design for timing"',
  '  datum = "firewall"',
  "  class = camera",
  "}",
  "let tail_arm = 610 mm",
  "material foamed_pla { density = 0.72 g/cm^3 ± 8 % ; modulus = 1.1 GPa ; strength = 16 MPa ; softens_at = 55 degC }",
  "material carbon { density = 1.55 g/cm^3 ; modulus = 110 GPa ; strength = 900 MPa ; compression = 550 MPa }",
  "wing main {",
  "  at = (165 mm, 0 mm, 58 mm)",
  '  foil = naca("4412")',
  "  incidence = 2 deg",
  ...Array.from({ length: panels }, (_, i) => panel(i, panels)).flat(),
  "  skin { material = foamed_pla ; wall = 0.8 mm ; rib_spacing = 60 mm }",
  "  spar tube { outer = 10 mm ; inner = 8 mm ; material = carbon ; chord = 30 % ; along = 0 % to 80 % }",
  "}",
  "tailplane stab {",
  "  at = (165 mm + tail_arm, 0 mm, 40 mm)",
  '  foil = naca("0009")',
  "  incidence = -1 deg",
  "  weight = 92 g",
  "  panel half { span = 240 mm ; chord = 150 mm to 120 mm }",
  "  elevator full { along = 0 % to 100 % ; chord = 35 % ; up = 15 deg ; down = 15 deg ; joined = yes ; servo = ele }",
  "}",
  "fin upright {",
  "  at = (165 mm + tail_arm, 0 mm, 45 mm)",
  '  foil = naca("0009")',
  "  weight = 48 g",
  "  panel only { span = 190 mm ; chord = 170 mm to 110 mm ; sweep = 20 deg }",
  "  rudder full { along = 0 % to 100 % ; chord = 40 % ; left = 25 deg ; right = 25 deg ; servo = rud }",
  "}",
  "fuselage hull {",
  "  at = (-40 mm, 0 mm, 0 mm)",
  "  length = 960 mm",
  "  width = 96 mm",
  "  height = 118 mm",
  "  weight = 310 g ± 15 g",
  "}",
  "battery pack {",
  "  cells = 4",
  "  chemistry = lipo",
  "  capacity = 4000 mAh",
  "  c_rating = 30",
  "  weight = 418 g ± 4 g",
  "  at = (95 mm, 0 mm, -20 mm)",
  "}",
  "powerplant nose {",
  "  at = (-50 mm, 0 mm, 5 mm)",
  "  battery = pack",
  "  motor { kv = 780 rpm/V ; resistance = 38 mohm ; no_load_current = 1.1 A ; no_load_voltage = 10 V ; max_current = 45 A ; weight = 152 g }",
  "  propeller { diameter = 12 in ; pitch = 6 in ; blade = thin ; rotation = clockwise ; weight = 27 g }",
  "  esc { max_current = 60 A ; weight = 58 g ; at = (20 mm, 0 mm, -15 mm) }",
  "}",
  "servo ail { torque = 3.2 kgf*cm ; weight = 22 g ; at = point(main, 70 %, 35 %) ; mirror = yes }",
  "servo ele { torque = 3.2 kgf*cm ; weight = 22 g ; at = (610 mm, 20 mm, 10 mm) }",
  "servo rud { torque = 3.2 kgf*cm ; weight = 22 g ; at = (610 mm, -20 mm, 10 mm) }",
  "receiver rx { outputs = [ail.left, ail.right, ele, rud, nose.esc] ; weight = 14 g ; at = (230 mm, 0 mm, 10 mm) }",
  "item camera {",
  "  weight = 240 g ± 3 g",
  "  at = (60 mm, 0 mm, -45 mm)",
  "}",
  "loading survey { }",
  "loading ferry {",
  "  without = [camera]",
  "  battery pack { at = (20 mm, 0 mm, -20 mm) }",
  "}",
  "require stability.static_margin within 2 % .. 40 %",
  "require power.thrust_to_weight >= 0.3",
];

/** Eighteen lines; the little weights stand evenly around the centre of gravity, so that no size changes the balance. */
function bayOf(n: number): string[] {
  const x = 235 + (n % 2 === 0 ? 1 : -1) * (5 + ((n * 7) % 60));
  return [
    `# bay ${n}`,
    `let station_${n} = ${x} mm`,
    `item label_${n} {`,
    "  weight = 0.3 g ± 0.1 g",
    `  at = (station_${n}, ${(n % 5) * 3} mm, -8 mm)`,
    "  size = (12 mm, 8 mm, 2 mm)",
    "}",
    `item tie_${n} {`,
    `  weight = ${(2 + (n % 4)) / 10} g`,
    `  at = (station_${n} + 4 mm, ${-(n % 5) * 3} mm, -8 mm)`,
    "}",
    `wire run_${n} {`,
    `  start = (station_${n}, 10 mm, 4 mm)`,
    `  end = (station_${n} + 30 mm, 10 mm, 4 mm)`,
    "  diameter = 1.2 mm",
    "  weight = 0.2 g",
    "}",
    `require mass.label_${n} < 1 g because "stickers, not plates"`,
  ];
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? "").href) process.stdout.write(generateDesign(Number(process.argv[2] ?? 500)));
