import { window, workspace } from "vscode";
import { language } from "./documents";
import glider from "./templates/glider.airframe";
import tailless from "./templates/tailless.airframe";
import trainer from "./templates/trainer.airframe";

const templates = [
  { label: "Trainer", detail: "High wing, tailplane and fin, one motor in the nose.", text: trainer },
  { label: "Glider", detail: "Long wing in two panels, V-tail, no motor.", text: glider },
  { label: "Tailless", detail: "Swept wing with elevons and winglets, pusher.", text: tailless },
] as const;

/** Opens an unsaved design to start from. */
export async function newDesign(): Promise<void> {
  const picked = await window.showQuickPick(templates, { title: "New design", placeHolder: "Start from which template?" });
  if (!picked) return;
  await window.showTextDocument(await workspace.openTextDocument({ language, content: picked.text }));
}
