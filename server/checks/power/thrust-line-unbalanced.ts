import { dimensions } from "../../../grammar/units/dimension";
import { plain, quantity } from "../../../grammar/units/quantity";
import type { FigureSet } from "../../figures/figure-set";
import type { Check, Subject, Verdict } from "../check";
import { always, asker, byClass, practice } from "../class-words";
import { flies, nominal } from "../readiness";
import type { Plant } from "./parts";
import { angleFix, downAngle, leftOver, mirroredPairs, sideAngle, slack, turnsAgainst, type Pair } from "./thrust-lines";

const degree = Math.PI / 180;

/** What a strong single is given where nothing is known of it, and the most: common practice, no source. */
const [usualSide, mostSide] = [2 * degree, 4 * degree];

/** A share of the rudder's throw that nobody notices: common practice, no source. */
const little = 0.05;

/** Shaft angles that don't suit the way the propellers turn, and what all of them do to yaw and roll at full throttle. */
export const thrustLineUnbalanced: Check = {
  code: "thrust_line_unbalanced",
  wave: "slow",
  text: "A counter-rotating mirrored pair is not equal and opposite; full throttle takes much rudder, or a strong tractor single has no side thrust (hint).",
  thresholds: [
    { name: "pair", dimension: "ratio", text: "Yaw and roll that a counter-rotating pair leaves, over what one of them gives.", usual: always(0.05), source: practice },
    { name: "rudder", dimension: "ratio", text: "Rudder needed at full throttle in the climb, over its throw.", usual: always(0.3), source: practice },
    {
      name: "strong", dimension: "ratio", text: "Thrust over weight from which a tractor single wants side thrust.",
      usual: byClass({ glider: undefined, indoor: undefined, slow: undefined, tailless: undefined }, 0.8), source: practice,
    },
  ],
  run(subject) {
    for (const set of subject.sets) {
      const { powerplants } = nominal(set);
      const pairs = mirroredPairs(powerplants).filter(turnsAgainst).flatMap((pair) => {
        const angles = judgeAngles(subject, set, pair);
        return angles.length > 0 ? angles : judgeMoments(subject, set, pair);
      });
      if (pairs.length > 0) return pairs;
      if (!set.complete && !set.stopped) continue;
      const found = judgeRudder(subject, set, powerplants) ?? judgeSingle(subject, set, powerplants);
      if (found) return [found];
    }
    return [];
  },
};

