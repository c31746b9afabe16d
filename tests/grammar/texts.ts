import fc from "fast-check";

/** Pieces the language is made of, whole and broken, to be strung together at random. */
const fragments = [
  "use", "as", "let", "require", "waive", "because", "from", "to", "within", "for", "yes", "no",
  "wing", "panel", "tailplane", "servo", "assembly", "loading", "limits", "main", "inner", "span", "chord", "at", "foil", "x",
  "{", "}", "{ }", "(", ")", "[", "]", ";", ",", ".", "..", "=", "==", ":", "<", "<=", "=>", "≤", "+", "-", "−", "*", "/", "^", "²", "±",
  "+-", "+/-", "%", "°", "°C", "Ω", "mΩ", "mm", "g/dm^2", "/deg", "kgf*cm", "degC", "milimeter", "S", "3S2P", "12x6", "5'", '5"',
  "12", "0.75", "1.2e-3", "12,5", ".5", "5.", "1e999", "\"text\"", "\"", "'", "“x”", "\"a\\\"b\"", "\\", "//", "/*", "*/", "# note", "#",
  "\n", "\n", "\r\n", "\r", "  ", "\t", "\u00A0", "\uFEFF", "\u2028", "_", "_a", "@", "ü", "名", "😀", "\uD800", "naca(", "point(", "sqrt(9 dm^2)",
] as const;

/** Text that looks like the language, seldom well formed. */
export const likelyText = fc.array(fc.tuple(fc.constantFrom(...fragments), fc.constantFrom("", " ", " ", "\n", "\n  ")), { maxLength: 60 })
  .map((parts) => parts.flat().join(""));

/** Any string at all, lone surrogates and control characters too. */
export const anyText = fc.oneof(fc.string({ unit: "binary", maxLength: 200 }), fc.string({ unit: "grapheme", maxLength: 200 }),
  fc.array(fc.integer({ min: 0, max: 0xffff }), { maxLength: 100 }).map((codes) => String.fromCharCode(...codes)));

/** A well-formed text with a stretch taken out, doubled or replaced. */
export const damaged = (text: string) => fc.tuple(fc.nat(text.length), fc.nat(12), fc.oneof(fc.constant(""), fc.constantFrom(...fragments)))
  .map(([at, length, put]) => text.slice(0, at) + put + text.slice(at + length));
