import { processIo } from "./io";
import { run } from "./run";

void run(process.argv.slice(2), processIo()).then((code) => {
  process.exitCode = code;
});
