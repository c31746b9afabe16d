// Which folder may import from which: the arrows of the architecture, checked by the lint run.
import { posix, relative, sep } from "node:path";
import { root } from "./install.mjs";

/** First match wins. `packages` are those a folder may use; left out, any. */
const arrows = [
  { folder: "grammar", from: ["grammar"], packages: ["chevrotain", "zod"] },
  { folder: "shared", from: ["shared", "grammar"], packages: ["zod"] },
  { folder: "server/compute", from: ["server/compute", "server/model/design", "grammar/units"], packages: [] },
  { folder: "server/model", from: ["server/model", "grammar", "shared"], packages: ["zod"] },
  { folder: "server/figures", from: ["server/figures", "server/compute", "server/model", "grammar", "shared"], packages: ["zod"] },
  { folder: "server/checks", from: ["server/checks", "server/figures", "server/compute", "server/model", "grammar", "shared"], packages: ["zod"] },
  { folder: "server/cli", from: ["server", "grammar", "shared", "package.json"] },
  { folder: "server", from: ["server", "grammar", "shared", "package.json"], not: ["server/cli"] },
  { folder: "client", from: ["client", "shared"] },
];

const within = (path, folder) => path === folder || path.startsWith(`${folder}/`);

export const arrowsRule = {
  meta: { type: "problem", schema: [] },
  create(context) {
    const file = relative(root, context.filename).split(sep).join("/");
    const arrow = arrows.find(({ folder }) => within(file, folder));
    if (!arrow) return {};
    const check = (node) => {
      const name = node.source?.value;
      if (typeof name !== "string") return;
      if (name.startsWith(".")) {
        const target = posix.normalize(posix.join(posix.dirname(file), name));
        const allowed = arrow.from.some((folder) => within(target, folder)) && !arrow.not?.some((folder) => within(target, folder));
        if (!allowed) context.report({ node, message: `${arrow.folder} must not import ${target}.` });
      } else if (arrow.packages && !arrow.packages.includes(name.split("/")[0])) {
        context.report({ node, message: `${arrow.folder} must not import the package ${name}.` });
      }
    };
    return { ImportDeclaration: check, ImportExpression: check, ExportAllDeclaration: check, ExportNamedDeclaration: check };
  },
};
