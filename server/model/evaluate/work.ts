/** One value to be worked out: what it is called, how it is done, and how it is said that it can't be. */
interface Task<T> {
  readonly name: () => string;
  readonly run: () => T | undefined;
  readonly refuse: (message: string) => void;
}

/** So many values may rest on each other in a row; more would use up the stack. */
const deepest = 200;

/** Stand for a value that is being worked out, and for one that there is not. */
const busy = Symbol("busy");
const nothing = Symbol("nothing");

/** Works each value out once, and refuses those that come back to themselves. */
export class Work {
  private readonly open: { readonly known: object; readonly key: string; readonly name: () => string }[] = [];
  private tooDeep = false;

  /** The value remembered under `key` in `known`, worked out if it isn't there yet. */
  once<T>(known: Map<string, unknown>, key: string, task: Task<T>): T | undefined {
    const before = known.get(key);
    if (before === busy) return this.circle(known, key, task);
    if (before !== undefined) return before === nothing ? undefined : (before as T);
    const { open } = this;
    if (open.length >= deepest) {
      // The rest of the row would say the same again.
      if (!this.tooDeep) task.refuse(`${task.name()} rests on more than ${deepest} values, one upon the other; write one of them as a number`);
      this.tooDeep = true;
      return undefined;
    }
    known.set(key, busy);
    open.push({ known, key, name: task.name });
    const value = task.run();
    open.pop();
    known.set(key, value ?? nothing);
    return value;
  }

  private circle<T>(known: object, key: string, task: Task<T>): undefined {
    const start = this.open.findIndex((other) => other.known === known && other.key === key);
    const [first, ...others] = new Set(this.open.slice(start).map((other) => other.name()));
    const way = others.length === 0 ? "" : `, by way of ${others.join(", ")}`;
    task.refuse(`${first} rests on itself${way}; write one of them as a number`);
  }
}
