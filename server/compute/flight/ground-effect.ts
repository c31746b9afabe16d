/** Points of the rule below. The integrand is smooth and periodic: nine digits are right at a gap of 0.06 spans, five at 0.03. */
const points = 128;

/**
 * Drag that two elliptic loads of one span, `gap` spans apart, cause on each other, over what one causes on itself (L. Prandtl, NACA TN 182,
 * 1924). In waves along the span it is 2∫J₁(x)²e^(−2gx)/x dx; with Neumann's integral of J₁² that is −(2/π)∫cos 2θ ln(g + √(g² + sin²θ)) dθ
 * over half a turn.
 */
export function biplaneInterference(gap: number): number {
  const g = Math.max(0, gap);
  let sum = 0;
  for (let i = 0; i < points; i++) {
    const theta = (Math.PI * (i + 0.5)) / points;
    sum += Math.cos(2 * theta) * Math.log(g + Math.hypot(g, Math.sin(theta)));
  }
  return (-2 * sum) / points;
}

/**
 * Induced drag near the ground over that far from it, for a wing `height` spans above: its image is the other wing of a biplane with the
 * opposite load (C. Wieselsberger, NACA TM 77, 1922), with an elliptic load. This is the form used here.
 */
export const inducedNearGround = (height: number): number => 1 - biplaneInterference(2 * height);

/**
 * The same by a single pair of vortices, (16h/b)²/(1 + (16h/b)²), as in J. D. Anderson, Introduction to Flight, ch. 6: much weaker. For
 * comparison with handbook examples that use it.
 */
export const inducedNearGroundByPair = (height: number): number => (16 * height) ** 2 / (1 + (16 * height) ** 2);
