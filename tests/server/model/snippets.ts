/** A text with what is expected to be found in it, as the files in `faulty` hold them. */
export interface Snippet {
  readonly title: string;
  /** As it stands in its file, marks and expectations included. */
  readonly source: string;
  readonly text: string;
  /** Texts beside it, by name, each from its line `#= name` on. */
  readonly files: Readonly<Record<string, string>>;
  /** Codes that are found too and are not what the snippet is about, each in a line `#~ code`. */
  readonly aside: readonly string[];
}

/** The snippets of a file: each begins with `## title`. */
export function read(source: string): Snippet[] {
  return source.split(/^(?=## )/m).filter((part) => part.startsWith("## ")).map((part) => {
    const whole = part.trimEnd();
    const [title, ...lines] = whole.split("\n");
    const [main, ...others] = lines.join("\n").split(/^#= /m);
    const files = others.map((other): [string, string] => {
      const [name, ...rest] = other.split("\n");
      return [name, rest.join("\n").trimEnd()];
    });
    const aside = main.split("\n").flatMap((line) => (line.startsWith("#~ ") ? [line.slice(3)] : []));
    const text = main.split("\n").filter((line) => !/^#[!>~] /.test(line)).join("\n").replace(/[«»]/g, "").trimEnd();
    return { title: title.slice(3), source: whole, text, files: Object.fromEntries(files), aside };
  });
}
