/** Of the web worker's world, where the browser build runs. */
declare class Worker {
  constructor(address: string);
  postMessage(message: unknown): void;
  terminate(): void;
}
