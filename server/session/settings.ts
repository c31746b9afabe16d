import * as z from "zod";
import { defaultSettings, type Settings, settingsSection } from "../../shared/protocol";

const shape = z.object({
  units: z.enum(["metric", "imperial"]).optional().catch(undefined),
  severities: z.record(z.string(), z.unknown()).optional().catch(undefined),
  loading: z.string().optional().catch(undefined),
});

const severity = z.enum(["error", "warning", "hint", "off"]);

/** What of `given` can be understood, over `base`. */
export function readSettings(given: unknown, base: Settings = defaultSettings): Settings {
  const read = shape.safeParse(given);
  if (!read.success) return base;
  const { units, severities, loading } = read.data;
  const known = severities && Object.fromEntries(Object.entries(severities).flatMap(([code, value]) => {
    const one = severity.safeParse(value);
    return one.success ? [[code, one.data]] : [];
  }));
  return { units: units ?? base.units, severities: known ?? base.severities, loading: loading ?? base.loading };
}

/** How each document is shown: as the client answered for it, else as was told for all. */
export class SettingsStore {
  private base: Settings = defaultSettings;
  private readonly own = new Map<string, Settings>();

  of(uri: string): Settings {
    return this.own.get(uri) ?? this.base;
  }

  /** For all documents: what `initialize` or a change of the configuration brought along, with or without its section. */
  takeAll(given: unknown): void {
    const section = typeof given === "object" && given !== null && settingsSection in given ? (given as Record<string, unknown>)[settingsSection] : given;
    this.base = readSettings(section, this.base);
  }

  /** For one document. True if that changed anything. */
  take(uri: string, given: unknown): boolean {
    const before = JSON.stringify(this.of(uri));
    this.own.set(uri, readSettings(given, this.base));
    return JSON.stringify(this.of(uri)) !== before;
  }

  forget(uri: string): void {
    this.own.delete(uri);
  }
}
