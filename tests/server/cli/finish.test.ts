import { mkdtempSync, readdirSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, expect, test } from "vitest";
import { finishAll } from "../../../server/cli/finish";
import { polarStore } from "../../../server/polar-store";
import { AirframeService } from "../../../server/service";
import { flown, flownFigure } from "../polars/flown";

const folder = mkdtempSync(join(tmpdir(), "sparwright-finish-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const text = (foil: string) => `airframe "Dunlin" { class = sport }
wing main { at = (200 mm, 0 mm, 0 mm) ; foil = ${foil} ; weight = 120 g ; panel half { span = 500 mm ; chord = 200 mm } }
`;
const texts: Readonly<Record<string, string>> = { a: text('naca("0012")'), b: text("flat(3 %)"), c: text('naca("0012")') };

/** At which polars take least. */
const reynolds = [200e3, 400e3];

/** One run of a program over all designs. */
async function run() {
  const lines: (string | undefined)[] = [];
  let clock = 0;
  const service = new AirframeService({ text: (uri) => texts[uri], polars: polarStore(folder, "test") }, flown(reynolds));
  const designs = Object.keys(texts).map((uri) => service.analysis(uri)!);
  await finishAll(designs, service, { progress: (line) => lines.push(line) }, () => (clock += 60));
  return { lines, complete: designs.map(({ complete }) => complete), values: designs.map((each) => each.sets[0].value(flownFigure)?.value) };
}

test("a first run works all polars out and tells how far it is; a second finds them", async () => {
  const first = await run();
  expect(first.complete).toEqual([true, true, true]);
  // The section lifts more than the plate, which stalls by handbook values at some 0.7.
  expect(first.values.every((value) => value! > 0.5)).toBe(true);
  expect(readdirSync(folder)).toHaveLength(2);
  // By the clock of this test a step takes some 60 ms, and a polar has hundreds.
  expect(first.lines).toEqual(["Section polars: naca 0012 at 200,000 (1 of 2)", "Section polars: naca 0012 at 400,000 (2 of 2)", undefined]);
  const second = await run();
  expect(second).toEqual({ ...first, lines: [] });
  expect(readdirSync(folder)).toHaveLength(2);
}, 120_000);
