import { readdirSync, readFileSync, statSync } from "node:fs";
import { basename, dirname, join, relative, resolve } from "node:path";
import { pathToFileURL } from "node:url";
import { nearest } from "../../grammar/nearest";
import type { Analysis } from "../analysis";
import type { System } from "../checks/say";
import type { FigureSet } from "../figures/figure-set";
import { nodeFiles } from "../node-files";
import { AirframeService } from "../service";
import { finishAll } from "./finish";
import { Failure, type Io } from "./io";

/** A design that was read and worked out whole. */
export interface Design {
  /** As the user named it. */
  readonly name: string;
  readonly analysis: Analysis;
  /** The loadings asked for: all, or the one named. */
  readonly sets: readonly FigureSet[];
}

export interface OpenOptions {
  readonly units: System;
  readonly loading?: string;
}

/** Reads and works out designs; `-` is what comes in on the standard input. */
export async function openDesigns(names: readonly string[], { units, loading }: OpenOptions, io: Io): Promise<Design[]> {
  const service = new AirframeService({ text: nodeFiles.read, polars: io.polars });
  service.units = units;
  const texts: [name: string, text: string][] = [];
  for (const name of names) texts.push([name, (await readText(name, io)).replace(/^\uFEFF/, "")]);
  const designs = texts.map(([name, text]): Design => {
    const uri = pathToFileURL(resolve(io.folder, name === "-" ? "stdin.airframe" : name)).href;
    service.update({ uri, version: 0, text });
    const analysis = service.analysis(uri)!;
    return { name, analysis, sets: loading === undefined ? analysis.sets : [setNamed(analysis, loading, name)] };
  });
  await finishAll(designs.map(({ analysis }) => analysis), service, io);
  return designs;
}

function setNamed({ sets }: Analysis, loading: string, file: string): FigureSet {
  const found = sets.find((set) => set.loading.name === loading);
  if (found) return found;
  const names = sets.map((set) => set.loading.name);
  const near = nearest(loading, names);
  throw new Failure(`${file} has no loading "${loading}"${near ? `; did you mean ${near}?` : `; it has ${names.join(", ")}`}`);
}

/** The text of a file, or a failure that says why there is none. */
export async function readText(name: string, io: Io): Promise<string> {
  if (name === "-") return io.stdin();
  const path = resolve(io.folder, name);
  const stat = statSync(path, { throwIfNoEntry: false });
  if (!stat) throw new Failure(missing(name, path, io));
  if (stat.isDirectory()) throw new Failure(`${name} is a folder; name the .airframe file in it`);
  try {
    return readFileSync(path, "utf8");
  } catch (error) {
    throw new Failure(`${name} can't be read: ${error instanceof Error ? error.message : String(error)}`);
  }
}

function missing(name: string, path: string, io: Io): string {
  const folder = dirname(path);
  let beside: readonly string[] = [];
  try {
    beside = readdirSync(folder).filter((each) => each.endsWith(".airframe"));
  } catch {
    return `there is no file ${name}, nor a folder ${relative(io.folder, folder) || folder}`;
  }
  const near = beside.find((each) => each === `${basename(name)}.airframe`) ?? nearest(basename(name), beside);
  return `there is no file ${name}${near ? `; did you mean ${relative(io.folder, join(folder, near))}?` : ""}`;
}
