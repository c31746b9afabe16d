import { serveStdio } from "./stdio";

serveStdio();
