/** How parasite drag is found and what it leaves out, for the account a figure gives of itself. */
export const parasiteAccount =
  "Each part alone: friction of a body's wetted surface (Blasius; Prandtl and Schlichting) × form factor (S. F. Hoerner, " +
  "Fluid-Dynamic Drag), laminar to its largest section or the first surface that crosses it and turbulent from the nose behind a propeller, with its blunt front and " +
  "base; wires and legs as cylinders by Reynolds number; struts by friction and form, a quarter of their chord thick; wheels 0.58 on " +
  "their frontal area (Marks' Handbook); legs straight to the nearest body or surface, 1/40 of their length thick. Then 5 % for corners " +
  "between surfaces and bodies (common practice, no source) and 7.5 % for gaps, leaks, horns and links (D. P. Raymer, Aircraft Design: 5 to 10 %).";

export const parasiteNotModelled =
  "angle of attack and sideslip of bodies, struts and wheels; the slipstream of a running propeller; one part in the wake of another; " +
  "surface that is hidden where parts join; flow that leaves a tail that closes too fast; openings for cooling, antennas, motors " +
  "outside a body, wheels drawn in, fairings of wheels, spinners and propellers; compressibility.";

export const printedAccount =
  "A skin with a wall of a material by volume counts as printed: layer lines 0.2 mm high, across the flow, as rough as sand half as high " +
  "(common practice, no source): turbulent layers rub more (H. Schlichting), and at speed they begin nearer the front. This is the worst case, since how a piece stood on the bed is not " +
  "known: lines along the flow, as on a panel printed standing on its root, cost next to nothing; sanding and film help too. Lines that help a small wing by tripping a laminar bubble are not foreseen. " +
  "A surface without a skin counts as smooth.";

export const deadPropellerAccount =
  "A propeller without drive: blades that fold 0.1 on their area (D. P. Raymer, as feathered); others turned by the flight, by the " +
  "blade elements that give its thrust, against the torque of the motor's no-load current; standing still, where that does not turn it, " +
  "1.1 cos²β on their area (S. F. Hoerner). Within 40 % of tunnel tests of thin and thick blades led on to the point without torque, " +
  "slow-flight blades 34 to 53 % too low. A controller that brakes, and a spinner, are not in it.";
