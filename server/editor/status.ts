import type { ShownFigure, StatusParams } from "../../shared/protocol";
import type { Severity } from "../../shared/finding";
import type { View } from "./view";

/** The headline of a design. `severities` are those its findings are shown with. */
export function status(view: View, version: number, severities: readonly Severity[]): StatusParams {
  const { analysis, set } = view;
  const shown = (name: string): ShownFigure | undefined => {
    const figure = set.get(name);
    return figure && { text: analysis.say(figure.quantity, figure.entry.style) };
  };
  return {
    uri: view.uri, version, loading: set.loading.name, loadings: analysis.sets.map((each) => each.loading.name),
    mass: shown("mass.total"), staticMargin: shown("stability.static_margin"), thrustToWeight: shown("power.thrust_to_weight"),
    state: !analysis.complete && !analysis.stopped ? "working" : severities.includes("error") ? "error" : severities.includes("warning") ? "warning" : "ok",
  };
}
