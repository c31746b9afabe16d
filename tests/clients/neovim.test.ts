import { join } from "node:path";
import { expect, test } from "vitest";
import { root } from "./server";
import { ownView, viewOf } from "./views";
import { batteryMoved, wrongUnit } from "./walks";

// -u NONE -i NONE -n: no settings, no history, no swap file of the person whose machine this is.
const args = ["--headless", "-u", "NONE", "-i", "NONE", "-n", "FILE", "-c", `luafile ${join(root, "tests/clients/neovim.lua")}`];

test.each([["a battery moved", batteryMoved], ["a wrong unit after wide characters", wrongUnit]])("Neovim sees what any client sees: %s", async (_, walk) => {
  const own = await ownView(walk(), { textDocument: { hover: { contentFormat: ["markdown"] } } });
  expect(own.edited.length).toBeGreaterThan(0);
  expect(await viewOf("nvim", args, walk())).toEqual(own);
}, 60_000);
