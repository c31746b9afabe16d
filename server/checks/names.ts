/** A part's name without the sides of mirrored things: what its block is called in the text. */
export const withoutSides = (path: string): string => path.split(".").filter((name) => name !== "right" && name !== "left").join(".");

/** `a`, `a and b`, `a, b and c`. */
export const andList = (names: readonly string[]): string =>
  names.length < 2 ? names.join("") : `${names.slice(0, -1).join(", ")} and ${names.at(-1)}`;
