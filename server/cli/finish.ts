import type { Analysis } from "../analysis";
import { PolarWave } from "../polar-wave";
import type { AirframeService } from "../service";
import type { Io } from "./io";

/** Polars are worked out so long, ms, before it is told how far they are and the event loop turns. */
const telling = 100;

/** Works designs out whole, polars included; on a terminal it says how far it is if that takes over a second. */
export async function finishAll(
  designs: readonly Analysis[], { polars }: AirframeService, { progress }: Pick<Io, "progress">, now = () => performance.now(),
): Promise<void> {
  const wave = new PolarWave(polars, now, (line) => progress?.(line && `Section polars: ${line}`));
  for (let left = designs; left.length > 0; left = left.filter(({ complete }) => !complete)) {
    for (const analysis of left) for (const _ of analysis.finish()) void _;
    const wants = left.flatMap(({ wanted }) => wanted);
    do {
      wave.work(wants, telling);
      await new Promise((done) => setImmediate(done));
    } while (!wave.has(wants));
  }
  wave.end();
}
