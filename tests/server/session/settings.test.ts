import { expect, test } from "vitest";
import { Documents } from "../../../server/session/documents";
import { Files } from "../../../server/session/files";
import { readSettings, SettingsStore } from "../../../server/session/settings";
import { defaultSettings } from "../../../shared/protocol";

test("settings nobody can understand leave what was", () => {
  for (const nonsense of [null, undefined, 3, "x", [], { units: "cubits", severities: 7, loading: [] }]) expect(readSettings(nonsense)).toEqual(defaultSettings);
  expect(readSettings({ units: "imperial", severities: { a: "off", b: "loud" } })).toEqual({ units: "imperial", severities: { a: "off" }, loading: "" });
});

test("what is told for all holds until a document has its own", () => {
  const store = new SettingsStore();
  store.takeAll({ sparwright: { loading: "ferry" } });
  store.takeAll({ units: "imperial" });
  expect(store.of("a")).toEqual({ units: "imperial", severities: {}, loading: "ferry" });
  expect(store.take("a", { loading: "home" })).toBe(true);
  expect(store.take("a", { loading: "home" })).toBe(false);
  expect(store.of("a").loading).toBe("home");
  expect(store.of("b").loading).toBe("ferry");
});

test("each change is of the text the one before it left", () => {
  const documents = new Documents();
  documents.set("a", 1, "one\ntwo\n");
  const line = (n: number, character = 0) => ({ line: n, character });
  const changes = documents.change("a", 2, [
    { range: { start: line(0), end: line(0) }, text: "zero\n" },
    { range: { start: line(1), end: line(1, 3) }, text: "1" },
    { text: "whole" },
  ]);
  expect(changes).toEqual([{ start: 0, end: 0, length: 5 }, { start: 5, end: 8, length: 1 }, { start: 0, end: 11, length: 5 }]);
  expect(documents.get("a")?.getText()).toBe("whole");
  expect(documents.change("b", 1, [])).toBeUndefined();
});

test("a file the client is asked for comes later, once, and is looked at again when it changes", async () => {
  const arrived: string[] = [];
  const asked: string[] = [];
  const files = new Files(undefined, (uri) => arrived.push(uri));
  files.askClient((uri) => {
    asked.push(uri);
    return Promise.resolve(uri === "b" ? "text" : undefined);
  });
  expect(files.text("b")).toBeUndefined();
  expect(files.text("b")).toBeUndefined();
  expect(files.pending(["b"])).toBe(true);
  await Promise.resolve();
  expect(arrived).toEqual(["b"]);
  expect(files.pending(["b"])).toBe(false);
  expect(files.text("b")).toBe("text");
  files.forget("b");
  expect(files.text("b")).toBeUndefined();
  expect(asked).toEqual(["b", "b"]);
});

test("a client that never answers is not waited for twice", () => {
  const files = new Files(undefined, () => undefined);
  files.askClient(() => new Promise(() => undefined));
  files.text("b");
  files.giveUp(["b"]);
  expect(files.pending(["b"])).toBe(false);
  expect(files.text("b")).toBeUndefined();
  expect(files.pending(["b"])).toBe(false);
});

test("own files that changed on disk are noticed without a watcher", () => {
  let stamp = "1";
  const files = new Files({ read: () => `text ${stamp}`, stamp: () => stamp, designs: () => [] }, () => undefined);
  expect(files.text("a")).toBe("text 1");
  expect(files.changed()).toEqual([]);
  stamp = "2";
  expect(files.changed()).toEqual(["a"]);
  files.forget("a");
  expect(files.text("a")).toBe("text 2");
});
