import { nearest } from "../../../grammar/nearest";
import type { NamedNode, ValueNode } from "../../../grammar/tree";
import type { Value } from "../../../grammar/vocabulary/value";
import { functions } from "../../../grammar/vocabulary";
import { dimensions, sameDimension } from "../../../grammar/units/dimension";
import { rewrite } from "../problems";
import { withArticle } from "../words";
import { evaluate, numberOf, type Expression } from "./expression";
import { ArgumentError, numberFunctions } from "./functions";
import { isKnown, seekBlock } from "./seek";
import { bareNumber, likelyUnit, withoutUnit, wordsOf } from "./wording";

type Call = NamedNode & { readonly args: readonly ValueNode[] };

const surfaces = ["wing", "tailplane", "canard", "fin"];

/** Works a call out: `naca`, `flat`, `point`, or a function of numbers. */
export function call(node: Call, at: Expression): Value | undefined {
  const name = node.path.names.map((n) => n.text).join(".");
  if (name === "naca") return naca(node, at);
  if (name === "flat") return flat(node, at);
  if (name === "point") return pointOn(node, at);
  const entry = Object.hasOwn(numberFunctions, name) ? numberFunctions[name] : undefined;
  if (!entry) return noFunction(node, name, at);
  if (!counts(node, entry.least, entry.most, at)) return undefined;
  const args = node.args.map((arg) => numberOf(arg, at));
  if (!args.every((q) => q !== undefined)) return undefined;
  try {
    return { form: "quantity", quantity: entry.apply(args) };
  } catch (error) {
    if (!(error instanceof ArgumentError)) throw error;
    const arg = node.args[error.argument] ?? node;
    const bare = bareNumber(arg);
    const unit = bare && error.wanted && likelyUnit(error.wanted, node.args[0]);
    if (!bare || !unit) return at.complain(error.wanted ? "wrong_dimension" : "wrong_value", arg, `${name} ${error.message}`);
    const { message, fixes } = withoutUnit([bare], unit, at.site.home.file);
    return at.complain("missing_unit", arg, `${name} ${error.message}: ${message}`, fixes);
  }
}

function noFunction(node: Call, name: string, at: Expression): undefined {
  const near = nearest(name, Object.keys(functions));
  const known = `there are ${Object.keys(functions).join(", ")}`;
  return at.complain("unknown_name", node.path, `there is no function "${name}"; ${near ? `did you mean ${near}?` : known}`,
    near ? [rewrite(at.site.home.file, node.path, `Write ${near}`, near)] : undefined);
}

function counts(node: Call, least: number, most: number, at: Expression): boolean {
  const n = node.args.length;
  if (n >= least && n <= most) return true;
  const name = node.path.names[0].text;
  at.complain("wrong_value", node, `${name} is written ${functions[name].signature}, as in ${functions[name].example}; here ${n === 1 ? "is 1 value" : `are ${n} values`}`);
  return false;
}

/** The digits are judged where the section is used. */
function naca(node: Call, at: Expression): Value | undefined {
  if (!counts(node, 1, 1, at)) return undefined;
  const [arg] = node.args;
  const digits = bareNumber(arg)?.text;
  if (digits) {
    const mended = `naca("${digits}")`;
    return at.complain("wrong_value", arg, `naca takes its digits in quotes; did you mean ${mended}?`,
      [rewrite(at.site.home.file, arg, `Write ${mended}`, `"${digits}"`)]);
  }
  const value = evaluate(arg, { ...at, form: undefined });
  if (!value || value.form === "text") return value && { form: "naca", digits: value.text };
  return at.complain("wrong_value", arg, `naca takes its digits in quotes, as in naca("2412")`);
}

function flat(node: Call, at: Expression): Value | undefined {
  if (!counts(node, 1, 1, at)) return undefined;
  const thickness = numberOf(node.args[0], at);
  return thickness && { form: "flat", thickness };
}

function pointOn(node: Call, at: Expression): Value | undefined {
  if (!counts(node, 3, 3, at)) return undefined;
  const [first, ...shares] = node.args;
  if (first.type !== "named" || first.args) {
    return at.complain("wrong_value", first, "point takes the name of a surface first, as in point(main, 70 %, 35 %)");
  }
  const found = seekBlock(first, at, { kinds: surfaces });
  if (!found || !isKnown(found.block)) return undefined;
  if (!surfaces.includes(found.block.kind)) {
    return at.complain("wrong_value", first, `point takes a surface; ${found.path} is ${withArticle(found.block.kind)}`);
  }
  const [along, chord] = shares.map((share) => numberOf(share, at));
  if (!along || !chord) return undefined;
  for (const [i, q] of [along, chord].entries()) {
    if (sameDimension(q.dimension, dimensions.ratio)) continue;
    const wrong = wordsOf(shares[i], at.site.home.file);
    return at.complain("wrong_dimension", shares[i],
      `point takes a share of the ${i === 0 ? "half-span" : "chord"} here, in %${wrong ? `, not ${wrong}` : ""}`);
  }
  const point = at.world.pointOn(found, along, chord, at.site.holder);
  return point && { form: "point", point };
}
