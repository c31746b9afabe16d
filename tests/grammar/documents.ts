import fc from "fast-check";

/**
 * Well-formed documents, written as carelessly as the language lets one: any spaces, empty lines, `;`, line breaks
 * where a value may go on, comments at every line's end, signs of print.
 */
const names = ["main", "inner", "outer_tip", "a", "x1", "very_long_name_of_a_thing", "in"] as const;
const words = ["span", "chord", "at", "foil", "weight", "along", "dihedral", "outputs", "cg"] as const;
const blockKinds = ["wing", "panel", "aileron", "servo", "material", "assembly", "limits"] as const;

const name = fc.constantFrom(...names);
const path = fc.array(name, { minLength: 1, maxLength: 3 }).map((parts) => parts.join("."));
const space = fc.constantFrom("", " ", "  ", "\t", "\u00A0");
const gap = fc.constantFrom(" ", "  ", "\t");
const comment = fc.constantFrom("", "", "", "# note", "#odd  spacing", "# 12,5 { \" =");
const quantity = fc.tuple(fc.constantFrom("12", "0.75", "1.2e-3", "420"), space,
  fc.constantFrom("", "mm", "g", "deg", "°", "g/dm^2", "g / dm²", "kgf * cm", "/deg", "mΩ", "%", "degC")).map((parts) => parts.join(""));
const text = fc.constantFrom('"plain"', '"# no comment"', '"a \\"b\\" \\\\"', '""');

/** A break inside brackets: perhaps a line end, perhaps with a comment before it. */
const inner = fc.oneof({ weight: 6, arbitrary: space }, { weight: 1, arbitrary: fc.tuple(comment, fc.constantFrom("\n", "\n\n", "\n   ")).map((parts) => parts.join("")) });

const { value } = fc.letrec<{ value: string; primary: string }>((tie) => ({
  primary: fc.oneof({ maxDepth: 3, withCrossShrink: true },
    quantity, path, text, fc.constantFrom("yes", "no"),
    fc.tuple(tie("value"), inner, inner).map(([v, a, b]) => `(${a}${v}${b})`),
    fc.tuple(tie("value"), tie("value"), tie("value"), inner, inner).map(([x, y, z, a, b]) => `(${x},${a}${y}${b},${z}${a})`),
    fc.tuple(fc.array(tie("value"), { maxLength: 12 }), inner, fc.boolean()).map(([items, a, last]) => `[${a}${items.join(`,${a}`)}${items.length && last ? "," : ""}${a}]`),
    fc.tuple(fc.constantFrom("naca", "point", "min"), fc.array(tie("value"), { maxLength: 3 }), inner).map(([f, args, a]) => `${f}(${a}${args.join(`${a},`)}${a})`),
  ),
  value: fc.oneof({ maxDepth: 3 },
    tie("primary"), tie("primary").map((v) => `-${v}`), fc.tuple(tie("primary"), fc.constantFrom("^2", "²", " ^ -1")).map(([v, e]) => `(${v})${e}`),
    fc.tuple(tie("primary"), space, fc.constantFrom("+", "-", "−", "*"), fc.oneof({ weight: 5, arbitrary: gap }, { weight: 1, arbitrary: fc.constant("\n  ") }), tie("primary"))
      .map((parts) => parts.join("")),
  ),
}));

const whole = fc.oneof({ weight: 5, arbitrary: value },
  fc.tuple(value, fc.constantFrom(" to ", " .. ", " ± ", "+-", " to\n "), value).map((parts) => parts.join("")));

/** After an entry: a comment and a line end, or `;`. */
const end = fc.oneof(fc.tuple(space, comment, fc.constantFrom("\n", "\n", "\n\n\n", "\n  \n")).map((parts) => parts.join("")), fc.constantFrom(" ; ", ";", ";\n"));
const entry = fc.tuple(space, fc.constantFrom(...words), space, space, whole, end).map(([s, w, a, b, v, e]) => `${s}${w}${a}=${b}${v}${e}`);
const waive = fc.tuple(fc.constantFrom("waive tip_stall_first", 'waive  cg_moves because  "x"'), end).map((parts) => parts.join(""));

const head = fc.tuple(fc.constantFrom(...blockKinds), fc.option(name), fc.option(fc.constantFrom('"Title"')), gap)
  .map(([kind, own, title, s]) => [kind, own, title].filter((part) => part !== null).join(s));
const { block } = fc.letrec<{ block: string; item: string }>((tie) => ({
  item: fc.oneof({ maxDepth: 3 }, entry, entry, waive, tie("block")),
  block: fc.tuple(space, head, fc.constantFrom("", " from single.main", " from pod"), fc.constantFrom(" ", "", "\n", "  "), comment,
    fc.array(tie("item"), { maxLength: 5 }), end)
    .map(([s, h, from, gapBefore, note, items, e]) => `${s}${h}${from}${gapBefore}{${note === "" ? "" : ` ${note}\n`}${items.join("")}\n}${e}`),
}));

/** Blocks as people mostly write them: on one line. */
const oneLine = fc.tuple(head, fc.array(fc.tuple(fc.constantFrom(...words), quantity).map(([w, q]) => `${w} = ${q}`), { maxLength: 7 }), comment)
  .map(([h, entries, note]) => `${h} { ${entries.join(" ; ")} } ${note}\n`);

const statement = fc.oneof(block, oneLine, oneLine,
  fc.tuple(name, gap, whole, end).map(([n, s, v, e]) => `let${s}${n}${s}=${s}${v}${e}`),
  fc.tuple(path, fc.constantFrom("<", ">=", " within 1 % .. "), value, fc.constantFrom("", " for a,b", ' because "x"', '\n  because "y"'), end)
    .map(([p, op, v, rest, e]) => `require ${p} ${op} ${v}${rest}${e}`),
  fc.constant('use   "other.airframe"  as  other\n'), fc.tuple(comment, fc.constant("\n")).map((parts) => parts.join("")));

export const documents = fc.tuple(fc.array(statement, { maxLength: 8 }), fc.constantFrom("\n", "\r\n"))
  .map(([statements, lineEnd]) => statements.join("").replace(/\n/g, lineEnd));
