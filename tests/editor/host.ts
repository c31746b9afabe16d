import { execFileSync, spawn, type ChildProcess } from "node:child_process";
import { existsSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { connect, createServer } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fetchWorkbench, root } from "./fetch";

const settings = {
  "workbench.startupEditor": "none",
  "workbench.secondarySideBar.defaultVisibility": "hidden",
  "chat.disableAIFeatures": true,
  "editor.minimap.enabled": false,
  "extensions.autoUpdate": false,
  "files.autoSave": "off",
  // The names of files and tabs, which would lie over what is clicked next.
  "workbench.hover.delay": 60_000,
  // Quick suggestions would come and go with the machine's load; tests ask for completion by hand.
  "editor.quickSuggestions": { "other": "off", "comments": "off", "strings": "off" },
};

/** A VS Code server on this machine with the packaged extension installed. */
export interface Host {
  readonly port: number;
  /** The folder that is opened; tests write their files into it. */
  readonly workspace: string;
  stop(): void;
}

/** Starts a server on a free port; `vsix` is installed from file, nothing is asked of any gallery. */
export async function startHost(vsix = join(root, "dist/sparwright.vsix")): Promise<Host> {
  if (!existsSync(vsix)) throw new Error(`There is no ${vsix}: run npm run package first.`);
  const server = join(fetchWorkbench(), "out/server-main.js");
  const data = mkdtempSync(join(tmpdir(), "sparwright-host-"));
  const workspace = join(data, "workspace");
  mkdirSync(workspace);
  mkdirSync(join(data, "data/Machine"), { recursive: true });
  writeFileSync(join(data, "data/Machine/settings.json"), JSON.stringify(settings));
  const folders = ["--server-data-dir", data, "--extensions-dir", join(data, "extensions")];
  execFileSync(process.execPath, [server, ...folders, "--install-extension", vsix, "--force"], { stdio: "ignore" });

  const port = await freePort();
  const child = spawn(process.execPath, [
    server, ...folders, "--host", "127.0.0.1", "--port", String(port), "--without-connection-token",
    "--accept-server-license-terms", "--disable-workspace-trust", "--telemetry-level", "off",
  ], { stdio: "ignore", detached: true });
  const stop = (): void => {
    end(child);
    rmSync(data, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 });
  };
  try {
    await answers(port, child);
  } catch (error) {
    stop();
    throw error;
  }
  return { port, workspace, stop };
}

/** Ends the server with the extension hosts and language servers it started: they share its process group. */
function end(child: ChildProcess): void {
  if (child.pid === undefined) return;
  try {
    process.kill(-child.pid, "SIGKILL");
  } catch {
    // It had ended already.
  }
}

function freePort(): Promise<number> {
  return new Promise((done, fail) => {
    const probe = createServer();
    probe.once("error", fail);
    probe.listen(0, "127.0.0.1", () => {
      const address = probe.address();
      probe.close(() => done(typeof address === "object" && address ? address.port : 0));
    });
  });
}

async function answers(port: number, child: ChildProcess): Promise<void> {
  const deadline = Date.now() + 30_000;
  while (Date.now() < deadline) {
    if (child.exitCode !== null) throw new Error(`The VS Code server ended with code ${child.exitCode}.`);
    const open = await new Promise<boolean>((done) => {
      const socket = connect(port, "127.0.0.1", () => { socket.destroy(); done(true); });
      socket.once("error", () => done(false));
    });
    if (open) return;
    await new Promise((done) => setTimeout(done, 100));
  }
  throw new Error("The VS Code server did not answer within 30 s.");
}
