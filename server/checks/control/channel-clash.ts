import type { Fix, Place } from "../../../shared/finding";
import type { FigureSet } from "../../figures/figure-set";
import { rewrite } from "../../model/problems";
import type { Check, Subject, Verdict } from "../check";
import { always, practice } from "../class-words";
import { plain } from "../../../grammar/units/quantity";
import { andList, orList } from "../names";
import { wiringOf, type Plug, type Wiring } from "./wiring";

/** Receiver outputs that can't work. */
export const channelClash: Check = {
  code: "channel_clash",
  wave: "quick",
  text: "One thing stands on two outputs; a servo or controller on none; a controller shares an output with a servo; too many hang on one Y-lead. Only with a receiver.",
  thresholds: [{ name: "lead", dimension: "ratio", text: "How many things one Y-lead may feed.", usual: always(4), source: practice }],
  run(subject) {
    const found = new Map<string, Verdict>();
    for (const set of subject.sets) {
      const wiring = wiringOf(subject, set);
      if (!wiring) continue;
      for (const verdict of [...twice(subject, set, wiring), ...unplugged(subject, set, wiring), ...leads(subject, set, wiring)]) {
        const key = `${verdict.place.start} ${verdict.message}`;
        if (!found.has(key)) found.set(key, verdict);
      }
    }
    return [...found.values()];
  },
};

const at = (plug: Plug): string => `output ${plug.output} of ${plug.receiver}`;

function placeOf({ file, places }: Subject, set: FigureSet, { node, receiver }: Plug): Place {
  return node ? { file: file.uri, start: node.start, end: node.end } : places.part(set, receiver, "outputs");
}

/** The same part on two outputs: two receivers or channels would fight over it. */
function twice(subject: Subject, set: FigureSet, { plugs }: Wiring): Verdict[] {
  const seen = new Map<string, Plug>();
  return plugs.flatMap((plug): Verdict[] => {
    const doubled = plug.parts.filter((part) => seen.has(part));
    for (const part of plug.parts) if (!seen.has(part)) seen.set(part, plug);
    if (doubled.length === 0) return [];
    const first = seen.get(doubled[0])!;
    const same = first.receiver === plug.receiver && first.output === plug.output;
    const where = same ? `twice on ${at(plug)}` : `on ${at(first)} and on ${at(plug)}`;
    return [{
      severity: "error", place: placeOf(subject, set, plug), loading: set.loading.name,
      message: `${andList(doubled)} ${doubled.length === 1 ? "is" : "are"} ${where}; one plug fits one output: keep one of them`,
      fixes: plug.node && !same && doubled.length === plug.parts.length ? [rewrite(subject.file, plug.node, `Leave output ${plug.output} free`, "none")] : undefined,
      related: first.node && [{ message: "also here", place: placeOf(subject, set, first) }],
    }];
  });
}

/** Servos and controllers that nothing drives; both of a mirrored pair in one finding. */
function unplugged(subject: Subject, set: FigureSet, { plugs, driven, lists }: Wiring): Verdict[] {
  const plugged = new Set(plugs.flatMap(({ parts }) => parts));
  const missing = new Map<string, string[]>();
  for (const { path } of driven) {
    const name = subject.places.name(set, path);
    if (!plugged.has(path)) missing.set(name, [...(missing.get(name) ?? []), path]);
  }
  return [...missing.values()].map((paths): Verdict => {
    const receivers = [...new Set(set.loading.design.receivers.map(({ path }) => path))];
    const fix = plugIn(subject, lists, paths);
    return {
      severity: "warning", place: subject.places.part(set, paths[0]), loading: set.loading.name,
      message: `${andList(paths)} ${paths.length === 1 ? "is" : "are"} on no output of ${orList(receivers)}, so nothing drives ${paths.length === 1 ? "it" : "them"}; ` +
        `name ${paths.length === 1 ? "it" : "them"} among the outputs`,
      fixes: fix && [fix],
    };
  });
}

/** Names parts on free outputs of the first receiver whose list is written at the top of the file, else at the list's end. */
function plugIn(subject: Subject, lists: Wiring["lists"], paths: readonly string[]): Fix | undefined {
  const own = lists.filter(({ block }) => block.parent === subject.file.root);
  const isFree = (item: (typeof lists)[number]["list"]["items"][number]) => item.type === "named" && item.path.names.length === 1 && item.path.names[0].text === "none";
  const target = own.find(({ list }) => list.items.some(isFree)) ?? own[0];
  if (!target) return undefined;
  const { items } = target.list;
  const free = items.filter(isFree).slice(0, paths.length);
  const file = subject.file.uri;
  const edits = free.map(({ start, end }, i) => ({ file, start, end, text: paths[i] }));
  const rest = paths.slice(free.length).join(", ");
  if (rest) {
    const last = items.at(-1);
    const end = last ? last.end : target.list.start + 1;
    edits.push({ file, start: end, end, text: last ? `, ${rest}` : rest });
  }
  return { title: `Put ${andList(paths)} on ${target.receiver}`, edits };
}

/** Y-leads that join what can't move together, or too much of it. */
function leads(subject: Subject, set: FigureSet, { plugs, driven }: Wiring): Verdict[] {
  const most = subject.limit(channelClash, "lead");
  const kinds = new Map(driven.map(({ path, kind }) => [path, kind]));
  const outputs = new Map<string, Plug[]>();
  for (const plug of plugs) outputs.set(at(plug), [...(outputs.get(at(plug)) ?? []), plug]);
  return [...outputs].flatMap(([output, group]): Verdict[] => {
    const parts = [...new Set(group.flatMap((plug) => plug.parts))];
    const controllers = parts.filter((part) => kinds.get(part) === "esc");
    const servos = parts.filter((part) => kinds.get(part) === "servo");
    const about = { place: placeOf(subject, set, group[group.length - 1]), loading: set.loading.name };
    if (controllers.length > 0 && servos.length > 0) {
      return [{ ...about, severity: "error", message: `${andList(servos)} and ${andList(controllers)} share ${output}: the throttle would move the surface; give each its own` }];
    }
    if (!most || parts.length <= most.value) return [];
    return [{
      ...about, severity: "warning",
      message: `${parts.length} things hang on ${output}; more than ${subject.say(plain(most.value))} draw more than one lead and its plug carry: spread them over more outputs`,
    }];
  });
}
