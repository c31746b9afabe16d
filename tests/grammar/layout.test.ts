import { describe, expect, it } from "vitest";
import { format, formatEdits } from "../../grammar/printer/format";
import { example } from "./example";

/** Lines of a text written as a template, the first line end left out. */
const lines = (strings: TemplateStringsArray): string => String.raw(strings).replace(/^\n/, "").replace(/^ {4}/gm, "").replace(/ *$/, "");

function becomes(before: string, after: string): void {
  expect(format(before)).toBe(after);
  expect(format(after)).toBe(after);
}

describe("layout", () => {
  it("of a whole design is left as it is", () => expect(format(example)).toBe(example));

  it("spaces, signs of print and units", () => becomes(lines`
    let a=3mm*2 ; let b = -5°C
    let c = ( 1mm+ -2 mm )/3²
    let d=420g+-5g
    let e = 75 g / dm²+5 /deg − 38mΩ
    let s = 60 deg / 0.12 s ; let t = 100 mm/2
    let f = naca ( "2412" ) . x
    require a  within 5%..20%   for  b ,c because   "x  y"
  `.replace(" . x", ""), lines`
    let a = 3 mm * 2 ; let b = -5 degC
    let c = (1 mm + -2 mm) / 3^2
    let d = 420 g ± 5 g
    let e = 75 g/dm^2 + 5 /deg - 38 mohm
    let s = 60 deg/0.12 s ; let t = 100 mm / 2
    let f = naca("2412")
    require a within 5 % .. 20 % for b, c because "x  y"
  `));

  it("lines up the = of entries on lines of their own, a comment between them or not", () => becomes(lines`
    wing main {
    at = (1 mm, 2 mm, 3 mm)
      # by the spar
      incidence = 2 deg

      foil = x
      span = 3 mm ; chord = 2 mm
        weight = 3 g
    }
  `, lines`
    wing main {
      at        = (1 mm, 2 mm, 3 mm)
      # by the spar
      incidence = 2 deg

      foil = x
      span = 3 mm ; chord = 2 mm
      weight = 3 g
    }
  `));

  it("lines up one-line blocks of a kind", () => becomes(lines`
    material foamed_pla { density = 0.72 g/cm^3 }
    material carbon { density = 1.55 g/cm^3 }
    servo a from single.a
    servo rudder from single.rudder
    item x { }
    loading survey {
    }
    loading ferry { without = [camera] }
  `, lines`
    material foamed_pla { density = 0.72 g/cm^3 }
    material carbon     { density = 1.55 g/cm^3 }
    servo a      from single.a
    servo rudder from single.rudder
    item x { }
    loading survey { }
    loading ferry  { without = [camera] }
  `));

  it("keeps what is on one line there where it fits, and what is parted parted", () => becomes(lines`
    wing a { span = 3 mm;chord = 2 mm ; }
    wing b
    {
      span = 3 mm }
    wing c { panel x { span = 3 mm } ; panel y {
      span = 2 mm } }
  `, lines`
    wing a { span = 3 mm ; chord = 2 mm }
    wing b {
      span = 3 mm
    }
    wing c {
      panel x { span = 3 mm }
      panel y {
        span = 2 mm
      }
    }
  `));

  it("breaks what is too long: blocks, rows, lists", () => becomes(lines`
    battery pack { cells = 4 ; chemistry = lipo ; capacity = 4000 mAh ; c_rating = 30 ; usable = 75 % ; weight = 418 g ± 4 g ; at = (95 mm, 0 mm, -20 mm) } # main
    receiver rx {
      outputs = [aileron_left.servo, aileron_right.servo, elevator.servo, rudder.servo, throttle_of_the_left_motor.esc, [flap_left.servo, flap_right.servo]] # all
      weight = 14 g ± 1 g ; at = (230 mm + tail_arm, 0 mm, 10 mm) ; supply = regulator_of_the_left_receiver ; failsafe = "throttle closed, flaps out" # near
    }
  `, lines`
    battery pack {  # main
      cells     = 4
      chemistry = lipo
      capacity  = 4000 mAh
      c_rating  = 30
      usable    = 75 %
      weight    = 418 g ± 4 g
      at        = (95 mm, 0 mm, -20 mm)
    }
    receiver rx {
      outputs  = [
        aileron_left.servo,
        aileron_right.servo,
        elevator.servo,
        rudder.servo,
        throttle_of_the_left_motor.esc,
        [flap_left.servo, flap_right.servo]
      ]  # all
      # near
      weight   = 14 g ± 1 g
      at       = (230 mm + tail_arm, 0 mm, 10 mm)
      supply   = regulator_of_the_left_receiver
      failsafe = "throttle closed, flaps out"
    }
  `));

  it("joins values that fit, and leaves those with comments inside broken as they are", () => becomes(lines`
    wing main {
      at = (1 mm,
            2 mm, 3 mm)
      outputs = [
      ail.left,  # 1
           # free
        ele,
      ]
      list = [ a, ]
    }
  `, lines`
    wing main {
      at      = (1 mm, 2 mm, 3 mm)
      outputs = [
        ail.left,  # 1
        # free
        ele,
      ]
      list    = [a]
    }
  `));

  it("keeps comments beside what they speak of, one empty line, none at the ends", () => becomes(lines`


    # first
    #second
    let a = 3   # a


    let long_name = 4 # long
    wing main { # of the wing

      # of the span
      span = 3 mm

      # last

    } # after

  `, lines`
    # first
    #second
    let a = 3  # a

    let long_name = 4  # long
    wing main {  # of the wing
      # of the span
      span = 3 mm

      # last
    }  # after
  `));

  it("leaves lines with an issue as typed, and formats those around them", () => becomes(lines`
    wing main {
    span=3mm
         chord  =   12,5   mm   ;  foil=x   # odd
    weight=3g
    }
    wing open {
       span=3mm
    tailplane  stab { weight=3g }
  `, lines`
    wing main {
      span   = 3 mm
         chord  =   12,5   mm   ;  foil=x   # odd
      weight = 3 g
    }
    wing open {
       span=3mm
    tailplane stab { weight = 3 g }
  `));

  it("keeps the file's line ends and its byte order mark", () => {
    expect(format("let a=3\r\nlet b=4\r\n")).toBe("let a = 3\r\nlet b = 4\r\n");
    expect(format("\uFEFFlet a=3")).toBe("\uFEFFlet a = 3\n");
    expect(format("")).toBe("");
    expect(format("\n \n")).toBe("");
  });

  it("changes only the lines that differ", () => {
    const text = example.replace("  foil      = naca", "  foil = naca").replace("\nloading survey { }", "\n\nloading survey { }");
    const edits = formatEdits(text);
    expect(edits.map(({ start, end, text: put }) => [text.slice(start, end), put])).toEqual([
      ['  foil = naca("4412")\n', '  foil      = naca("4412")\n'], ["\n", ""],
    ]);
    expect(formatEdits(example)).toEqual([]);
  });
});
