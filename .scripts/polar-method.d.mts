export function polarMethod(): Promise<Record<string, string>>;
