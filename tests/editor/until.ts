/** Asks again until `look` gives something other than undefined or false; the error says what was waited for and last seen. */
export async function until<T>(
  what: string, look: () => Promise<T | undefined | false>, seen?: () => Promise<unknown>, limit = 20_000,
): Promise<T> {
  const deadline = Date.now() + limit;
  for (;;) {
    const found = await look();
    if (found !== undefined && found !== false) return found;
    if (Date.now() > deadline) {
      const last = seen ? `; seen: ${JSON.stringify(await seen())}` : "";
      throw new Error(`waited ${limit / 1000} s for ${what}${last}`);
    }
    await new Promise((done) => setTimeout(done, 50));
  }
}
