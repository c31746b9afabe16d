/**
 * Remembers dear computations by their SI inputs, across edits and loadings: moving the battery finds the lattice
 * solved. Holds the latest `most` answers of each kind, and of those that were not asked for in the last few analyses only a few:
 * a lattice takes megabytes. `misses` counts what was asked for in vain: an answer during whose
 * making it grows rests on too little, and is not remembered.
 */
export class Memory {
  private readonly shelves = new Map<string, Map<string, Kept>>();
  private analyses = 0;

  constructor(private readonly most = 64, private readonly misses: () => number = () => 0) {}

  /** Another analysis begins. */
  begin(): void {
    this.analyses++;
  }

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
    const known = shelf.get(key);
    if (known) {
      shelf.delete(key);
      shelf.set(key, { ...known, used: this.analyses });
      return known.answer as T;
    }
    const before = this.misses();
    const answer = yield* work();
    if (this.misses() !== before) return answer;
    shelf.set(key, { answer, used: this.analyses });
    this.tidy(shelf);
    return answer;
  }

  /** The longest unused stand first. */
  private tidy(shelf: Map<string, Kept>): void {
    for (const [key, { used }] of shelf) {
      const old = shelf.size > few && used < this.analyses - lately;
      if (!old && shelf.size <= this.most) return;
      shelf.delete(key);
    }
  }
}

interface Kept {
  readonly answer: unknown;
  /** The last analysis that asked for it. */
  readonly used: number;
}

/** Kept although unused in this many analyses: what a person who goes back and forth comes back to. */
const [few, lately] = [12, 4];
