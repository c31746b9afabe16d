import { nearest } from "../../grammar/nearest";
import { kinds, usualWord } from "../../grammar/vocabulary";
import { altitude, celsius, notNegative, positive } from "../../grammar/vocabulary/range";
import type { PropellerPoint, PropellerReport } from "../../shared/propeller-report";
import { atmosphere, type Air } from "../compute/atmosphere/atmosphere";
import { bladeOf, type Blade } from "../compute/propeller/blade";
import { bladeLoad } from "../compute/propeller/propeller-at";
import { speedAt, zeroThrustAdvance } from "../compute/propeller/sweep";
import type { Propeller } from "../model/design/power";
import { Failure, type Io } from "./io";
import { readText } from "./open";
import { propellerText } from "./propeller-text";
import { readQuantity, readStretch } from "./quantity";
import { readStations } from "./stations";

export interface PropellerOptions {
  readonly diameter: string;
  readonly pitch?: string;
  readonly blades: string;
  readonly blade: string;
  readonly stations?: string;
  readonly rpm: string;
  readonly speed?: string;
  readonly altitude?: string;
  readonly temperature?: string;
  readonly format: "text" | "json" | "csv";
}

/** From one end of the airspeeds to the other. */
const steps = 20;

const rpm = Math.PI / 30;

/** Prints what a propeller does at one speed of rotation over a range of airspeeds, by default as far as it pulls. */
export async function propeller(options: PropellerOptions, io: Io): Promise<number> {
  const shape = await propellerOf(options, io);
  const rotation = readQuantity(options.rpm, { option: "--rpm", dimension: "rotation", range: positive, bare: "rpm" });
  const air = airOf(options);
  const blade = bladeOf(shape);
  const { speeds, end } = speedsOf(options.speed, blade, rotation, air);
  const points = speeds.map((speed): PropellerPoint => {
    const load = bladeLoad(blade, rotation, speed, air);
    return {
      rpm: rotation / rpm, speed, advance_ratio: load.advanceRatio, thrust_coefficient: load.thrustCoefficient,
      power_coefficient: load.powerCoefficient, efficiency: load.efficiency, thrust: load.thrust, power: load.power,
    };
  });
  const report: PropellerReport = { points };
  if (options.format === "json") io.out(`${JSON.stringify(report, undefined, 2)}\n`);
  else if (options.format === "csv") io.out(csv(points));
  else io.out(propellerText(points, { propeller: shape, rotation, air, end }));
  return 0;
}

function csv(points: readonly PropellerPoint[]): string {
  const columns = Object.keys(points[0]) as (keyof PropellerPoint)[];
  return [columns.join(","), ...points.map((point) => columns.map((column) => point[column]).join(","))].join("\n") + "\n";
}

async function propellerOf(options: PropellerOptions, io: Io): Promise<Propeller> {
  const diameter = readQuantity(options.diameter, { option: "--diameter", dimension: "length", range: positive });
  const stations = options.stations === undefined ? undefined : readStations(await readText(options.stations, io), options.stations);
  if (options.pitch === undefined && !stations) throw new Failure("a propeller needs its --pitch, or --stations that say its angles");
  const pitch = options.pitch === undefined ? 0 : readQuantity(options.pitch, { option: "--pitch", dimension: "length", range: positive });
  const blades = /^\d+$/.test(options.blades.trim()) ? Number(options.blades) : 0;
  if (!(blades >= 1 && blades <= 12)) throw new Failure(`--blades takes a whole number from 1 to 12, not ${options.blades}`);
  return { diameter, pitch, blades, ...typeOf(options.blade), clockwise: true, ...(stations && { stations }) };
}

const families = ["thin", "wide", "thick"] as const;

function typeOf(word: string): Pick<Propeller, "family" | "folding"> {
  if (word === "folding") return { family: "thin", folding: true };
  const family = families.find((each) => each === word);
  if (family) return { family, folding: false };
  const all = [...families, "folding"];
  const meant = usualWord(kinds.propeller.properties.blade, word) ?? nearest(word, all);
  throw new Failure(`--blade is one of ${all.join(", ")}; "${word}" is none of them${meant ? `; did you mean ${meant}?` : ""}`);
}

function airOf(options: PropellerOptions): Air {
  const height = options.altitude === undefined ? 0 : readQuantity(options.altitude, { option: "--altitude", dimension: "length", range: altitude });
  const temperature = options.temperature === undefined ? undefined :
    readQuantity(options.temperature, { option: "--temperature", dimension: "temperature", range: celsius(-60, 60) });
  const air = atmosphere({ altitude: height, temperature });
  if (!air) throw new Failure("there is no air like that");
  return air;
}

/** The airspeeds asked for, or those at which it pulls; `end`: the one from which it doesn't. */
function speedsOf(asked: string | undefined, blade: Blade, rotation: number, air: Air): { speeds: number[]; end: number | undefined } {
  const advance = zeroThrustAdvance(blade, rotation, air);
  const end = advance === undefined ? undefined : speedAt(blade, rotation, advance);
  const [low, high] = asked === undefined ? [0, end] : readStretch(asked, { option: "--speed", dimension: "speed", range: notNegative });
  if (high === undefined) throw new Failure("it does not pull standing still: say at which --speed it is wanted");
  const speeds = low === high ? [low] : Array.from({ length: steps + 1 }, (_, i) => low + ((high - low) * i) / steps);
  return { speeds, end };
}
