import js from "@eslint/js";
import next from "@next/eslint-plugin-next";
import { defineConfig, globalIgnores } from "eslint/config";
import hooks from "eslint-plugin-react-hooks";
import tseslint from "typescript-eslint";

/** Programs that speak to a person in a terminal; everything else is silent. */
const COMMANDS = ["lib/commands/**", "tests/all-checks.ts", "tests/bench/**", "tests/journeys/*-command.ts"];

/** What would make the same workshop give another plan tomorrow, or on another machine. */
const UNSTEADY = [
  ["NewExpression[callee.name='Date'][arguments.length=0]", "the clock: the caller knows which day it is"],
  ["MemberExpression[object.name='Date'][property.name='now']", "the clock: the caller knows which day it is"],
  ["MemberExpression[object.name='Math'][property.name='random']", "randomness: the same workshop, the same plan"],
  [
    "MemberExpression[object.name='process'][property.name=/^(env|argv|cwd|platform|hrtime|version)$/]",
    "the environment: what a plan depends on comes in as plain data",
  ],
  ["ClassDeclaration", "classes: the domain is plain functions of plain data"],
].map(([selector, what]) => ({ selector, message: `lib/domain does without ${what}.` }));

export default defineConfig(
  globalIgnores([
    ".next/**",
    ".playwright/**",
    "coverage/**",
    "data/**",
    "lib/store/generated/**",
    "next-env.d.ts",
    "pictures/**",
    "test-results/**",
  ]),
  { linterOptions: { reportUnusedDisableDirectives: "error", reportUnusedInlineConfigs: "error" } },
  js.configs.recommended,
  tseslint.configs.strictTypeChecked,
  { languageOptions: { parserOptions: { projectService: true, tsconfigRootDir: import.meta.dirname } } },
  {
    rules: {
      "no-console": "error",
      "@typescript-eslint/restrict-template-expressions": ["error", { allowNumber: true }],
      // Names and ids are counted and ordered by code point, which is what spreading a string gives.
      "@typescript-eslint/no-misused-spread": ["error", { allow: ["string"] }],
      // `() => deed()` and `return refuse(…)` where nothing is given back read well and hide nothing.
      "@typescript-eslint/no-confusing-void-expression": [
        "error",
        { ignoreArrowShorthand: true, ignoreVoidReturningFunctions: true },
      ],
      // The rule does not see that a whole number with its unit is still a bigint.
      "@typescript-eslint/no-unsafe-unary-minus": "off",
      // Leaving a key out is written by naming it.
      "@typescript-eslint/no-unused-vars": [
        "error",
        { argsIgnorePattern: "^_", varsIgnorePattern: "^_", ignoreRestSiblings: true },
      ],
      // A new kind of a union must fail to compile wherever it is told apart, so no switch over one has a default.
      "@typescript-eslint/switch-exhaustiveness-check": ["error", { allowDefaultCaseForExhaustiveSwitch: false }],
    },
  },
  {
    files: ["app/**/*.{ts,tsx}"],
    plugins: { "react-hooks": hooks, "@next/next": next },
    rules: {
      ...hooks.configs.flat.recommended.rules,
      ...next.configs.recommended.rules,
      ...next.configs["core-web-vitals"].rules,
    },
  },
  {
    files: ["app/**/*.{ts,tsx}", "lib/**/*.ts"],
    rules: {
      "max-lines": ["error", { max: 250 }],
      "max-lines-per-function": ["error", { max: 60, skipBlankLines: true, skipComments: true }],
    },
  },
  { files: ["lib/domain/**"], rules: { "no-restricted-syntax": ["error", ...UNSTEADY] } },
  // Playwright reads from an empty pattern that a fixture asks for no other.
  { files: ["tests/journeys/**"], rules: { "no-empty-pattern": ["error", { allowObjectPatternsAsParameters: true }] } },
  // `quantity` is the one place that gives a bare whole number its unit: the parameter is what the caller asks for.
  { files: ["lib/domain/quantity.ts"], rules: { "@typescript-eslint/no-unnecessary-type-parameters": "off" } },
  // Watch the console to fail a test that used it, and use it to show that they do.
  { files: ["tests/helpers/quiet-console.ts", "tests/journeys/watch.spec.ts"], rules: { "no-console": "off" } },
  { files: COMMANDS, rules: { "no-console": "off" } },
  { files: ["**/*.{js,cjs,mjs}"], extends: [tseslint.configs.disableTypeChecked] },
);
