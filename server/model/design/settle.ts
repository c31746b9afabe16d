import { isQuantity, type VariableId } from "../../../grammar/units/quantity";
import type { Settled } from "./design";

/** A model ready to be settled for one variable after another. */
export interface Settler<T> {
  /** Every quantity at its value. Whatever holds no quantity is shared with the model. */
  readonly nominal: Settled<T>;
  /** The variables that anything in the model depends on. */
  readonly variables: ReadonlySet<VariableId>;
  /** The model with one variable moved by its half-width, up or down. What does not depend on it is shared with `nominal`. */
  at(variable: VariableId, sign: 1 | -1): Settled<T>;
}

/** A place in the model that depends on some variable. */
interface Branch {
  readonly nominal: unknown;
  readonly spread?: ReadonlyMap<VariableId, number>;
  readonly below: readonly (readonly [string, Branch])[];
  readonly variables: ReadonlySet<VariableId>;
}

const nothing: ReadonlySet<VariableId> = new Set();

/** Gives the nominal value of `x`; `take` gets the branch that leads to its variables, if it has any. */
function compile(x: unknown, take: (branch: Branch) => void): unknown {
  if (typeof x !== "object" || x === null) return x;
  if (isQuantity(x)) {
    if (x.spread && x.spread.size > 0) take({ nominal: x.value, spread: x.spread, below: [], variables: new Set(x.spread.keys()) });
    return x.value;
  }
  const from = x as Readonly<Record<string, unknown>>;
  const copy = (Array.isArray(x) ? [] : {}) as Record<string, unknown>;
  let key = "";
  let below: [string, Branch][] | undefined;
  let changed = false;
  const takeBelow = (branch: Branch) => void (below ??= []).push([key, branch]);
  for (key in from) {
    copy[key] = compile(from[key], takeBelow);
    if (copy[key] !== from[key]) changed = true;
  }
  const nominal = changed ? copy : x;
  if (below) take({ nominal, below, variables: variablesBelow(below) });
  return nominal;
}

const variablesBelow = (below: readonly (readonly [string, Branch])[]): ReadonlySet<VariableId> =>
  below.length === 1 ? below[0][1].variables : new Set(below.flatMap(([, branch]) => [...branch.variables]));

function moved(branch: Branch, variable: VariableId, sign: 1 | -1): unknown {
  if (branch.spread) return (branch.nominal as number) + sign * (branch.spread.get(variable) ?? 0);
  const nominal = branch.nominal as Record<string | number, unknown>;
  const copy = (Array.isArray(nominal) ? [...nominal] : { ...nominal }) as Record<string | number, unknown>;
  for (const [key, child] of branch.below) {
    if (child.variables.has(variable)) copy[key] = moved(child, variable, sign);
  }
  return copy;
}

/** Prepares a model (plain objects, arrays, quantities) for settling many times. */
export function settler<T>(x: T): Settler<T> {
  let branch: Branch | undefined;
  const nominal = compile(x, (found) => void (branch = found));
  return {
    nominal: nominal as Settled<T>,
    variables: branch?.variables ?? nothing,
    at: (variable, sign) => (branch?.variables.has(variable) ? moved(branch, variable, sign) : nominal) as Settled<T>,
  };
}

/** The model in plain SI numbers, moved by the half-width of one variable if one is named. */
export function settle<T>(x: T, variable?: VariableId, sign: 1 | -1 = 1): Settled<T> {
  const ready = settler(x);
  return variable === undefined ? ready.nominal : ready.at(variable, sign);
}

/** Every variable that anything in `x` depends on. */
export function variablesOf(x: unknown): ReadonlySet<VariableId> {
  return settler(x).variables;
}
