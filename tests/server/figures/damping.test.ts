import { expect, it } from "vitest";
import { halfWidth } from "../../../grammar/units/quantity";
import { analyseText, figureOf } from "../../service";

const text = (ballast: string, fin = true) => `airframe "Damping" { class = sport }
wing main { at = (0 mm, 0 mm, 0 mm) ; mirror = yes ; foil = naca("2412") ; weight = 100 g ; panel only { span = 500 mm ; chord = 150 mm } }
tailplane stab { at = (600 mm, 0 mm, 0 mm) ; mirror = yes ; foil = naca("0009") ; weight = 10 g ; panel only { span = 150 mm ; chord = 90 mm } }
${fin ? 'fin upright { at = (600 mm, 0 mm, 0 mm) ; foil = naca("0009") ; weight = 10 g ; panel only { span = 120 mm ; chord = 90 mm } }' : ""}
item lead { weight = 200 g ; at = (${ballast}, 0 mm, 0 mm) }
`;

it("a balance point farther aft has less yaw stiffness and damping, and its band goes into theirs", () => {
  const [ahead, behind, loose] = ["0 mm", "100 mm", "0 mm ± 20 mm"].map((at) => analyseText(text(at)));
  for (const name of ["stability.yaw_stiffness", "stability.pitch_damping", "stability.yaw_damping"]) {
    expect(Math.abs(figureOf(behind, name)!)).toBeLessThan(Math.abs(figureOf(ahead, name)!));
  }
  // Straight: a fifth of the move gives a fifth of the change.
  const change = figureOf(ahead, "stability.yaw_stiffness")! - figureOf(behind, "stability.yaw_stiffness")!;
  expect(halfWidth(loose.set("").value("stability.yaw_stiffness")!)).toBeCloseTo(change / 5, 6);
});

it("without a fin the nose is not held into the wind; without a weight there is no damping to give", () => {
  expect(figureOf(analyseText(text("0 mm", false)), "stability.yaw_stiffness")!).toBeLessThan(0.01);
  expect(figureOf(analyseText(text("0 mm")), "stability.yaw_stiffness")!).toBeGreaterThan(0.01);
  const bare = analyseText(text("0 mm").replace(/weight = \d+ g ;/g, ""));
  expect(figureOf(bare, "aero.span_efficiency")).toBeGreaterThan(0.8);
  expect(figureOf(bare, "aero.downwash_slope")).toBeGreaterThan(0.1);
  expect(figureOf(bare, "stability.pitch_damping")).toBeUndefined();
});
