import tseslint from "typescript-eslint";
import { arrowsRule } from "./.scripts/arrows.mjs";

export default tseslint.config(
  { ignores: ["dist/**", "node_modules/**", ".cache/**", "coverage/**", "**/generated/**", "server/**/assembly/**"] },
  ...tseslint.configs.recommended,
  {
    plugins: { sparwright: { rules: { arrows: arrowsRule } } },
    rules: {
      "sparwright/arrows": "error",
      "@typescript-eslint/no-explicit-any": "error",
      "@typescript-eslint/consistent-type-imports": ["error", { fixStyle: "inline-type-imports" }],
      "@typescript-eslint/no-unused-vars": ["error", { argsIgnorePattern: "^_" }],
      eqeqeq: "error",
      "max-lines": ["error", 300],
    },
  },
  {
    // Generated case tables and long transcriptions of published values.
    files: ["tests/**"],
    rules: { "max-lines": ["error", 600] },
  },
);
