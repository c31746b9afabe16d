import type { FigureSet } from "../figures/figure-set";
import { absenceOf } from "../figures/absence";
import { figureCard } from "../report/account";
import { plain } from "../report/card";
import { caution, figuresText } from "../report/figures-text";
import { reportOf } from "../report/report";
import type { Io } from "./io";
import { openDesigns, type OpenOptions } from "./open";

export interface FiguresOptions extends OpenOptions {
  readonly format: "text" | "json";
}

/** Prints all figures, or those named: by name, or by the group before the dot. 1 if a named one isn't there. */
export async function figures(file: string, names: readonly string[], options: FiguresOptions, io: Io): Promise<number> {
  const [{ name, analysis, sets }] = await openDesigns([file], options, io);
  const wanted = names.length === 0 ? undefined : (figure: string) => names.some((each) => figure === each || figure.startsWith(`${each}.`));
  if (options.format === "json") {
    io.out(`${JSON.stringify(reportOf(analysis, sets, name, analysis.findings, wanted), undefined, 2)}\n`);
  } else io.out(figuresText(analysis, sets, wanted));
  const absent = names.flatMap((each) => absences(each, sets));
  for (const message of absent) io.err(`${message}\n`);
  return absent.length > 0 ? 1 : 0;
}

/** Why a name gives nothing, for each loading where it doesn't. */
function absences(name: string, sets: readonly FigureSet[]): string[] {
  const lacking = sets.filter((set) => !set.all().some((figure) => figure.name === name || figure.name.startsWith(`${name}.`)));
  const reasons = new Map<string, string[]>();
  for (const set of lacking) {
    const reason = absenceOf(name, set);
    reasons.set(reason, [...(reasons.get(reason) ?? []), set.loading.name]);
  }
  return [...reasons].map(([reason, loadings]) => {
    const where = loadings.length === sets.length ? "" : ` in ${loadings.join(", ")}`;
    return `there is no ${name}${where}: ${reason}`;
  });
}

/** Prints how one figure comes about. 1 if it isn't there. */
export async function explain(file: string, name: string, options: OpenOptions, io: Io): Promise<number> {
  const [{ analysis, sets }] = await openDesigns([file], options, io);
  const shown = sets.find((set) => set.get(name)) ?? sets[0];
  if (!shown.get(name)) {
    for (const message of absences(name, sets)) io.err(`${message}\n`);
    return 1;
  }
  io.out(`${plain(figureCard(name, analysis, shown)).replace(/`/g, "")}\n\n${caution}\n`);
  return 0;
}
