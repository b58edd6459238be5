import { defineConfig } from "eslint/config";
import tseslint from "typescript-eslint";

// Everything but src/cli runs anywhere and depends on its arguments alone: no Node, no browser, no
// clock, no chance, no locale. The type checker (tests/tsconfig.core.json) knows most of these names
// not to exist; this says why.
const AMBIENT = [
  "Buffer",
  "URL",
  "__dirname",
  "console",
  "crypto",
  "document",
  "fetch",
  "global",
  "globalThis",
  "localStorage",
  "navigator",
  "performance",
  "process",
  "queueMicrotask",
  "require",
  "self",
  "setImmediate",
  "setInterval",
  "setTimeout",
  "window",
];
const HIDDEN_INPUTS = [
  ["Date", "now", "a clock is a parameter"],
  ["Math", "random", "chance is a seeded parameter"],
  ["Intl", "NumberFormat", "the locale must not decide what is written"],
  ["Intl", "DateTimeFormat", "the locale must not decide what is written"],
  ["Intl", "Collator", "the locale must not decide an order"],
];
const NO_DEFAULT_EXPORT = {
  selector: "ExportDefaultDeclaration, ExportSpecifier[exported.name='default']",
  message: "Exports have names.",
};
const NO_STAR_EXPORT = {
  selector: "ExportAllDeclaration",
  message: "Doors list their names; no `export *`.",
};
const NO_PROCESS_EXIT = {
  selector: "CallExpression[callee.object.name='process'][callee.property.name='exit']",
  message: "process.exit cuts piped output at 64 KiB: set process.exitCode.",
};
const NO_HIDDEN_CLOCK = [
  {
    selector: "NewExpression[callee.name='Date'][arguments.length=0]",
    message: "A clock is a parameter.",
  },
  {
    selector: "CallExpression[callee.property.name=/^(localeCompare|toLocale\\w*)$/]",
    message: "The locale must not decide an order or a text.",
  },
];
const NODE_NAMES = [
  "Buffer",
  "TextDecoder",
  "TextEncoder",
  "URL",
  "clearTimeout",
  "console",
  "performance",
  "process",
  "setImmediate",
  "setTimeout",
];

export default defineConfig(
  { ignores: ["dist/**", "fixtures/**", "node_modules/**"] },
  { linterOptions: { reportUnusedDisableDirectives: "error" } },
  {
    files: ["**/*.ts"],
    extends: [tseslint.configs.recommendedTypeChecked],
    languageOptions: {
      parserOptions: { project: "tests/tsconfig.json", tsconfigRootDir: import.meta.dirname },
    },
    rules: {
      "@typescript-eslint/consistent-type-imports": ["error", { fixStyle: "separate-type-imports" }],
      "@typescript-eslint/consistent-type-exports": "error",
      "@typescript-eslint/explicit-module-boundary-types": "error",
      "@typescript-eslint/no-import-type-side-effects": "error",
      "@typescript-eslint/no-unnecessary-condition": ["error", { allowConstantLoopConditions: true }],
      "@typescript-eslint/no-unnecessary-type-arguments": "error",
      "@typescript-eslint/prefer-readonly": "error",
      "@typescript-eslint/require-array-sort-compare": ["error", { ignoreStringArrays: true }],
      "@typescript-eslint/switch-exhaustiveness-check": [
        "error",
        { considerDefaultExhaustiveForUnions: true },
      ],
      // Numbers are what these texts are made of.
      "@typescript-eslint/restrict-template-expressions": [
        "error",
        { allowNumber: true, allowBoolean: true },
      ],
      // Indexing inside a bound that the loop has just checked is read with `!`.
      "@typescript-eslint/no-non-null-assertion": "off",
      eqeqeq: ["error", "always"],
      "no-console": "error",
      "no-control-regex": "off",
      "no-restricted-syntax": ["error", NO_STAR_EXPORT, NO_DEFAULT_EXPORT, NO_PROCESS_EXIT],
      "prefer-const": "error",
    },
  },
  {
    files: ["src/**/*.ts"],
    ignores: ["src/cli/**"],
    rules: {
      "no-restricted-globals": [
        "error",
        ...AMBIENT.map((name) => ({ name, message: "Only src/cli knows the machine it runs on." })),
      ],
      "no-restricted-properties": [
        "error",
        ...HIDDEN_INPUTS.map(([object, property, message]) => ({ object, property, message })),
      ],
      "no-restricted-imports": [
        "error",
        { patterns: [{ group: ["node:*"], message: "Only src/cli knows the machine it runs on." }] },
      ],
      "no-restricted-syntax": [
        "error",
        NO_STAR_EXPORT,
        NO_DEFAULT_EXPORT,
        NO_PROCESS_EXIT,
        ...NO_HIDDEN_CLOCK,
      ],
    },
  },
  {
    files: ["tests/**/*.ts"],
    rules: {
      // Figures read from JSON and data meant to be wrong are the daily bread of tests.
      "@typescript-eslint/no-unnecessary-condition": "off",
      "@typescript-eslint/explicit-module-boundary-types": "off",
      "@typescript-eslint/require-await": "off",
      "no-console": "off",
    },
  },
  {
    files: ["**/*.js"],
    extends: [tseslint.configs.base],
    languageOptions: {
      sourceType: "module",
      globals: Object.fromEntries(NODE_NAMES.map((name) => [name, "readonly"])),
    },
    rules: {
      eqeqeq: ["error", "always"],
      "no-constant-binary-expression": "error",
      "no-dupe-keys": "error",
      "no-fallthrough": "error",
      "no-redeclare": "error",
      "no-restricted-syntax": ["error", NO_STAR_EXPORT, NO_DEFAULT_EXPORT, NO_PROCESS_EXIT],
      "no-undef": "error",
      "no-unreachable": "error",
      "no-unused-vars": "error",
      "no-var": "error",
      "prefer-const": "error",
    },
  },
  {
    files: ["bin/*.js"],
    languageOptions: {
      sourceType: "commonjs",
      globals: { require: "readonly", __dirname: "readonly", process: "readonly" },
    },
  },
  { files: ["tests/vitest.config.ts", ".eslint.config.js"], rules: { "no-restricted-syntax": "off" } },
);
