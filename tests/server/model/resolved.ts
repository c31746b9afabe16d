import { halfWidth, type Quantity } from "../../../grammar/units/quantity";
import type { Analysis } from "../../../server/analysis";
import type { Design, Settled } from "../../../server/model/design/design";
import { isTextCode } from "../../../server/model/problems";
import { settle } from "../../../server/model/design/settle";
import { testService } from "../../service";

/** A text worked out as far as is quick, with what tests ask of it. `files` are texts beside it, by name. */
export function resolved(text: string, files: Readonly<Record<string, string>> = {}) {
  const service = testService((uri) => (uri === "design.airframe" ? text : files[uri]));
  const analysis: Analysis = service.analysis("design.airframe")!;
  const built = (loading?: string) => analysis.set(loading ?? "").loading.design;
  const plain = (loading?: string): Settled<Design<Quantity>> => settle(built(loading));
  return {
    service, analysis, built, plain,
    /** What is wrong with the text itself, hints left out: `code at "what is marked"`. */
    mistakes: () => analysis.findings.filter((f) => isTextCode(f.code) && f.severity !== "hint")
      .map((f) => `${f.code} at "${text.slice(f.place.start, f.place.end)}"`),
    /** Weights at their places, in metres, by path. */
    at: (loading?: string) => Object.fromEntries(plain(loading).loads.map((load) => [load.path, load.at])),
    weights: (loading?: string) => Object.fromEntries(plain(loading).loads.map((load) => [load.path, load.weight])),
    load: (path: string, loading?: string) => found(built(loading).loads, path),
    surface: (path: string, loading?: string) => found(plain(loading).surfaces, path),
    figure: (name: string, loading?: string) => analysis.set(loading ?? "").value(name),
  };
}

export function found<T extends { readonly path: string }>(list: readonly T[], path: string): T {
  const one = list.find((each) => each.path === path);
  if (!one) throw new Error(`no ${path} among ${list.map((each) => each.path).join(", ")}`);
  return one;
}

/** The value of `item x { weight = … }` in SI, of whatever dimension the expression allows. */
export const weightOf = (expression: string, before = ""): Quantity =>
  resolved(`${before}\nitem x { weight = ${expression} ; at = (0 mm, 0 mm, 0 mm) }`).load("x").weight!;

export const lengthOf = (expression: string, before = ""): Quantity =>
  resolved(`${before}\nitem x { weight = 1 g ; at = (${expression}, 0 mm, 0 mm) }`).load("x").at[0];

/** Value and half-width in SI. */
export const banded = (q: Quantity): readonly [number, number] => [q.value, halfWidth(q)];

/** A point in mm, rounded to a nanometre: hand numbers are in mm. */
export const mm = (p: readonly number[]): number[] => p.map((x) => Math.round(x * 1e9) / 1e6 + 0);

/** Rounding of sums in double precision, relative. */
export const rounding = 1e-12;
