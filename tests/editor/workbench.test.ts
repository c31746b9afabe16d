import { cpSync, mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, afterEach, beforeAll, beforeEach, expect, test, vi } from "vitest";
import { root } from "./fetch";
import { type Host, startHost } from "./host";
import { Workbench } from "./page";
import { until } from "./until";

// One window for all: a workbench takes seconds to open and a gigabyte to hold.
vi.setConfig({ testTimeout: 60_000, hookTimeout: 180_000 });

const sample = (name: string): string => readFileSync(join(root, "samples", name), "utf8");
const twin = sample("plover-twin.airframe");
const single = sample("plover.airframe");
const pack = "at = (60 mm, 0 mm, -20 mm)";
const packAft = "at = (260 mm, 0 mm, -20 mm)";

let host: Host;
let workbench: Workbench;

beforeAll(async () => {
  host = await startHost();
  cpSync(join(root, "samples"), host.workspace, { recursive: true });
  workbench = await Workbench.open(host, "plover-twin.airframe");
  // The extension is awake when its first effect is seen.
  await until("the first figures in the status bar", figuresShown, () => workbench.status(), 60_000);
});

afterAll(async () => {
  await workbench?.close();
  host?.stop();
});

let number = 0;
beforeEach(() => void number++);
afterEach(async ({ task }) => {
  if (task.result?.state !== "fail") return;
  await workbench.screenshot(`failed-${number}`);
  // Whatever list or box a failed test left open must not take the next one's keys.
  await workbench.press("Escape");
  await workbench.press("Escape");
});

const figuresShown = async (): Promise<boolean> => /\d.* k?g/.test(await workbench.status()) && !(await workbench.working());
const squiggles = async (): Promise<number> =>
  (await workbench.squiggles("error")) + (await workbench.squiggles("warning"));
const mass = (status: string): number => Number(/([\d.]+) kg/.exec(status)?.[1]);
/** Opens a text under a name of its own and waits until its figures are there. */
async function open(text: string): Promise<void> {
  await workbench.openFile(`design-${number}.airframe`, text);
  await until("figures of the opened design", figuresShown, () => workbench.status());
}

test("the twin is sound: figures in the status bar, not one squiggle", async () => {
  // The file it uses may come a moment after the first look.
  await until("mass, margin and thrust", async () => /^survey · [\d.]+ kg · margin [\d.]+ % · T\/W [\d.]+$/.test(await workbench.status()),
    () => workbench.status());
  expect(await squiggles()).toBe(0);
  expect((await workbench.problems()).filter((label) => /^(Error|Warning)/.test(label))).toEqual([]);
  await workbench.screenshot("twin");
});

test("words of the language are coloured, each in its own way", async () => {
  await open(twin);
  const colours = await Promise.all(["# Two", "wing", "245", "use"].map((word) => workbench.colour(word)));
  const plain = await workbench.colour("single");
  expect(new Set([...colours, plain]).size).toBeGreaterThanOrEqual(4);
  expect(colours).not.toContain(plain);
});

test("moving the packs aft marks the place, says why, and the status bar follows", async () => {
  await open(twin);
  const before = await workbench.status();
  await workbench.change(twin, pack, packAft);
  await until("a problem that names the margin", async () => (await workbench.problems()).some((label) => /margin/i.test(label)),
    () => workbench.problems());
  await until("other figures in the status bar", async () => (await workbench.status()) !== before && figuresShown());
  await until("a squiggle where the packs are", async () => (await squiggles()) > 0);
  await workbench.screenshot("packs-aft");
  await workbench.goToText(twin, "require stability");
  await until("a squiggle under the requirement", async () => (await squiggles()) > 0);
});

test("a quick fix on the finding puts it right", async () => {
  const aft = single.replace("at = (95 mm, 0 mm, -20 mm)", "at = (330 mm, 0 mm, -20 mm)");
  await open(aft);
  await workbench.goToText(aft, "at = (330 mm, 0 mm, -20 mm)");
  await until("a squiggle", async () => (await squiggles()) > 0);
  await workbench.quickFix("ove pack");
  await until("no squiggle", async () => (await squiggles()) === 0, () => workbench.problems());
  expect(await workbench.text()).not.toContain("(330 mm, 0 mm, -20 mm)");
});

