import type { Range } from "vscode-languageserver";
import type { Finding, Fix } from "../../shared/finding";
import { spanOf } from "../lines";
import type { View } from "./view";

/** A fix that is offered, with the finding it mends. */
export interface Offer {
  readonly finding: Finding;
  readonly fix: Fix;
  /** Is it the only one there is? */
  readonly only: boolean;
}

/** The fixes of findings that touch a range, in the order of the text. */
export function fixesIn(view: View, range: Range): Offer[] {
  const { start, end } = spanOf(view.parsed, range);
  return view.analysis.findings
    .filter(({ place }) => place.file === view.uri && place.start <= end && start <= place.end)
    .flatMap((finding) => (finding.fixes ?? []).map((fix) => ({ finding, fix, only: finding.fixes?.length === 1 })));
}
