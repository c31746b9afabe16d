import { nearest } from "../../grammar/nearest";
import type { WaiveNode } from "../../grammar/tree";
import type { Finding } from "../../shared/finding";
import { writtenHere, type Model } from "../model/model";
import { isTextCode, rewrite } from "../model/problems";
import { descendants, type Instance } from "../model/resolve/instance";

/**
 * Takes out what the design waives: a waiver at the top silences its check everywhere, one in a block what is found in
 * that block or in a copy of it. One that silences nothing is itself a finding, once all is known (`complete`).
 */
export function applyWaivers(findings: readonly Finding[], model: Model, codes: readonly string[], complete: boolean): Finding[] {
  const silenced = new Set<Finding>();
  const needless = new Set<WaiveNode>();
  const needed = new Set<WaiveNode>();
  for (const holder of [model.file.root, ...descendants(model.file.root)]) {
    for (const { node, file } of holder.waives) {
      const code = node.check?.text;
      if (code === undefined) continue;
      if (!codes.includes(code)) {
        if (file === model.file) unknownCode(node, code, model, codes);
        continue;
      }
      const hit = findings.filter((finding) => finding.code === code && covers(holder, finding, model));
      hit.forEach((finding) => silenced.add(finding));
      if (hit.length > 0) needed.add(node);
      else if (file === model.file) needless.add(node);
    }
  }
  for (const node of complete ? needless : []) {
    if (needed.has(node)) continue;
    model.problems.add("waiver_without_effect", "warning", model.file, node.check!, `nothing here needs ${node.check!.text} waived; remove it`,
      [rewrite(model.file, node, "Remove the waiver", "")]);
  }
  return findings.filter((finding) => !silenced.has(finding));
}

/** Does a finding stand in the block, or where this file brought it in? */
function covers(holder: Instance, { place }: Finding, model: Model): boolean {
  const node = writtenHere(holder, model.file)?.node;
  return !node || (place.start >= node.start && place.end <= node.end);
}

function unknownCode(node: WaiveNode, code: string, model: Model, codes: readonly string[]): void {
  const near = nearest(code, codes);
  const message = isTextCode(code) ? `${code} is about the text itself and can't be waived`
    : `there is no check "${code}"${near ? `; did you mean ${near}?` : ""}`;
  model.problems.add("unknown_name", "error", model.file, node.check!, message,
    near ? [rewrite(model.file, node.check!, `Write ${near}`, near)] : undefined);
}
