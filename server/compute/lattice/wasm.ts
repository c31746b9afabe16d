/** Of WebAssembly's own interface, which no library of types here declares, what is used. */
interface WebAssemblyLike {
  readonly Module: new (bytes: Uint8Array) => object;
  readonly Instance: new (module: object, imports: object) => { readonly exports: object };
}

/** What every compiled module has. */
export interface Exports {
  readonly memory: { readonly buffer: ArrayBuffer };
}

/** A fresh instance of a module in base64; undefined where WebAssembly or its vectors of two numbers are missing. */
export function instantiate<T extends Exports>(module: string): T | undefined {
  const { WebAssembly } = globalThis as { WebAssembly?: WebAssemblyLike };
  if (!WebAssembly) return undefined;
  try {
    const bytes = Uint8Array.from(atob(module), (letter) => letter.charCodeAt(0));
    return new WebAssembly.Instance(new WebAssembly.Module(bytes), {}).exports as T;
  } catch {
    return undefined;
  }
}
