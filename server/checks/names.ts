const listed = (names: readonly string[], word: string): string =>
  names.length < 2 ? names.join("") : `${names.slice(0, -1).join(", ")} ${word} ${names.at(-1)}`;

/** `a`, `a and b`, `a, b and c`. */
export const andList = (names: readonly string[]): string => listed(names, "and");

export const orList = (names: readonly string[]): string => listed(names, "or");
