import { dimensions } from "../../../grammar/units/dimension";
import { quantity } from "../../../grammar/units/quantity";
import type { Fix } from "../../../shared/finding";
import type { FigureSet } from "../../figures/figure-set";
import type { Check, Subject, Verdict } from "../check";
import { byClass, practice } from "../class-words";
import { nominal } from "../readiness";
import { setProperty } from "../solve/edit";
import { literalOf, literalText } from "../solve/literal";
import { sideAngle, downAngle, mirroredPairs, turnsAgainst, type Pair } from "./thrust-lines";
import type { Plant } from "./parts";

const degree = Math.PI / 180;

/** Angles that differ by less can't be set on a mount. */
const slack = 0.25 * degree;

/** What a strong single is given where nothing is known of it: common practice, no source. */
const usualSide = 2 * degree;

/** Shaft angles that don't suit the way the propellers turn. */
export const thrustLineUnbalanced: Check = {
  code: "thrust_line_unbalanced",
  wave: "slow",
  text: "A counter-rotating mirrored pair is not equal and opposite; a strong tractor single has no side thrust (hint).",
  thresholds: [{
    name: "strong", dimension: "ratio", text: "Thrust over weight from which a tractor single wants side thrust.",
    usual: byClass({ glider: undefined, indoor: undefined, slow: undefined, tailless: undefined }, 0.8), source: practice,
  }],
  run(subject) {
    for (const set of subject.sets) {
      const { powerplants } = nominal(set);
      const verdicts = [
        ...mirroredPairs(powerplants).filter(turnsAgainst).flatMap((pair) => judgePair(subject, set, pair)),
        ...judgeSingle(subject, set, powerplants),
      ];
      if (verdicts.length > 0) return verdicts;
    }
    return [];
  },
};

function judgePair(subject: Subject, set: FigureSet, [first, second]: Pair): Verdict[] {
  const say = (angle: number) => subject.say(quantity(angle, dimensions.angle));
  const side = [first, second].map(sideAngle);
  const down = [first, second].map(downAngle);
  const differs = [Math.abs(side[0] + side[1]) > slack && "sideways", Math.abs(down[0] - down[1]) > slack && "down"].filter((word) => word !== false);
  if (differs.length === 0) return [];
  const angles = [first, second].map((plant, i) => `${plant.path} points ${sideways(side[i], say)} and ${say(down[i])} down`);
  const fix = angleFix(subject, set, second, { right_thrust: -side[0], down_thrust: down[0] });
  return [{
    severity: "warning", loading: set.loading.name, place: subject.places.part(set, second.path, "right_thrust"),
    message: `${angles.join(", ")}: a pair that turns against each other must point equal and opposite, or it yaws and rolls with the throttle`,
    fixes: fix && [{ title: `Turn ${second.path} into the image of ${first.path}`, edits: fix.edits }],
    related: [{ message: `${first.path} stands here`, place: subject.places.part(set, first.path) }],
  }];
}

const sideways = (angle: number, say: (angle: number) => string): string =>
  Math.abs(angle) < 1e-6 ? "straight ahead" : `${say(Math.abs(angle))} ${angle > 0 ? "right" : "left"}`;

function judgeSingle(subject: Subject, set: FigureSet, plants: readonly Plant[]): Verdict[] {
  const [plant] = plants;
  const thrust = set.value("power.thrust_to_weight");
  const strong = subject.limit(thrustLineUnbalanced, "strong");
  if (plants.length !== 1 || !plant.propeller || plant.pusher || Math.abs(plant.hub[1]) > 0.005 || !thrust || !strong) return [];
  // A clockwise propeller pulls to the left, so its shaft points right; the other way round otherwise.
  const wanted = plant.propeller.clockwise ? 1 : -1;
  const angle = sideAngle(plant) * wanted;
  if (thrust.value < strong.value || angle > slack) return [];
  const name = subject.places.name(set, plant.path);
  const [turns, pulls, points] = wanted > 0 ? ["clockwise", "left", "right"] : ["anticlockwise", "right", "left"];
  const fix = angleFix(subject, set, plant, { right_thrust: wanted * usualSide });
  return [{
    severity: "hint", loading: set.loading.name, figure: "power.thrust_to_weight", place: subject.places.part(set, plant.path, "right_thrust"),
    message: `${name} pulls with ${subject.say(thrust)} of the weight and turns ${turns}, which yaws to the ${pulls} under power; ` +
      `${angle < -slack ? `its shaft points ${pulls} too` : "its shaft points straight ahead"}: 1 to 3 deg of ${points} thrust is usual`,
    fixes: fix && [fix],
  }];
}

/** Writes angles of a shaft, in the unit they are written in. Only at the top of the file, where no image turns them round. */
function angleFix(subject: Subject, set: FigureSet, plant: Plant, angles: Readonly<Record<string, number>>): Fix | undefined {
  const block = subject.places.blockOf(set, plant.path);
  if (!block || plant.path.includes(".")) return undefined;
  const now: Readonly<Record<string, number>> = { right_thrust: sideAngle(plant), down_thrust: downAngle(plant) };
  const wrong = Object.entries(angles).filter(([name, angle]) => Math.abs(angle - now[name]) > 1e-9);
  const texts = wrong.map(([name, angle]) => {
    const unit = literalOf(block.slots.get(name)?.entry.value)?.unit ?? "deg";
    return { name, text: literalText(angle, unit, 0.1 * degree) };
  });
  const edits = texts.map(({ name, text }) => setProperty(subject.file, block, name, text));
  if (!edits.every((edit) => edit !== undefined)) return undefined;
  return { title: `Write ${texts.map(({ name, text }) => `${name} = ${text}`).join(" and ")}`, edits };
}
