import type { ValueNode } from "../../grammar/tree";
import { dimensions } from "../../grammar/units/dimension";
import { divide, multiply, negate, quantity, type Quantity } from "../../grammar/units/quantity";
import { combineUnits } from "../../grammar/units/units";
import { wordsOfForm, type Form } from "../../grammar/vocabulary/schema";
import type { Value } from "../../grammar/vocabulary/value";

const known = (value: Value | undefined): Quantity | undefined => (value?.form === "quantity" ? value.quantity : undefined);

/** What a value works out to that leans on nothing else in the file; undefined if it leans on something. */
export function plainValue(node: ValueNode, form: Form): Value | undefined {
  switch (node.type) {
    case "quantity": {
      if (!node.unit) return { form: "quantity", quantity: quantity(node.number.value, dimensions.ratio) };
      const unit = combineUnits(node.unit.terms);
      return "unknown" in unit ? undefined : { form: "quantity", quantity: quantity(node.number.value * unit.scale + unit.offset, unit.dimension) };
    }
    case "flag": return { form: "flag", yes: node.yes };
    case "string": return { form: "text", text: node.text };
    case "negate": {
      const inner = known(plainValue(node.inner, form));
      return inner && { form: "quantity", quantity: negate(inner) };
    }
    case "binary": {
      const [left, right] = [known(plainValue(node.left, form)), known(plainValue(node.right, form))];
      if (node.operator === "±") return left && { form: "quantity", quantity: left };
      if (!left || !right || (node.operator !== "*" && node.operator !== "/")) return undefined;
      return { form: "quantity", quantity: node.operator === "*" ? multiply(left, right) : divide(left, right) };
    }
    case "pair": {
      const [left, right] = [plainValue(node.left, form), plainValue(node.right, form)];
      return left && right && { form: "pair", operator: node.operator, left, right };
    }
    case "point": {
      const [x, y, z] = node.items.map((item) => known(plainValue(item, form)));
      return x && y && z && { form: "point", point: [x, y, z] };
    }
    case "named": {
      if (form.form === "word" || wordsOfForm(form).includes(node.path.names[0].text)) return { form: "word", text: node.path.names[0].text };
      const argument = node.args?.[0];
      if (form.form !== "section" || !argument) return undefined;
      if (argument.type === "string") return { form: "naca", digits: argument.text };
      const thickness = known(plainValue(argument, form));
      return thickness && { form: "flat", thickness };
    }
    default: return undefined;
  }
}
