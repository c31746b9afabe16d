import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { type Browser, chromium, type Page } from "playwright-core";
import { find, root } from "./fetch";
import type { Host } from "./host";
import { until } from "./until";

const shots = join(root, ".cache/shots");
const flags = [
  "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
  "--disable-component-update", "--disable-sync",
];

/** What the page knows and Node's types don't. */
interface Styled {
  getComputedStyle(node: unknown): { readonly color: string };
}

/** One VS Code window, used as a person does: by keyboard, and by what is on the screen. */
export class Workbench {
  private constructor(private readonly host: Host, private readonly browser: Browser, readonly page: Page) {}

  /** Opens the host's workspace with one file in the editor. */
  static async open(host: Host, file: string): Promise<Workbench> {
    const browser = await chromium.launch({ executablePath: process.env.CHROMIUM ?? find("chromium"), args: flags });
    const page = await browser.newPage({ viewport: { width: 1280, height: 800 } });
    const remote = `vscode-remote://127.0.0.1:${host.port}${join(host.workspace, file)}`;
    page.setDefaultTimeout(20_000);
    const query = new URLSearchParams({ folder: host.workspace, payload: JSON.stringify([["openFile", remote]]) });
    await page.goto(`http://127.0.0.1:${host.port}/?${query.toString()}`);
    await page.waitForSelector(".monaco-workbench .part.statusbar .statusbar-item", { timeout: 60_000 });
    await page.waitForSelector(".explorer-folders-view .monaco-list", { timeout: 60_000 });
    const workbench = new Workbench(host, browser, page);
    await workbench.waitForTab(file);
    return workbench;
  }

  async close(): Promise<void> {
    await this.browser.close();
  }

  /** Writes a file of the workspace and opens it; each test takes a name of its own. */
  async openFile(name: string, text: string): Promise<void> {
    writeFileSync(join(this.host.workspace, name), text);
    // From the Explorer: quick open remembers what it found before the file was there.
    await this.page.locator(`.explorer-folders-view .monaco-list-row[aria-label^="${name}"]`).dblclick();
    await this.waitForTab(name);
    // Off the text, where resting it would call up hovers.
    await this.page.mouse.move(200, 700);
    await this.focusEditor();
  }

  private async waitForTab(name: string): Promise<void> {
    await this.page.waitForSelector(`.tab.active[data-resource-name="${name}"]`, { timeout: 30_000 });
    await this.page.waitForSelector(".editor-group-container.active .monaco-editor .view-line");
  }

  press(keys: string): Promise<void> {
    return this.page.keyboard.press(keys);
  }

  focusEditor(): Promise<void> {
    return this.press("Control+1");
  }

  /** Line and column from 1. */
  async goTo(line: number, column = 1): Promise<void> {
    await this.focusEditor();
    await this.press("Control+g");
    await this.page.fill(".quick-input-widget input", `:${line}:${column}`);
    await this.press("Enter");
    await this.page.waitForSelector(".quick-input-widget", { state: "hidden" });
    // The box is gone a moment before the editor has the keys again.
    await this.page.waitForSelector(".editor-group-container.active .monaco-editor.focused");
  }

  /** Puts the cursor before the first `mark` of the text. */
  async goToText(text: string, mark: string): Promise<void> {
    const before = text.slice(0, text.indexOf(mark)).split("\n");
    await this.goTo(before.length, before.at(-1)!.length + 1);
  }

  /** As pasted: brackets and quotes are not completed by the editor. */
  type(text: string): Promise<void> {
    return this.page.keyboard.insertText(text);
  }

  /** Changes the first `from` of the text on the screen to `to`, as by selecting it and typing. */
  async change(text: string, from: string, to: string): Promise<void> {
    await this.goToText(text, from);
    for (let i = 0; i < from.length; i++) await this.press("Shift+ArrowRight");
    await this.type(to);
  }

  /** The lines on the screen of the active editor, top to bottom; or of the one beside it. */
  async text(group: "active" | "beside" = "active"): Promise<string> {
    const container = group === "active" ? ".editor-group-container.active" : ".editor-group-container:not(.active)";
    const lines = await this.page.locator(`${container} .monaco-editor .view-line`).evaluateAll((nodes) =>
      nodes.map((node) => ({ top: parseFloat(/top: ?([\d.]+)px/.exec(node.getAttribute("style") ?? "")?.[1] ?? "0"), text: node.textContent ?? "" })));
    return lines.sort((a, b) => a.top - b.top).map((line) => line.text.replace(/\u00a0/g, " ")).join("\n");
  }

