/**
 * Remembers dear computations by their SI inputs, across edits and loadings: moving the battery finds the lattice
 * solved. Holds the latest `most` answers of each kind. `misses` counts what was asked for in vain: an answer during whose
 * making it grows rests on too little, and is not remembered.
 */
export class Memory {
  private readonly shelves = new Map<string, Map<string, unknown>>();

  constructor(private readonly most = 64, private readonly misses: () => number = () => 0) {}

  /** The answer for these inputs, worked out if it isn't known. `inputs` are plain data. */
  recall<T>(kind: string, inputs: unknown, work: () => T): T {
    const steps = this.recallSteps<T>(kind, inputs, function* () {
      return work();
    });
    const step = steps.next();
    return step.value as T;
  }

  /** The same for work that pauses between its steps; a known answer takes none. Abandoned work is not remembered. */
  *recallSteps<T>(kind: string, inputs: unknown, work: () => Generator<void, T>): Generator<void, T> {
    let shelf = this.shelves.get(kind);
    if (!shelf) this.shelves.set(kind, (shelf = new Map()));
    const key = JSON.stringify(inputs);
    if (shelf.has(key)) {
      const known = shelf.get(key) as T;
      shelf.delete(key);
      shelf.set(key, known);
      return known;
    }
    const before = this.misses();
    const answer = yield* work();
    if (this.misses() !== before) return answer;
    shelf.set(key, answer);
    if (shelf.size > this.most) shelf.delete(shelf.keys().next().value!);
    return answer;
  }
}
