import { describe, expect, it } from "vitest";
import type { Analysis } from "../../../server/analysis";
import { checks } from "../../../server/checks/registry";
import type { PolarStore } from "../../../server/compute/section-air/polar-shelf";
import { userPolarStore } from "../../../server/polar-store";
import { AirframeService } from "../../../server/service";
import { madeUp } from "../compute/section-air/made-up";
import { flown, flownFigure, type Done } from "./flown";

const uri = "memory:/design.airframe";
const design = `airframe "Dunlin" { class = sport }
wing main { at = (200 mm, 0 mm, 0 mm) ; foil = naca("2412") ; weight = 120 g ; panel half { span = 500 mm ; chord = 200 mm } }
battery pack { cells = 3 ; capacity = 2200 mAh ; weight = 180 g ; at = (250 mm, 0 mm, 0 mm) }
require ${flownFigure} > 2
`;

interface Desk {
  readonly service: AirframeService;
  readonly done: Done;
  write(text: string): Analysis;
  /** Puts made-up polars on the shelf for all that is wanted. */
  solve(analysis: Analysis): void;
}

function desk(reynolds: readonly number[] = [150e3, 200e3], polars?: PolarStore): Desk {
  const done: Done = { runs: 0, solved: 0 };
  const service = new AirframeService({ text: () => undefined, polars }, flown(reynolds, done));
  let version = 0;
  return {
    service, done,
    write(text) {
      service.update({ uri, text, version: ++version });
      return service.analysis(uri)!;
    },
    solve: ({ wanted }) => wanted.forEach((want) => service.polars.put(want.key, madeUp(want.reynolds))),
  };
}

/** The slow work as far as it goes without polars. */
const finish = (analysis: Analysis): Analysis => {
  for (const _ of analysis.finish()) void _;
  return analysis;
};

const failures = ({ findings }: Analysis): readonly string[] => findings.map(({ code }) => code).filter((code) => /^require|^figure_absent/.test(code));

describe("figures that rest on polars", () => {
  it("come when the polars are there, and what they rest on is wanted until then", () => {
    const { write, solve } = desk();
    const analysis = finish(write(design));
    expect([analysis.reached, analysis.complete]).toEqual(["slow", false]);
    expect(analysis.wanted.map(({ reynolds }) => reynolds)).toEqual([150e3, 200e3]);
    expect(analysis.sets[0].value("stability.neutral_point")).toBeDefined();
    expect(failures(analysis)).toEqual([]);
    solve(analysis);
    finish(analysis);
    expect([analysis.reached, analysis.complete, analysis.wanted]).toEqual(["polars", true, []]);
    expect(analysis.sets[0].value(flownFigure)!.value).toBeCloseTo(madeUp(150e3).liftMax, 9);
    expect(failures(analysis)).toEqual(["require_failed"]);
  });

  it("are not remembered while they lack something, and not worked out again once they don't", () => {
    const { write, solve, done } = desk();
    const analysis = finish(write(design));
    solve(analysis);
    finish(analysis);
    expect(done).toEqual({ runs: 2, solved: 2 });
    finish(write(design.replace("(250 mm", "(251 mm")));
    expect(done).toEqual({ runs: 3, solved: 2 });
  });

  it("cost no polar when a mass moves", () => {
    const { write, solve, service } = desk();
    const before = finish(write(design));
    solve(before);
    finish(before);
    const moved = finish(write(design.replace("(250 mm", "(251 mm")));
    expect([moved.complete, service.polars.wanted()]).toEqual([true, []]);
  });

  it.each([["with", true], ["without", false]])("are taken over, %s their polars, when only a comment changes", (_, solved) => {
    const { write, solve, done } = desk();
    const before = finish(write(design));
    if (solved) {
      solve(before);
      finish(before);
    }
    const { runs } = done;
    const after = write(`# ${design.length}\n${design}`);
    expect([after.reached, after.wanted]).toEqual([before.reached, before.wanted]);
    expect(after.sets[0].all()).toEqual(before.sets[0].all());
    expect(failures(after)).toEqual(failures(before));
    expect(done.runs).toBe(runs);
  });

  it("say of a text that was left as it is that they are missing", () => {
    const { write, solve } = desk();
    const analysis = finish(write(design));
    analysis.stop();
    expect([analysis.sets[0].complete, analysis.sets[0].stopped, failures(analysis)]).toEqual([false, true, []]);
    const again = write(`${design}#`);
    expect(again.stopped).toBe(true);
    const changed = finish(write(design.replace("(250 mm", "(251 mm")));
    expect(changed.stopped).toBe(false);
    solve(changed);
    expect(finish(changed).complete).toBe(true);
  });

  it("are all there after finishNow", () => {
    const { service, write } = desk([400e3], userPolarStore());
    const analysis = write(design).finishNow();
    expect(analysis.sets[0].value(flownFigure)!.value).toBeGreaterThan(1);
    expect([analysis.complete, service.polars.wanted()]).toEqual([true, []]);
  });
});

describe("a finding of the text before", () => {
  const place = { file: uri, start: 0, end: 1 };
  const of = (code: string, figure?: string) => ({ code, severity: "error" as const, message: "", place, figure, loading: "" });

  it("is awaited as long as what it rests on is to come", () => {
    const { write, solve } = desk();
    const analysis = write(design);
    const quick = checks.find(({ wave }) => wave === "quick")!.code;
    const rests = of("require_failed", flownFigure);
    expect([rests, of(quick), of("missing_unit")].map((each) => analysis.awaits(each))).toEqual([true, true, true]);
    finish(analysis);
    expect([rests, of(quick), of("require_failed", "stability.static_margin")].map((each) => analysis.awaits(each))).toEqual([true, false, false]);
    solve(analysis);
    finish(analysis);
    expect(analysis.awaits(rests)).toBe(false);
  });
});
