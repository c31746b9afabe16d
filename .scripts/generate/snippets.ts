import { kinds, statements } from "../../grammar/vocabulary/index";
import { notComputedYet, type Kind, type Property } from "../../grammar/vocabulary/schema";

interface Snippet {
  readonly prefix: string;
  readonly body: readonly string[];
  readonly description: string;
}

/** Children without which a block says nothing yet. */
const children: Readonly<Record<string, readonly string[]>> = {
  wing: ["panel"], tailplane: ["panel"], canard: ["panel"], fin: ["panel"], powerplant: ["motor", "propeller", "esc"], gear: ["wheel"], sortie: ["leg"],
};

/** Properties that need not be written, but nobody leaves out. */
const usual: Readonly<Record<string, readonly string[]>> = {
  airframe: ["class"], wing: ["foil"], tailplane: ["foil"], canard: ["foil"], fin: ["foil"], battery: ["chemistry", "weight"],
  powerplant: ["battery"], motor: ["no_load_current", "max_current", "weight"], propeller: ["weight"], esc: ["max_current", "weight", "at"],
  fuselage: ["height", "weight"], body: ["weight"], boom: ["weight"], item: ["weight"], servo: ["weight"], receiver: ["outputs", "weight"],
  wheel: ["diameter", "weight", "mirror"], skid: ["weight"], skin: ["wall"], spar: ["inner", "chord"], air: ["altitude"], station: ["height"],
  strut: ["chord", "weight"], wire: ["diameter"], place: ["at", "mirror"], foil: ["lift_max"], loading: ["without"],
  aileron: ["along", "up", "down", "servo"], elevator: ["up", "down", "servo"], rudder: ["left", "right", "servo"], flap: ["along", "down", "servo"],
  elevon: ["along", "pitch_up", "pitch_down", "roll_up", "roll_down", "servo"], ruddervator: ["pitch_up", "pitch_down", "yaw_out", "yaw_in", "servo"],
  flaperon: ["roll_up", "roll_down", "droop", "servo"], airbrake: ["along", "up"], spoiler: ["along", "up"],
  loads: ["positive_g", "negative_g", "safety_factor"], bench: ["throttle", "volts", "amps", "rpm", "thrust"], supply: ["amps"], weighed: ["loading"],
  part: ["wall"], leg: ["speed"],
};

const escaped = (text: string) => text.replace(/[\\$}]/g, "\\$&");

/** Counts tab stops through one snippet. */
class Stops {
  private last = 0;

  stop(text: string): string {
    return `\${${++this.last}:${escaped(text)}}`;
  }

  choice(words: readonly string[], first: string): string {
    const ordered = [first, ...words.filter((one) => one !== first)];
    return `\${${++this.last}|${ordered.join(",")}|}`;
  }
}

/** What the snippet of a kind asks for: what is needed (of alternatives the first) and what is usual. */
function asked(kind: Kind): readonly Property[] {
  const chosen = new Set<string>();
  for (const property of Object.values(kind.properties)) {
    const wanted = property.needed && !property.unless.some((name) => chosen.has(name));
    if (wanted || usual[kind.name]?.includes(property.name)) chosen.add(property.name);
  }
  return Object.values(kind.properties).filter((property) => chosen.has(property.name));
}

function written(property: Property, stops: Stops): string {
  const { form, example } = property;
  if (form.form === "word") return stops.choice(form.words, example);
  if (form.form === "flag") return stops.choice(["yes", "no"], example);
  return stops.stop(example);
}

/** The block's head as its example has it: named, titled, copied or bare. */
function head(kind: Kind, stops: Stops): string {
  const [, name, title, from] = /^\w+(?: (?!from\b)(\w+))?(?: ("[^"]*"))?(?: from (\w+))? \{/.exec(kind.example) ?? [];
  const parts = [kind.name];
  if (name) parts.push(stops.stop(name));
  if (title) parts.push(`"${stops.stop(title.slice(1, -1))}"`);
  if (from) parts.push(`from ${stops.stop(from)}`);
  return `${parts.join(" ")} {`;
}

function block(kind: Kind, stops: Stops, indent: string): string[] {
  const first = `${indent}${head(kind, stops)}`;
  const properties = asked(kind).map((property) => `${indent}\t${property.name} = ${written(property, stops)}`);
  const inner = (children[kind.name] ?? []).flatMap((child) => block(kinds[child], stops, `${indent}\t`));
  const end = indent === "" ? ["\t$0"] : [];
  return [first, ...properties, ...inner, ...end, `${indent}}`];
}

const fromStatement: Readonly<Record<string, readonly string[]>> = {
  use: ['use "${1:other.airframe}" as ${2:other}'],
  let: ["let ${1:tail_arm} = ${2:610 mm}"],
  require: ['require ${1:stability.static_margin within 8 % .. 15 %} because "${2:why}"'],
  waive: ['waive ${1:check} because "${2:why}"'],
};

/** A snippet for every kind, with what it needs as tab stops, and for every statement. */
export function snippets(): Readonly<Record<string, Snippet>> {
  const out: Record<string, Snippet> = {};
  for (const [name, { text }] of Object.entries(statements)) out[name] = { prefix: name, body: fromStatement[name], description: text };
  for (const kind of Object.values(kinds)) {
    const description = kind.later ? `${kind.text} ${notComputedYet}` : kind.text;
    out[kind.name] = { prefix: kind.name, body: block(kind, new Stops(), ""), description };
  }
  return out;
}
