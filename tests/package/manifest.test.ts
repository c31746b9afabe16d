import { execFileSync } from "node:child_process";
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import manifest from "../../package.json";

const root = resolve(import.meta.dirname, "../..");
const read = (path: string): string => readFileSync(join(root, path), "utf8");
const { contributes } = manifest;

/** The client's own code, without its bundled packages. */
const clientCode = readdirSync(join(root, "client")).filter((name) => name.endsWith(".ts")).map((name) => read(`client/${name}`)).join("\n");

describe("manifest", () => {
  test("every file it names is there", () => {
    const language = contributes.languages[0];
    const files = [
      manifest.icon, manifest.main, manifest.bin.sparwright, language.configuration, language.icon.light, language.icon.dark,
      contributes.grammars[0].path, contributes.snippets[0].path,
    ];
    expect(files.filter((file) => !existsSync(join(root, file)))).toEqual([]);
  });

  test("commands are those the client registers, all under one category", () => {
    const registered = [...clientCode.matchAll(/registerCommand\("([^"]+)"/g)].map((match) => match[1]);
    expect(contributes.commands.map((command) => command.command).sort()).toEqual(registered.sort());
    expect(new Set(contributes.commands.map((command) => command.category))).toEqual(new Set(["Sparwright"]));
  });

  test("menus name only its own commands", () => {
    const own = new Set(contributes.commands.map((command) => command.command));
    const used = Object.values(contributes.menus).flat().map((item) => item.command);
    expect(used.filter((command) => !own.has(command))).toEqual([]);
  });

  test("settings have a type, a default of that type and a text", () => {
    for (const [name, setting] of Object.entries(contributes.configuration.properties)) {
      expect(typeof setting.default, name).toBe(setting.type);
      const text = "description" in setting ? setting.description : setting.markdownDescription;
      expect(text.length, name).toBeGreaterThan(20);
    }
  });

  test("it wakes up for its language and its commands alone", () => {
    expect(manifest.activationEvents).toEqual([]);
  });

  test("trust and virtual workspaces are declared", () => {
    expect(manifest.capabilities.untrustedWorkspaces.supported).toBe(true);
    const inBrowser = "browser" in manifest;
    expect(manifest.capabilities.virtualWorkspaces).toEqual(inBrowser ? true : { supported: "limited", description: expect.any(String) as string });
  });

  test("language configuration, highlighting and snippets are JSON of the right sort", () => {
    const grammar = JSON.parse(read(contributes.grammars[0].path)) as { scopeName: string; patterns: unknown[] };
    expect(grammar.scopeName).toBe(contributes.grammars[0].scopeName);
    expect(grammar.patterns.length).toBeGreaterThan(0);
    const configuration = JSON.parse(read(contributes.languages[0].configuration)) as { comments: { lineComment: string } };
    expect(configuration.comments.lineComment).toBe("#");
    const snippets = JSON.parse(read(contributes.snippets[0].path)) as Record<string, { prefix: unknown; body: unknown }>;
    for (const [name, { prefix, body }] of Object.entries(snippets)) {
      expect(prefix, name).toBeTruthy();
      expect(body, name).toBeTruthy();
    }
  });
});

describe("code of the client", () => {
  test("reaches for no network and counts nobody", () => {
    expect(clientCode).not.toMatch(/\bfetch\(|https?:|node:https?|XMLHttpRequest|telemetry/i);
  });

  test("uses no file system but VS Code's", () => {
    expect(clientCode).not.toMatch(/["']node:fs|["']fs["']|\.fsPath/);
  });
});

describe("package", () => {
  const folder = mkdtempSync(join(tmpdir(), "sparwright-vsix-"));
  const vsix = join(folder, "sparwright.vsix");
  let files: readonly string[] = [];

  beforeAll(() => {
    execFileSync(process.execPath, [
      join(root, "node_modules/@vscode/vsce/vsce"), "package", "--no-dependencies", "--allow-missing-repository",
      "--no-rewrite-relative-links", "--out", vsix,
    ], { cwd: root, stdio: ["ignore", "ignore", "pipe"] });
    files = entries(readFileSync(vsix)).filter((name) => name.startsWith("extension/")).map((name) => name.slice("extension/".length));
  }, 60_000);
  afterAll(() => rmSync(folder, { recursive: true }));

  test("holds the bundles, the grammar, the icons and the texts, nothing else", () => {
    const expected = [
      "package.json", "readme.md", "changelog.md", "LICENSE.txt",
      "dist/extension.js", "dist/server.js", "dist/third-party.txt",
      "grammar/language-configuration.json", "grammar/generated/airframe.tmLanguage.json", "grammar/generated/snippets.json",
      "client/icons/sparwright.png", "client/icons/airframe-light.svg", "client/icons/airframe-dark.svg",
      ...("browser" in manifest ? ["dist/web-extension.js", "dist/web-server.js"] : []),
    ];
    expect([...files].sort()).toEqual(expected.sort());
  });

  test("is under 1.5 MB", () => {
    expect(statSync(vsix).size).toBeLessThan(1_500_000);
  });

  test("needs no package at run time but what VS Code and Node give", () => {
    for (const bundle of ["dist/extension.js", "dist/server.js", "dist/cli.js"]) {
      const wanted = [...read(bundle).matchAll(/\brequire\("([^"]+)"\)/g)].map((match) => match[1]);
      const node = /^(node:)?(assert|buffer|child_process|crypto|events|fs|fs\/promises|net|os|path|process|readline|stream|string_decoder|timers|tty|url|util|worker_threads|zlib)$/;
      const strange = wanted.filter((name) => !node.test(name) && !(name === "vscode" && bundle === "dist/extension.js"));
      expect(strange, bundle).toEqual([]);
    }
  });

  test("names every bundled package with its licence text", () => {
    const notices = read("dist/third-party.txt");
    for (const name of ["vscode-languageclient", "vscode-languageserver", "vscode-jsonrpc"]) expect(notices).toContain(`${name} `);
    expect(notices).not.toContain("No licence text");
  });
});

/** Names in a zip archive's central directory (APPNOTE 4.3.12). */
function entries(zip: Buffer): readonly string[] {
  const names: string[] = [];
  let at = zip.lastIndexOf(Buffer.from("PK\u0005\u0006", "latin1"));
  at = zip.readUInt32LE(at + 16);
  while (zip.readUInt32LE(at) === 0x02014b50) {
    const length = zip.readUInt16LE(at + 28);
    names.push(zip.toString("utf8", at + 46, at + 46 + length));
    at += 46 + length + zip.readUInt16LE(at + 30) + zip.readUInt16LE(at + 32);
  }
  return names;
}
