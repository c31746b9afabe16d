import { join } from "node:path";
import { expect, test } from "vitest";
import { root } from "./server";
import { ownView, viewOf } from "./views";
import { batteryMoved, wrongUnit } from "./walks";

const args = ["--batch", "-f", "package-initialize", "-l", join(root, "tests/clients/emacs.el")];

test.each([["a battery moved", batteryMoved], ["a wrong unit after wide characters", wrongUnit]])("Emacs sees what any client sees: %s", async (_, walk) => {
  const own = await ownView(walk());
  expect(own.edited.length).toBeGreaterThan(0);
  expect(await viewOf("emacs", args, walk())).toEqual(own);
}, 60_000);
