import { nearest } from "../../grammar/nearest";
import type { WaiveNode } from "../../grammar/tree";
import type { Finding } from "../../shared/finding";
import type { Model } from "../model/model";
import { rewrite } from "../model/problems";
import { descendants, type Instance } from "../model/resolve/instance";

interface Waiver {
  readonly node: WaiveNode;
  readonly holder: Instance;
}

/**
 * Takes out what the design waives: a waiver at the top silences its check everywhere, one in a block what is found in
 * that block. One that silences nothing is itself a finding, once all is known (`complete`).
 */
export function applyWaivers(findings: readonly Finding[], model: Model, codes: readonly string[], complete: boolean): Finding[] {
  const waivers = [model.file.root, ...descendants(model.file.root)]
    .filter((block) => block.file === model.file)
    .flatMap((holder) => holder.waives.map((node): Waiver => ({ node, holder })));
  const silenced = new Set<Finding>();
  for (const { node, holder } of waivers) {
    const code = node.check?.text;
    if (!node.check || code === undefined) continue;
    if (!codes.includes(code)) {
      unknownCode(node, code, model, codes);
      continue;
    }
    const hit = findings.filter((finding) => finding.code === code && covers(holder, finding));
    hit.forEach((finding) => silenced.add(finding));
    if (complete && hit.length === 0) {
      model.problems.add("waiver_without_effect", "warning", model.file, node.check, `nothing here needs ${code} waived; remove it`,
        [rewrite(model.file, node, "Remove the waiver", "")]);
    }
  }
  return findings.filter((finding) => !silenced.has(finding));
}

const covers = (holder: Instance, { place }: Finding): boolean =>
  !holder.node || (place.start >= holder.node.start && place.end <= holder.node.end);

function unknownCode(node: WaiveNode, code: string, model: Model, codes: readonly string[]): void {
  const near = nearest(code, codes);
  model.problems.add("unknown_name", "error", model.file, node.check!, `there is no check "${code}"${near ? `; did you mean ${near}?` : ""}`,
    near ? [rewrite(model.file, node.check!, `Write ${near}`, near)] : undefined);
}
