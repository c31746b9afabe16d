import { type Connection, DidChangeWatchedFilesNotification, type InitializeResult } from "vscode-languageserver";
import { version } from "../package.json";
import { capabilities } from "./session/capabilities";
import { answerFeatures } from "./session/features";
import { createAirframeService } from "./service";
import type { SessionHost } from "./session/host";
import { Session } from "./session/session";

const serverInfo = { name: "sparwright", version };

/** Serves one client over a connection of any kind. Ends with the connection. `engine` makes what works the texts out. */
export function serve(connection: Connection, host: SessionHost, engine = createAirframeService): void {
  const session = new Session(connection, host, engine);
  connection.onInitialize((params): InitializeResult => {
    session.initialize(params);
    return { capabilities, serverInfo };
  });
  connection.onInitialized(() => {
    if (session.client.folders) {
      connection.workspace.onDidChangeWorkspaceFolders(({ added, removed }) =>
        session.foldersChanged(added.map((folder) => folder.uri), removed.map((folder) => folder.uri)));
    }
    if (!session.client.watch || session.watchedByClient) return;
    const watchers = [{ globPattern: "**/*.{airframe,dat,csv}" }];
    connection.client.register(DidChangeWatchedFilesNotification.type, { watchers }).catch(() => undefined);
  });
  connection.onDidOpenTextDocument(({ textDocument: { uri, version, text } }) => session.open(uri, version, text));
  connection.onDidChangeTextDocument(({ textDocument: { uri, version }, contentChanges }) => session.change(uri, version, contentChanges));
  connection.onDidCloseTextDocument(({ textDocument: { uri } }) => session.close(uri));
  connection.onDidChangeWatchedFiles(({ changes }) => changes.forEach(({ uri }) => session.fileChanged(uri)));
  connection.onDidChangeConfiguration(({ settings }) => session.settingsChanged(settings));
  answerFeatures(connection, session);
  connection.listen();
}
