import type { Check } from "./check";

/** All checks, in the order people read them. Each stands in a file of its own beside its page. */
export const checks: readonly Check[] = [];
