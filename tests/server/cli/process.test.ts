import { spawn } from "node:child_process";
import { rmSync } from "node:fs";
import { dirname } from "node:path";
import { afterAll, beforeAll, expect, test, vi } from "vitest";
import { LspClient } from "../../clients/lsp-client";
import { bundle } from "../bundle";
import { glider } from "../editor/designs";
import { Folder } from "./io";

vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });

let cli = "";
let folder: Folder;

beforeAll(() => {
  cli = bundle("server/cli/main.ts");
  folder = new Folder({ "a.airframe": glider, "b.airframe": "item a { weight = 9 ; at = (0 mm, 0 mm, 0 mm) }\n" });
});
afterAll(() => {
  folder.remove();
  rmSync(dirname(cli), { recursive: true, force: true });
});

/** The process as a shell runs it. `close`: its reader goes away after the first piece. */
function inShell(argv: readonly string[], stdin = "", close = false): Promise<{ code: number | null; out: string; err: string }> {
  return new Promise((done) => {
    const child = spawn(process.execPath, [cli, ...argv], { cwd: folder.path });
    let out = "";
    let err = "";
    child.stdout.on("data", (chunk: Buffer) => {
      out += chunk.toString();
      if (close) child.stdout.destroy();
    });
    child.stderr.on("data", (chunk: Buffer) => (err += chunk.toString()));
    child.once("close", (code) => done({ code, out, err }));
    child.stdin.end(stdin);
  });
}

test("exit codes and streams reach the shell", async () => {
  expect(await inShell(["check", "a.airframe"])).toMatchObject({ code: 0, err: "" });
  expect((await inShell(["check", "b.airframe"])).code).toBe(1);
  expect(await inShell(["check", "c.airframe"])).toMatchObject({ code: 2, out: "", err: expect.stringContaining("there is no file c.airframe") as string });
});

test("a design comes in over standard input, without colours in a pipe", async () => {
  const { code, out } = await inShell(["check", "-"], "item a { weight = 9 ; at = (0 mm, 0 mm, 0 mm) }\n");
  expect(code).toBe(1);
  expect(out).toContain("missing_unit");
  expect(out).not.toContain("\u001b");
});

test("a reader that goes away early is no fault", async () => {
  expect((await inShell(["figures", "a.airframe"], "", true)).err).toBe("");
});

test("serve is the language server", async () => {
  const { client } = await LspClient.start({ command: [process.execPath, cli, "serve", "--stdio"] });
  client.open("file:///field/a.airframe", "let arm = 1 m\n", 3);
  expect((await client.diagnostics("file:///field/a.airframe", 3)).diagnostics.map((each) => each.code)).toContain("unused_let");
  expect(await client.stop()).toBe(0);
});
