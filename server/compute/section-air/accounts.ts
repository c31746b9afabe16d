/** What flaps and controls on a section leave out, for the account a figure gives of itself. */
export const flapAccount =
  "A hinged part turns the flow by thin-section theory × 0.9 at small throws, 0.7 at 20° and towards 0.5 beyond (trend of handbooks, USAF DATCOM 6.1.1, from memory); gaps, horns and the flow inside the hinge are left out.";
