import type { ShownFigure, StatusParams } from "../shared/protocol";

const icons = { ok: "", warning: "$(warning) ", error: "$(error) ", working: "$(sync~spin) " } as const;

/** `survey · 2.31 kg · margin 11 % · T/W 0.82`: without the bands, which the tooltip has; what a design hasn't is left out. */
export function statusText(status: StatusParams): string {
  const { loading, mass, staticMargin, thrustToWeight, state } = status;
  const parts = [
    loading,
    mass && nominal(mass),
    staticMargin && `margin ${nominal(staticMargin)}`,
    thrustToWeight && `T/W ${nominal(thrustToWeight)}`,
  ];
  return icons[state] + parts.filter(Boolean).join(" · ");
}

const nominal = ({ text }: ShownFigure): string => text.replace(/ ± .*/, "");

/** Markdown: the same figures in words, and the other loadings. */
export function statusTooltip(status: StatusParams): string {
  const rows = [
    ["Mass", status.mass],
    ["Static margin", status.staticMargin],
    ["Thrust to weight", status.thrustToWeight],
  ] as const;
  const figures = rows.flatMap(([name, figure]) => (figure ? [`| ${name} | ${plain(figure.text)} |`] : []));
  const others = status.loadings.filter((name) => name !== status.loading).map(plain);
  return [
    `**Loading ${plain(status.loading)}**`,
    ...(figures.length > 0 ? [["| | |", "|---|---|", ...figures].join("\n")] : []),
    ...(others.length > 0 ? [`Other loadings: ${others.join(", ")}. Click to choose.`] : []),
    ...(status.state === "working" ? ["Some figures are still being worked out."] : []),
  ].join("\n\n");
}

const plain = (text: string): string => text.replace(/[\\`*_{}[\]()#+!|<>~]/g, "\\$&");
