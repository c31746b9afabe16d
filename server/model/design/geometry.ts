/**
 * The design as the computations see it. Every type is generic over its numbers: the resolver builds it with
 * `Quantity` (value, dimension, tolerance), the computations take it settled to plain SI numbers (m, kg, s, rad, V, A).
 * Axes: x aft, y to the right wing tip, z up. Mirrored and placed things are already written out, one by one.
 */
export type Vec3<N = number> = readonly [N, N, N];

/** The shape of a section. Ordinates of a coordinate file are x, y in chords, from the trailing edge over the upper side. */
export type SectionShape<N = number> =
  | { readonly type: "naca"; readonly digits: string }
  | { readonly type: "flat"; readonly thickness: N }
  | { readonly type: "coordinates"; readonly points: readonly (readonly [number, number])[] };

/** A point of a measured table: angle in rad, nose up; moment about the quarter chord, nose up. */
export interface MeasuredPoint {
  readonly angle: number;
  readonly lift: number;
  readonly drag: number;
  readonly moment?: number;
}

export interface MeasuredRun {
  readonly reynolds: number;
  /** By rising angle. */
  readonly points: readonly MeasuredPoint[];
}

/** A designer's measured table, by rising Reynolds number. */
export interface MeasuredPolar {
  readonly runs: readonly MeasuredRun[];
}

export interface Section<N = number> {
  /** A thin plate where only a measured table is there. */
  readonly shape: SectionShape<N>;
  readonly polar?: MeasuredPolar;
  /** Overrides written in the `foil` block. */
  readonly liftMax?: N;
  readonly zeroLiftAngle?: N;
  readonly moment?: N;
}

/** One end of a panel. `twist` is the chord's angle to the x axis, nose up, incidence included. */
export interface Station<N = number> {
  readonly leadingEdge: Vec3<N>;
  readonly chord: N;
  readonly twist: N;
  readonly section: Section<N>;
}

/** A straight-edged piece of one side of a surface, chords parallel to the x axis. */
export interface Panel<N = number> {
  readonly name: string;
  readonly inner: Station<N>;
  readonly outer: Station<N>;
  /** One side's weight, where the designer wrote it. */
  readonly weight?: N;
}

export interface Half<N = number> {
  readonly side: "right" | "left" | "only";
  readonly panels: readonly Panel<N>[];
}

export type SurfaceKind = "wing" | "tailplane" | "canard" | "fin";

export interface Skin<N = number> {
  /** kg/m³, or undefined when the material gives `areal_density` (kg/m²). */
  readonly density?: N;
  readonly arealDensity?: N;
  /** Thickness of the wall; needed with `density`. */
  readonly wall?: N;
  readonly ribSpacing?: N;
  /** Share of the enclosed volume that is filled, 0 to 1. */
  readonly infill?: N;
}

/** A tube or bar through one side, from `start` to `end`. */
export interface Spar<N = number> {
  readonly path: string;
  readonly start: Vec3<N>;
  readonly end: Vec3<N>;
  /** Outer and inner size at each end: diameters of a tube, or width × height of a bar (inner 0). */
  readonly section:
    | { readonly type: "tube"; readonly outer: readonly [N, N]; readonly inner: readonly [N, N] }
    | { readonly type: "bar"; readonly width: readonly [N, N]; readonly height: readonly [N, N] };
  readonly density: N;
}

export interface Control<N = number> {
  readonly path: string;
  readonly kind: string;
  /** Span shares of the half (0 root, 1 tip) and chord share (0.25: the last quarter) at each end. */
  readonly along: readonly [N, N];
  readonly chord: readonly [N, N];
  /** Throws in radians by name (`up`, `down`, `left`, …). */
  readonly throws: Readonly<Record<string, N>>;
  readonly allMoving: boolean;
  /** Share of the root chord about which an all-moving surface turns. */
  readonly pivot?: N;
  /** How far it stands up in neutral, rad, trailing edge up positive. */
  readonly reflex?: N;
  /** Are both halves one piece? It then reaches through the gap between the roots. */
  readonly joined?: boolean;
  /** Paths of the servos that drive it. */
  readonly servos: readonly string[];
}

export interface Surface<N = number> {
  /** `main`, or `pods.right.upright` inside a placed assembly. */
  readonly path: string;
  readonly kind: SurfaceKind;
  readonly halves: readonly Half<N>[];
  readonly reference: boolean;
  /** Does the gap between the two roots carry lift: decided by hand, or by the rule of the definitions. */
  readonly carryThrough: "auto" | boolean;
  readonly ventral: boolean;
  /** The whole as weighed, this copy with both its sides; replaces skin, spars and panels' weights. */
  readonly weight?: N;
  /** Where the part balances, aft of its root leading edge. */
  readonly balance?: N;
  readonly skin?: Skin<N>;
  readonly spars: readonly Spar<N>[];
  readonly controls: readonly Control<N>[];
}

/** A cross-section of a body: `x` aft of the nose, `z` of its middle above the nose. */
export interface BodyStation<N = number> {
  readonly x: N;
  readonly width: N;
  readonly height: N;
  readonly z: N;
}

export interface Body<N = number> {
  readonly path: string;
  readonly kind: "fuselage" | "body" | "boom";
  readonly nose: Vec3<N>;
  readonly shape: "round" | "oval" | "box";
  /** From the nose aft, at least two. A body with only length, width and height gets those of its default outline. */
  readonly stations: readonly BodyStation<N>[];
  readonly skin?: Skin<N>;
  readonly weight?: N;
  readonly balance?: N;
}

/** A strut or a wire between two points. A strut's chord lies streamwise. */
export interface Member<N = number> {
  readonly path: string;
  readonly kind: "strut" | "wire";
  readonly start: Vec3<N>;
  readonly end: Vec3<N>;
  readonly chord?: N;
  readonly diameter?: N;
  readonly weight?: N;
}

/** A receiver's outputs in order: the paths on each channel, several on a Y-lead, none where it is free. */
export interface Receiver {
  readonly path: string;
  readonly outputs: readonly (readonly string[])[];
}

/** Anything that is a weight at a place: item, servo, receiver, battery, motor, propeller, esc, fan, wheel, skid. */
export interface Load<N = number> {
  readonly path: string;
  readonly kind: string;
  /** Absent when the designer has not weighed it yet. */
  readonly weight?: N;
  readonly at: Vec3<N>;
  /** A box around the place, for its own inertia. */
  readonly size?: Vec3<N>;
}

export interface Wheel<N = number> {
  readonly path: string;
  readonly kind: "wheel" | "skid";
  readonly contact: Vec3<N>;
  readonly diameter?: N;
  readonly steer: boolean;
}
