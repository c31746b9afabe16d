import { isQuantity } from "../../../grammar/units/quantity";
import type { Style } from "../../../grammar/units/display";
import type { Form } from "../../../grammar/vocabulary/schema";
import type { Value } from "../../../grammar/vocabulary/value";
import type { Say } from "../../checks/say";

/** A value as the model reads it from a property, in words; undefined if there is nothing to say. */
export function readText(value: unknown, say: Say, form?: Form): string | undefined {
  if (value === undefined || value === null) return undefined;
  if (isQuantity(value)) return say(value, styleFor(form));
  if (typeof value === "number" || typeof value === "string") return String(value);
  if (typeof value === "boolean") return value ? "yes" : "no";
  if (Array.isArray(value)) return listText(value, say, form);
  if (typeof value !== "object") return undefined;
  if ("path" in value && typeof value.path === "string") return value.path;
  return "form" in value ? valueText(value as Value, say) : undefined;
}

/** Ratios are shares where they are a stretch of something. */
const styleFor = (form: Form | undefined): Style | undefined =>
  form?.form === "stretch" && form.dimension === "ratio" ? "share" : undefined;

function listText(list: readonly unknown[], say: Say, form?: Form): string | undefined {
  const texts = list.map((item) => readText(item, say, form) ?? "?");
  if (form?.form === "point") return `(${texts.join(", ")})`;
  const ends = form?.form === "stretch" || (form?.form === "quantity" && form.taper);
  if (!ends) return `[${texts.join(", ")}]`;
  return texts.every((text) => text === texts[0]) && form.form !== "stretch" ? texts[0] : texts.join(" to ");
}

/** A value of an expression, in words. */
export function valueText(value: Value, say: Say): string {
  switch (value.form) {
    case "quantity":
      return say(value.quantity);
    case "point":
      return `(${value.point.map((q) => say(q)).join(", ")})`;
    case "pair":
      return `${valueText(value.left, say)} ${value.operator} ${valueText(value.right, say)}`;
    case "text":
      return `"${value.text}"`;
    case "flag":
      return value.yes ? "yes" : "no";
    case "word":
      return value.text;
    case "block":
      return value.block.path;
    case "naca":
      return `naca("${value.digits}")`;
    case "flat":
      return `flat(${say(value.thickness, "share")})`;
    case "list":
      return `[${value.items.map((item) => valueText(item, say)).join(", ")}]`;
  }
}
