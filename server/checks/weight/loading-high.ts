import type { Place } from "../../../shared/finding";
import type { Check, Subject } from "../check";
import { asker, byClass } from "../class-words";
import { bandNote, past, where, type Judged } from "../judge";
import { nominal, whole } from "../readiness";

const cube = byClass({ trainer: 10, glider: 8, motor_glider: 8, tailless: 10, scale: 17, speed: 20, slow: 7, indoor: 3 }, 13);
const wing = byClass({ trainer: 100, glider: 90, motor_glider: 90, tailless: 90, scale: 150, speed: 150, slow: 40, indoor: 15 }, 120);

/** Too heavy for its wing. */
export const loadingHigh: Check = {
  code: "loading_high",
  wave: "quick",
  text: "Wing loading or cubic wing loading is over the usual range of the class.",
  thresholds: [
    {
      name: "cube", dimension: "density", text: "Greatest cubic wing loading: weight over wing area to the power 1.5, the same for all sizes.", usual: cube,
      source: "bands after F. Reynolds, Model Builder, September 1989, grouped by K. Myers (from memory); gliders and speed: common practice, no source",
    },
    {
      name: "wing", dimension: "areal_density", text: "Greatest wing loading. It rises with size, so the usual ones are those of large models.",
      usual: (airframe) => wing(airframe)! / 10, source: "common practice, no source",
    },
  ],
  run(subject) {
    const sets = subject.sets.filter(whole);
    const [worst, ...lesser] = (["cube", "wing"] as const).flatMap((name) => {
      const limit = subject.limit(loadingHigh, name);
      const found = limit ? past(sets, figures[name], limit, "most") : [];
      return limit && found.length > 0 ? [{ name, limit, found, fails: found[0].fails }] : [];
    }).sort((a, b) => Number(b.fails) - Number(a.fails));
    if (!worst) return [];
    const { name, limit, found, fails } = worst;
    const value = `${words[name]} ${subject.say(found[0].value)}${where(found, subject)}`;
    const also = lesser.filter((other) => other.fails).map((other) => ` (${words[other.name]} ${subject.say(other.found[0].value)})`).join("");
    const stays = `${asker(subject, loadingHigh, name, "stays under")} ${subject.say(limit)}`;
    return [{
      severity: fails ? "warning" : "hint", place: largestWing(subject, found[0]), figure: figures[name], loading: found[0].set.loading.name,
      message: fails
        ? `${value}${also}: ${stays}${bandNote(found[0])}; it will take off, stall and land fast: lighten it or give it more wing`
        : `${value}: ${stays}; it holds, but its band reaches past the limit`,
    }];
  },
};

const figures = { cube: "wing.cube_loading", wing: "wing.loading" } as const;
const words = { cube: "cubic wing loading", wing: "wing loading" } as const;

/** The wing is what can be changed; where there are several, the one with most of the area. */
function largestWing({ places }: Subject, { set }: Judged): Place {
  const wings = nominal(set).surfaces.filter(({ kind, reference }) => kind === "wing" && reference);
  const [first] = wings.sort((a, b) => areaOf(b) - areaOf(a));
  return first ? places.part(set, first.path) : places.whole();
}

type WingShape = ReturnType<typeof nominal>["surfaces"][number];

const areaOf = ({ halves }: WingShape): number => halves.flatMap(({ panels }) => panels).reduce((sum, { inner, outer }) =>
  sum + ((inner.chord + outer.chord) / 2) * Math.abs(outer.leadingEdge[1] - inner.leadingEdge[1]), 0);

