interface Word {
  readonly text: string;
  readonly example: string;
}

interface Callable extends Word {
  readonly signature: string;
}

/** Statements that are no blocks. */
export const statements: Readonly<Record<string, Word>> = {
  use: { text: "Makes the blocks of another file known under a name.", example: 'use "plover.airframe" as single' },
  let: { text: "Names a value.", example: "let tail_arm = 610 mm" },
  require: {
    text: "States what must hold; if it doesn't, that is an error here. `for` names loadings, `because` tells why.",
    example: 'require stability.static_margin within 8 % .. 15 % because "flown by beginners"',
  },
  waive: { text: "Silences a check, in the block it stands in or in the whole file. Say why.", example: 'waive tip_stall_first because "washout is set by the jig"' },
};

/** Functions that may stand in an expression. */
export const functions: Readonly<Record<string, Callable>> = {
  sqrt: { signature: "sqrt(value)", text: "Square root; that of an area is a length.", example: "sqrt(9 dm^2)" },
  sin: { signature: "sin(angle)", text: "Sine of an angle.", example: "sin(30 deg)" },
  cos: { signature: "cos(angle)", text: "Cosine of an angle.", example: "cos(4 deg)" },
  tan: { signature: "tan(angle)", text: "Tangent of an angle.", example: "tan(20 deg)" },
  atan2: { signature: "atan2(y, x)", text: "The angle whose tangent is y over x, in the right quadrant.", example: "atan2(35 mm, 420 mm)" },
  abs: { signature: "abs(value)", text: "The value without its sign.", example: "abs(-4 mm)" },
  min: { signature: "min(value, value, …)", text: "The least of some values.", example: "min(12 mm, 1 in)" },
  max: { signature: "max(value, value, …)", text: "The greatest of some values.", example: "max(12 mm, 1 in)" },
  round: {
    signature: "round(value, step)", text: "The value rounded to a whole number of steps; a plain number needs no step.",
    example: "round(312.4 mm, 5 mm)",
  },
  naca: { signature: 'naca("digits")', text: "A section by its four or five NACA digits.", example: 'naca("2412")' },
  flat: { signature: "flat(thickness)", text: "A flat plate, by its thickness over the chord.", example: "flat(3 %)" },
  point: {
    signature: "point(surface, along, chord)",
    text: "The point of a surface at a share of its half-span and a share of the chord there. It moves with the surface.",
    example: "point(main, 70 %, 35 %)",
  },
};

/** Words that can't be names. */
export const keywords = ["use", "as", "let", "require", "waive", "because", "from", "to", "within", "for", "yes", "no"] as const;

/** Kinds whose names are kept for later. */
export const reserved: ReadonlySet<string> = new Set(["float", "hook", "linkage"]);

/** What is said of one of them: "`float` is reserved for later". */
export const reservedText = "is reserved for later";
