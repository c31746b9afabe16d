import { nearest } from "../../../grammar/nearest";
import type { NamedNode, ValueNode } from "../../../grammar/tree";
import type { Value } from "../../../grammar/vocabulary/value";
import { functions } from "../../../grammar/vocabulary";
import { dimensions, sameDimension } from "../../../grammar/units/dimension";
import { evaluate, numberOf, type Expression } from "./expression";
import { ArgumentError, numberFunctions } from "./functions";
import { seekBlock } from "./named";

type Call = NamedNode & { readonly args: readonly ValueNode[] };

const surfaces = new Set(["wing", "tailplane", "canard", "fin"]);

/** Works a call out: `naca`, `flat`, `point`, or a function of numbers. */
export function call(node: Call, at: Expression): Value | undefined {
  const name = node.path.names.map((n) => n.text).join(".");
  if (name === "naca") return naca(node, at);
  if (name === "flat") return flat(node, at);
  if (name === "point") return pointOn(node, at);
  const entry = Object.hasOwn(numberFunctions, name) ? numberFunctions[name] : undefined;
  if (!entry) {
    const near = nearest(name, Object.keys(functions));
    return at.complain("unknown_name", node.path, `there is no function "${name}"${near ? `; did you mean ${near}?` : ""}`);
  }
  if (!counts(node, entry.least, entry.most, at)) return undefined;
  const args = node.args.map((arg) => numberOf(arg, at));
  if (!args.every((q) => q !== undefined)) return undefined;
  try {
    return { form: "quantity", quantity: entry.apply(args) };
  } catch (error) {
    if (!(error instanceof ArgumentError)) throw error;
    return at.complain("wrong_dimension", node.args[error.argument] ?? node, `${name} ${error.message}`);
  }
}

function counts(node: Call, least: number, most: number, at: Expression): boolean {
  const n = node.args.length;
  if (n >= least && n <= most) return true;
  const name = node.path.names[0].text;
  const wanted = least === most ? `${least} value${least === 1 ? "" : "s"}` : `${least} values or more`;
  at.complain("wrong_value", node, `${name} takes ${wanted}, not ${n}`);
  return false;
}

/** The digits are judged where the section is used. */
function naca(node: Call, at: Expression): Value | undefined {
  if (!counts(node, 1, 1, at)) return undefined;
  const value = evaluate(node.args[0], { ...at, form: undefined });
  if (!value) return undefined;
  if (value.form === "text") return { form: "naca", digits: value.text };
  return at.complain("wrong_value", node.args[0], `naca takes its digits in quotes, naca("2412")`);
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
    return at.complain("wrong_value", first, "point takes the name of a surface first: point(main, 70 %, 35 %)");
  }
  const found = seekBlock(first, at);
  if (!found) return undefined;
  if (!surfaces.has(found.block.kind)) {
    return at.complain("wrong_value", first, `point takes a surface; ${found.path} is a ${found.block.kind}`);
  }
  const [along, chord] = shares.map((share) => numberOf(share, at));
  if (!along || !chord) return undefined;
  for (const [i, q] of [along, chord].entries()) {
    if (!sameDimension(q.dimension, dimensions.ratio)) {
      return at.complain("wrong_dimension", shares[i], "point takes shares: of the half-span, then of the chord, in %");
    }
  }
  const point = at.world.pointOn(found.block, along, chord, at.site.holder);
  return point && { form: "point", point };
}