function judgeAngles(subject: Subject, set: FigureSet, [first, second]: Pair): Verdict[] {
  const say = (angle: number) => subject.say(quantity(angle, dimensions.angle));
  const side = [first, second].map(sideAngle);
  const down = [first, second].map(downAngle);
  if (Math.abs(side[0] + side[1]) <= slack && Math.abs(down[0] - down[1]) <= slack) return [];
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

/** Shafts that stand well, with propellers, motors or packs that don't match. */
function judgeMoments(subject: Subject, set: FigureSet, [first, second]: Pair): Verdict[] {
  const most = subject.limit(thrustLineUnbalanced, "pair");
  const left = set.facts.climbTrim && leftOver(set.facts.climbTrim.held.contributions, first.path, second.path);
  if (!most || !left || !flies(set, subject) || left.share <= most.value) return [];
  const moment = (value: number, [positive, negative]: readonly [string, string]) =>
    `${subject.say(quantity(Math.abs(value), dimensions.torque))} to the ${value > 0 ? positive : negative}`;
  const rudder = set.value("trim.climb.rudder");
  const takes = rudder ? ` and take ${rudderText(subject, rudder.value)}` : "";
  return [{
    severity: "warning", figure: "trim.climb.rudder", loading: set.loading.name, place: subject.places.part(set, second.path),
    message: `${first.path} and ${second.path} turn against each other but don't match: at full throttle in the climb they leave ` +
      `${moment(left.yaw, ["right", "left"])} in yaw and ${moment(left.roll, ["right", "left"])} in roll, ${subject.say(plain(left.share), "share")} of what one gives,` +
      `${takes}; give both the same propeller, motor and pack`,
    related: [{ message: `${first.path} stands here`, place: subject.places.part(set, first.path) }],
  }];
}

const rudderText = (subject: Subject, angle: number): string =>
  `${subject.say(quantity(Math.abs(angle), dimensions.angle))} of ${angle > 0 ? "left" : "right"} rudder`;

/** The rudder that all propellers together ask for. */
function judgeRudder(subject: Subject, set: FigureSet, plants: readonly Plant[]): Verdict | undefined {
  const most = subject.limit(thrustLineUnbalanced, "rudder");
  const [rudder, share] = [set.value("trim.climb.rudder"), set.facts.climbTrim?.share];
  if (!most || !rudder || share === undefined || share <= most.value || !flies(set, subject)) return undefined;
  const [plant] = plants;
  const single = plants.length === 1;
  const who = single ? subject.places.name(set, plant.path) : "all motors together";
  const holds = (right: number) => subject.sets.filter((one) => flies(one, subject)).every((one) => {
    const there = one.facts.climbTrim?.shareAt(right);
    return there === undefined || there <= most.value;
  });
  const fix = single ? sideFix(subject, set, plant, holds) : undefined;
  return {
    severity: share > 1 ? "warning" : "hint", figure: "trim.climb.rudder", loading: set.loading.name, place: subject.places.part(set, plant.path, "right_thrust"),
    message: `${who} at full throttle in the climb ${single ? "takes" : "take"} ${rudderText(subject, rudder.value)}, ` +
      (share > 1 ? "more than there is" : `${subject.say(plain(share), "share")} of its throw`) +
      `; ${asker(subject, thrustLineUnbalanced, "rudder", "should need")} at most ${subject.say(most, "share")}: ` +
      (single ? pointing(subject, set) : "propellers that turn against each other need none"),
    fixes: fix && [fix],
  };
}

/** What would need no rudder. */
function pointing(subject: Subject, set: FigureSet): string {
  const neutral = set.facts.climbTrim?.neutral;
  if (neutral === undefined) return "1 to 3 deg of side thrust is usual";
  const angle = `${subject.say(quantity(Math.abs(neutral), dimensions.angle))} of ${neutral > 0 ? "right" : "left"} thrust would need none`;
  return Math.abs(neutral) > mostSide ? `${angle}, more than the 1 to 4 deg that are usual` : angle;
}

/** The side thrust that needs no rudder, as far as it is usual, where that mends it. */
function sideFix(subject: Subject, set: FigureSet, plant: Plant, holds: (right: number) => boolean) {
  const neutral = set.facts.climbTrim?.neutral;
  if (neutral === undefined) return undefined;
  const right = Math.max(-mostSide, Math.min(mostSide, neutral));
  return holds(right) ? angleFix(subject, set, plant, { right_thrust: right }) : undefined;
}

function judgeSingle(subject: Subject, set: FigureSet, plants: readonly Plant[]): Verdict | undefined {
  const [plant] = plants;
  const thrust = set.value("power.thrust_to_weight");
  const strong = subject.limit(thrustLineUnbalanced, "strong");
  if (plants.length !== 1 || !plant.propeller || plant.pusher || Math.abs(plant.hub[1]) > 0.005 || !thrust || !strong) return undefined;
  // A clockwise propeller pulls to the left, so its shaft points right; the other way round otherwise.
  const wanted = plant.propeller.clockwise ? 1 : -1;
  const angle = sideAngle(plant) * wanted;
  if (thrust.value < strong.value || angle > slack) return undefined;
  const { share, neutral } = set.facts.climbTrim ?? {};
  if (share !== undefined && (share < little || (neutral !== undefined && neutral * wanted <= slack))) return undefined;
  const name = subject.places.name(set, plant.path);
  const [turns, pulls, points] = wanted > 0 ? ["clockwise", "left", "right"] : ["anticlockwise", "right", "left"];
  const fix = neutral === undefined ? angleFix(subject, set, plant, { right_thrust: wanted * usualSide }) : sideFix(subject, set, plant, () => true);
  const rudder = share === undefined ? undefined : set.value("trim.climb.rudder");
  return {
    severity: "hint", figure: rudder ? "trim.climb.rudder" : "power.thrust_to_weight", loading: set.loading.name, place: subject.places.part(set, plant.path, "right_thrust"),
    message: `${name} pulls with ${subject.say(thrust)} of the weight and turns ${turns}, which yaws to the ${pulls} under power; ` +
      `${angle < -slack ? `its shaft points ${pulls} too` : "its shaft points straight ahead"}: ` +
      (rudder && neutral !== undefined
        ? `the climb takes ${rudderText(subject, rudder.value)}, ${pointing(subject, set)}`
        : `1 to 3 deg of ${points} thrust is usual`),
    fixes: fix && [fix],
  };
}
