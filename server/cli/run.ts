import { Command, CommanderError, Option } from "commander";
import { version } from "../../package.json";
import { caution } from "../report/figures-text";
import { check, type CheckOptions } from "./check";
import { explain, figures, type FiguresOptions } from "./figures";
import { formatFiles } from "./format";
import { Failure, type Io } from "./io";
import { newDesign } from "./new";
import type { OpenOptions } from "./open";
import { polar, type PolarOptions } from "./polar";
import { propeller, type PropellerOptions } from "./propeller";

/** Runs the command line; `argv` without node and script. Gives the exit code. */
export async function run(argv: readonly string[], io: Io): Promise<number> {
  let code = 0;
  const then = (work: Promise<number> | number) => Promise.resolve(work).then((result) => void (code = result));
  try {
    await program(io, then).parseAsync([...argv], { from: "user" });
    return code;
  } catch (error) {
    // Help and version end by an error of their own with code 0.
    if (error instanceof CommanderError) return error.exitCode === 0 ? 0 : 2;
    if (!(error instanceof Failure)) throw error;
    io.err(`${error.message}\n`);
    return error.code;
  }
}

type Then = (work: Promise<number> | number) => Promise<void>;

function program(io: Io, then: Then): Command {
  const units = () => new Option("--units <system>", "units that figures are shown in").choices(["metric", "imperial"]).default("metric");
  const loading = () => new Option("--loading <name>", "only this loading");
  const shape = () => new Option("--format <format>", "text for people, json for programs").choices(["text", "json"]).default("text");
  const root = new Command("sparwright")
    .description("Works out radio-control airframes written as text: weight, balance, stability, power, and what is wrong with them.")
    .version(version)
    .addHelpText("after", `\n${caution}`);
  // Before the commands, which take these over.
  root.exitOverride().configureOutput({ writeOut: io.out, writeErr: io.err }).showHelpAfterError("(--help tells how it is used)");
  root.command("check").description("what is found in designs; exits with 1 if there are errors")
    .argument("<file...>", "designs; - for the standard input")
    .option("--strict", "warnings count as errors", false).addOption(shape()).addOption(loading()).addOption(units())
    .action((files: string[], options: CheckOptions) => then(check(files, options, io)));
  root.command("figures").description("the figures of a design, all or those named")
    .argument("<file>", "a design; - for the standard input").argument("[name...]", "figures or groups of them: cg.x, stability")
    .addOption(shape()).addOption(loading()).addOption(units())
    .action((file: string, names: string[], options: FiguresOptions) => then(figures(file, names, options, io)));
  root.command("explain").description("how a figure comes about: formula, inputs, source")
    .argument("<file>", "a design; - for the standard input").argument("<figure>", "stability.static_margin").addOption(loading()).addOption(units())
    .action((file: string, figure: string, options: OpenOptions) => then(explain(file, figure, options, io)));
  root.command("format").description("writes designs in the usual layout")
    .argument("<file...>", "designs; - for standard input to standard output")
    .option("--check", "write nothing; exit with 1 if any would change", false)
    .action((files: string[], options: { readonly check: boolean }) => then(formatFiles(files, options.check, io)));
  root.command("new").description("writes a small sound design to begin from")
    .argument("<file>", "a name that isn't taken")
    .action((file: string) => then(newDesign(file, io)));
  root.command("polar").description("lift, drag and moment of a section over angle, from its shape")
    .argument("<foil>", 'a coordinate file, - for the standard input, or naca("2412")')
    .requiredOption("--reynolds <numbers>", "Reynolds numbers, such as 100000,200000")
    .addOption(new Option("--format <format>", "text for people, json for programs, csv for sheets").choices(["text", "json", "csv"]).default("text"))
    .action((foil: string, options: PolarOptions) => then(polar(foil, options, io)));
  root.command("propeller").description("thrust, power and efficiency of a propeller over airspeed")
    .requiredOption("--diameter <length>", 'of its disc: "10 in"').requiredOption("--rpm <number>", "how fast it turns")
    .option("--pitch <length>", 'as stamped on the blade: "7 in"; not needed with stations')
    .option("--blades <number>", "how many blades", "2").option("--blade <type>", "thin, wide, thick or folding", "thin")
    .option("--stations <file>", "its own blade: lines of r/R, c/R and angle in degrees; - for the standard input")
    .option("--speed <speeds>", 'one airspeed, or a range: "0..25 m/s"; from standing still to where it pulls no more if absent')
    .option("--altitude <length>", 'of the field: "450 m"').option("--temperature <temperature>", 'at the field: "25 degC"')
    .addOption(shape().choices(["text", "json", "csv"]))
    .action((options: PropellerOptions) => then(propeller(options, io)));
  root.command("serve").description("the language server, for editors")
    .option("--stdio", "over the standard streams, the only way there is")
    .action(() => then(serve()));
  return root;
}

/** Never ends by itself: the connection ends the process. */
async function serve(): Promise<number> {
  const { serveStdio } = await import("../stdio");
  serveStdio();
  return new Promise(() => undefined);
}