test("a number without a unit is an error with a fix", async () => {
  const bare = single.replace("length = 960 mm", "length = 960");
  await open(bare);
  await workbench.goToText(bare, "960");
  await until("an error", async () => (await workbench.squiggles("error")) > 0);
  await workbench.quickFix("mm");
  await until("no error", async () => (await workbench.squiggles("error")) === 0, () => workbench.problems());
});

test("the hover over a figure tells its value and where it comes from", async () => {
  await open(single);
  await workbench.goToText(single, "static_margin");
  expect(await workbench.hover("%")).toMatch(/static margin/i);
});

test("completion offers what may stand there", async () => {
  await open(single);
  await workbench.goToText(single, "cells = 4");
  const offered = await workbench.completions("usable");
  expect(offered).not.toContain("span");
  // Written once already.
  expect(offered).not.toContain("capacity");
});

test("a click on the status bar changes the loading", async () => {
  await open(single);
  const before = await workbench.status();
  await workbench.clickStatus();
  await workbench.pick("ferry");
  await until("the other loading", async () => (await workbench.status()).includes("ferry"), () => workbench.status());
  expect(await workbench.status()).not.toBe(before.replace("survey", "ferry"));
});

test("the figures open beside the design and follow it", async () => {
  await open(single);
  await workbench.command("Sparwright: Show Figures");
  const figures = (): Promise<string> => workbench.text("beside");
  await until("figures", async () => (await figures()).includes("mass.total"), figures);
  await workbench.screenshot("figures");
  const before = await figures();
  await workbench.change(single, "weight = 418 g", "weight = 618 g");
  await until("200 g more", async () => (await figures()) !== before && /mass\.total +2\.28 kg/.test(await figures()), figures);
});

test("a template opens as an unsaved design without a mistake", async () => {
  await workbench.command("Sparwright: New Design from Template");
  await workbench.pick("Trainer");
  await until("its figures", figuresShown, () => workbench.status());
  expect(await squiggles()).toBe(0);
});

test("formatting puts a line in its usual form", async () => {
  const loose = single.replace("panel inner { span = 420 mm ; chord = 245 mm }", "panel inner {span=420 mm;chord   = 245 mm}");
  await open(loose);
  await workbench.command("Format Document");
  await until("the usual form", async () => (await workbench.text()).includes("panel inner { span = 420 mm ; chord = 245 mm }"),
    () => workbench.text());
});

test("a file on disk that the design uses is read again when it changes", async () => {
  await open(twin);
  const before = await workbench.status();
  writeFileSync(join(host.workspace, "plover.airframe"), single.replace("weight = 310 g ± 15 g", "weight = 310 g").replace("weight = 152 g", "weight = 652 g"));
  await until("a kilogram more", async () => mass(await workbench.status()) > mass(before) + 0.9, () => workbench.status());
  writeFileSync(join(host.workspace, "plover.airframe"), single);
  await until("the mass of before", async () => mass(await workbench.status()) === mass(before), () => workbench.status());
});

test("the units of the settings are those of the figures", async () => {
  await open(single);
  mkdirSync(join(host.workspace, ".vscode"));
  writeFileSync(join(host.workspace, ".vscode/settings.json"), JSON.stringify({ "sparwright.units": "imperial" }));
  await until("pounds or ounces", async () => /\d (lb|oz) /.test(await workbench.status()), () => workbench.status());
  rmSync(join(host.workspace, ".vscode"), { recursive: true });
  await until("kilograms", figuresShown, () => workbench.status());
});

test("the server starts anew on command, and everything is there again", async () => {
  const aft = single.replace("at = (95 mm, 0 mm, -20 mm)", "at = (330 mm, 0 mm, -20 mm)");
  await open(aft);
  await workbench.goToText(aft, "at = (330 mm, 0 mm, -20 mm)");
  await until("a squiggle", async () => (await squiggles()) > 0);
  await workbench.command("Sparwright: Restart Language Server");
  await until("no squiggle while it is away", async () => (await squiggles()) === 0);
  await until("a squiggle again", async () => (await squiggles()) > 0);
  await until("figures again", figuresShown, () => workbench.status());
});
