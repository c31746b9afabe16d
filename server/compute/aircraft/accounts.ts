/** What the figures of controls, trim and stall rest on and leave out, for the account each gives of itself. */
export const controlAccount =
  "A deflection turns the camber of the strips it covers as thin-section theory has it (Glauert, ARC R&M 1095), × 0.9 for small " +
  "angles down to 0.7 at 20° and 0.5 beyond, as real hinges do (USAF DATCOM 6.1.1); a surface that turns whole is turned by all " +
  "of its angle. The stick moves each pitch control by its own throws.";

export const trimAccount =
  "Angle and stick are solved for lift and zero moment about the balance point; the lift's lean and the induced drag count at " +
  "their height. Left out: the drag of bodies and sections at their heights, the slipstream, loss of speed in wakes, gaps.";

export const limitAccount =
  "The limit is where the first strip outside bodies, the last 2 % of area at the tip aside, reaches its section's highest lift at its " +
  "own Reynolds number; beside a flap's end the limit is the mean over half a chord to either side where that is more. Lift spreads as " +
  "in ideal flow up to there. Left out: what grows on after the first strip parts, flow across the span, the body's and the propeller's part.";

export const forwardAccount =
  "At full nose-up stick the moments of the air are worked out at the stall, or standing on the wheels at 1.1 × stall. Left out: ground " +
  "effect, which takes downwash and so some power from a tail; thrust and friction; whether the tail itself is past its limit.";
