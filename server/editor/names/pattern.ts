import { Name } from "../../../grammar/tokens";

/** A whole name of the language. */
export const NamePattern = new RegExp(`^(?:${(Name.PATTERN as RegExp).source})$`);
