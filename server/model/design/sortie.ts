/** Speeds that follow from the aircraft. */
export type LegSpeed = "cruise" | "best_range" | "best_endurance" | "best_climb" | "best_glide" | "least_sink";

/** A steady piece of a flight as the designer plans it. */
export interface PlannedLeg<N = number> {
  readonly name: string;
  /** m/s, or the name of one; where it isn't written, the one that suits what the leg does. */
  readonly speed: N | LegSpeed;
  /** Gained a second, m/s, or what full throttle gives, or motors off; 0 where nothing is written. */
  readonly climb: N | "full" | "glide";
  /** Of a turn, rad. */
  readonly bank?: N;
  readonly for: { readonly time: N } | { readonly distance: N } | { readonly height: N };
}

/** A flight planned leg by leg. */
export interface PlannedSortie<N = number> {
  readonly path: string;
  /** Taken from the packs besides, W. */
  readonly equipment?: N;
  readonly legs: readonly PlannedLeg<N>[];
}
