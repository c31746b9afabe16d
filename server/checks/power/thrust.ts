import { standardGravity } from "../../compute/constants";
import type { RunResult } from "../../compute/powertrain/run-at";
import { rotationLimit } from "../../compute/propeller/rotation-limit";
import { runsOf } from "../../figures/power";
import type { FigureSet } from "../../figures/figure-set";
import type { Source } from "../../model/design/power";
import type { Subject } from "../check";
import { nominal } from "../readiness";
import { loadsWith, runWith } from "./loads";
import type { Plant } from "./parts";

/** What stands in place of a loading's own. */
export interface Tried {
  readonly powerplants?: readonly Plant[];
  readonly sources?: readonly Source[];
}

/** What thrust is asked for; undefined where nothing is. SI. */
export interface Wanted {
  readonly thrustToWeight?: number;
  readonly climb?: number;
  /** At 1.3 × stall. */
  readonly thrustOverDrag?: number;
}

/** What is left for the band of the drag's table, and for the path of the climb that is no level flight. */
const spare = 1.02;

/** Is all that is wanted there, with half-charged packs? `mass` that of the heaviest loading, with what is tried. */
export function enoughThrust(set: FigureSet, tried: Tried, { thrustToWeight, climb, thrustOverDrag }: Wanted, mass: number): boolean {
  const { powerplants = nominal(set).powerplants } = tried;
  const thrust = (speed: number): number => {
    const run = runWith(set, powerplants, "nominal", { ...tried, speed });
    return run ? forward(run, powerplants) : 0;
  };
  const weight = standardGravity * mass;
  if (thrustToWeight !== undefined && thrust(0) < thrustToWeight * weight) return false;
  const { flight } = set.facts;
  if (!flight?.performance) return true;
  const heavier = mass / flight.loaded.mass;
  const slow = 1.3 * flight.points.stall.speed * Math.sqrt(heavier);
  const drag = (speed: number) => flight.table.drag(speed, heavier) ?? 0;
  const steady = flight.performance.climb ? flight.performance.climb.speed * Math.sqrt(heavier) : slow;
  return (climb === undefined || ((thrust(steady) - drag(steady)) * steady) / weight >= spare * climb) &&
    (thrustOverDrag === undefined || thrust(slow) >= spare * thrustOverDrag * drag(slow));
}

const forward = (run: RunResult, plants: readonly Plant[]): number =>
  runsOf(run).reduce((sum, { path, thrust }) => sum - thrust * (plants.find((plant) => plant.path === path)?.thrustAxis[0] ?? -1), 0);

/** Is every part within its lasting rating, and every propeller within its rotation? */
export function unharmed(subject: Subject, set: FigureSet, tried: Tried): boolean {
  const { powerplants = nominal(set).powerplants } = tried;
  const full = runWith(set, powerplants, "full", tried);
  const slow = powerplants.every(({ path, propeller }) => {
    const limit = propeller && rotationLimit(propeller);
    const run = full && runsOf(full).find((one) => one.path === path);
    return !limit || !run || run.rotation <= limit.rotation;
  });
  return slow && loadsWith(subject, set, powerplants, tried).every(({ actual, lasting }) => actual <= lasting);
}