  squiggles(kind: "error" | "warning" | "info"): Promise<number> {
    return this.page.locator(`.editor-group-container.active .monaco-editor .squiggly-${kind}`).count();
  }

  /** The colour a word of the text is shown in. */
  async colour(word: string): Promise<string> {
    const span = this.page.locator(".editor-group-container.active .view-line span span", { hasText: word }).first();
    return span.evaluate((node) => (globalThis as unknown as Styled).getComputedStyle(node).color);
  }

  async command(title: string): Promise<void> {
    await this.press("F1");
    await this.page.fill(".quick-input-widget input", `>${title}`);
    await this.pick(title);
  }

  /** Takes the row of the open quick pick that shows `label`. */
  async pick(label: string): Promise<void> {
    await this.page.locator(".quick-input-list .monaco-list-row", { hasText: label }).first().click();
  }

  /** What the Problems view lists, one string a finding, as a screen reader says it. */
  async problems(): Promise<readonly string[]> {
    const panel = this.page.locator(".markers-panel");
    if (!(await panel.isVisible())) await this.press("Control+Shift+m");
    await panel.waitFor();
    const labels = await panel.locator(".monaco-list-row").evaluateAll((rows) => rows.map((row) => row.getAttribute("aria-label") ?? ""));
    await this.focusEditor();
    return labels;
  }

  /** The hover at the cursor, once it holds `part`: the editor's own lines come before the server's. */
  async hover(part: string): Promise<string> {
    await this.press("Control+k");
    await this.press("Control+i");
    const shown = async (): Promise<string> =>
      (await this.page.locator(".monaco-hover:not(.hidden) .hover-contents").allInnerTexts()).join("\n");
    const text = await until(`a hover with "${part}"`, async () => {
      const all = await shown();
      return all.includes(part) && all;
    }, shown);
    await this.press("Escape");
    return text;
  }

  /** What is offered at the cursor, in order, once `part` is among it. */
  async completions(part: string): Promise<readonly string[]> {
    const widget = this.page.locator(".suggest-widget.visible");
    const labels = (): Promise<string[]> => widget.locator(".monaco-list-row .label-name").allInnerTexts();
    let asked = 0;
    const found = await until(`"${part}" among the completions`, async () => {
      // The list goes when the editor loses the keys for a moment; a person asks again.
      if (Date.now() > asked + 3000 && !(await widget.isVisible())) {
        await this.press("Control+Space");
        asked = Date.now();
      }
      const all = await labels();
      return all.includes(part) && all;
    }, async () => (await widget.allInnerTexts()).join("; ") || "no list");
    await this.press("Escape");
    return found;
  }

  /** Applies the offered fix whose title holds `title`. */
  async quickFix(title: string): Promise<void> {
    await this.press("Control+.");
    await this.page.locator(".action-widget .monaco-list-row", { hasText: title }).first().waitFor();
    // By keyboard: the menu lays a sheet over the page that takes the pointer.
    const focused = this.page.locator(".action-widget .monaco-list-row.focused");
    await until(`the fix "${title}" in focus`, async () => {
      if ((await focused.allInnerTexts()).some((text) => text.includes(title))) return true;
      await this.press("ArrowDown");
      return false;
    });
    await this.press("Enter");
    await this.page.waitForSelector(".action-widget", { state: "hidden" });
  }

  /** The extension's status bar item, empty while it is hidden. */
  async status(): Promise<string> {
    const item = this.page.locator(".statusbar-item[id$='sparwright.status']");
    return (await item.count()) > 0 ? (await item.first().innerText()).trim() : "";
  }

  /** Does the status bar say that figures are still being worked out? */
  async working(): Promise<boolean> {
    return (await this.page.locator(".statusbar-item[id$='sparwright.status'] .codicon-sync").count()) > 0;
  }

  async clickStatus(): Promise<void> {
    await this.page.locator(".statusbar-item[id$='sparwright.status'] a").click();
  }

  /** Tabs of all editor groups. */
  tabs(): Promise<string[]> {
    return this.page.locator(".tab .label-name").allInnerTexts();
  }

  async screenshot(name: string): Promise<void> {
    mkdirSync(shots, { recursive: true });
    await this.page.screenshot({ path: join(shots, `${name}.png`) });
  }
}
