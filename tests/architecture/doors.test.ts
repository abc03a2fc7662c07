import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import type { ICruiseResult } from "dependency-cruiser";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { PROJECT } from "./project-files";

interface Edge {
  readonly door: string;
  readonly file: string;
  readonly asks: string;
}

const edge = (door: string, file: string, asks: string): Edge => ({ door, file, asks });

/** Imports that must be caught, at least one for every door. Each stands in a file of its own. */
const CAUGHT: readonly Edge[] = [
  edge("domain-asks-nobody", "lib/domain/asks-edge.ts", "@/lib/edge/report"),
  edge("domain-asks-nobody", "lib/domain/asks-store.ts", "@/lib/store/books"),
  edge("domain-asks-nobody", "lib/domain/asks-package.ts", "zod"),
  edge("domain-asks-nobody", "lib/domain/asks-node.ts", "node:fs"),
  edge("domain-asks-nobody", "lib/domain/asks-screen.ts", "react"),
  edge("dinero-in-money-alone", "lib/domain/asks-dinero.ts", "dinero.js/bigint"),
  edge("dinero-in-money-alone", "lib/edge/asks-dinero.ts", "dinero.js/bigint"),
  edge("edge-asks-domain", "lib/edge/asks-store.ts", "@/lib/store/books"),
  edge("edge-asks-domain", "lib/edge/asks-operation.ts", "@/lib/operations/open-workshop"),
  edge("edge-asks-domain", "lib/edge/asks-screen.ts", "react"),
  edge("store-asks-domain", "lib/store/asks-edge.ts", "@/lib/edge/report"),
  edge("store-asks-domain", "lib/store/asks-operation.ts", "@/lib/operations/open-workshop"),
  edge("prisma-in-store-alone", "app/cost/asks-prisma.tsx", "@prisma/client"),
  edge("prisma-in-store-alone", "lib/operations/asks-sql.ts", "better-sqlite3"),
  edge("prisma-in-store-alone", "lib/commands/asks-rows.ts", "@/lib/store/generated/client"),
  edge("prisma-in-store-alone", "instrumentation.ts", "better-sqlite3"),
  edge("solver-asks-domain", "lib/solver/asks-operation.ts", "@/lib/operations/open-workshop"),
  edge("solver-asks-domain", "lib/solver/asks-store.ts", "@/lib/store/books"),
  edge("highs-in-solver-alone", "lib/domain/asks-highs.ts", "highs"),
  edge("highs-in-solver-alone", "lib/operations/asks-highs.ts", "highs"),
  edge("commands-ask-no-solver", "lib/commands/asks-solver.ts", "@/lib/solver/solved-basket"),
  edge("operations-ask-store-and-domain", "lib/operations/asks-edge.ts", "@/lib/edge/report"),
  edge("operations-ask-store-and-domain", "lib/operations/asks-screen.ts", "next/cache"),
  edge("lib-does-not-know-the-app", "lib/store/asks-app.ts", "@/app/plan-for-page"),
  edge("commands-are-the-end-of-a-line", "app/week/asks-command.ts", "@/lib/commands/report"),
  edge("pages-only-read", "app/cost/page.tsx", "@/lib/operations/open-workshop"),
  edge("pages-only-read", "app/cost/_parts/asks-operation.tsx", "@/lib/operations/open-workshop"),
  edge("actions-parse-and-hand-on", "app/shelf/actions.ts", "@/lib/store/books"),
  edge("actions-parse-and-hand-on", "app/actions.ts", "@/lib/domain/plan"),
  edge("parts-take-values", "app/_parts/asks-store.tsx", "@/lib/store/books"),
  edge("parts-take-values", "app/week/_parts/asks-store.tsx", "@/lib/store/books"),
  edge("parts-take-values", "app/_ui/asks-store.tsx", "@/lib/store/books"),
  edge("ui-knows-no-place", "app/_ui/asks-place.tsx", "@/app/cost/_parts/working"),
  edge("places-do-not-share-parts", "app/week/asks-cost.tsx", "@/app/cost/_parts/working"),
  edge("no-tests-in-the-house", "lib/edge/asks-tests.ts", "@/tests/helpers/notation"),
  edge("no-development-packages", "lib/commands/asks-development.ts", "vitest"),
  edge("no-circles", "lib/domain/one-way.ts", "./other-way"),
  edge("every-import-is-found", "lib/edge/asks-nobody.ts", "@/lib/edge/nowhere"),
];

/** Imports that the architecture means to happen. */
const ALLOWED: readonly Edge[] = [
  edge("", "lib/domain/money.ts", "dinero.js/bigint"),
  edge("", "lib/domain/costing.ts", "./plan"),
  edge("", "lib/edge/asks-domain.ts", "@/lib/domain/plan"),
  edge("", "lib/edge/asks-zod.ts", "zod"),
  edge("", "lib/store/asks-prisma.ts", "@prisma/client"),
  edge("", "lib/operations/asks-store.ts", "@/lib/store/books"),
  edge("", "lib/operations/asks-solver.ts", "@/lib/solver/solved-basket"),
  edge("", "lib/solver/asks-highs.ts", "highs"),
  edge("", "lib/commands/asks-store.ts", "@/lib/store/books"),
  edge("", "app/week/page.tsx", "@/lib/store/books"),
  edge("", "app/week/actions.ts", "@/lib/operations/open-workshop"),
  edge("", "app/buying/buying-for-page.ts", "@/lib/operations/open-workshop"),
  edge("", "app/cost/uses-own-part.tsx", "@/app/cost/_parts/working"),
  edge("", "app/cost/_parts/asks-ui.tsx", "@/app/_ui/ledger"),
];

/** What an import in the small tree leads to; `nowhere` is left out on purpose. */
const TARGETS = [
  "lib/domain/plan.ts",
  "lib/edge/report.ts",
  "lib/store/books.ts",
  "lib/store/generated/client.ts",
  "lib/operations/open-workshop.ts",
  "lib/solver/solved-basket.ts",
  "lib/commands/report.ts",
  "app/plan-for-page.ts",
  "app/cost/_parts/working.tsx",
  "app/_ui/ledger.tsx",
  "tests/helpers/notation.ts",
];
const PACKAGES = [
  "zod/index",
  "dinero.js/bigint",
  "@prisma/client/index",
  "better-sqlite3/index",
  "react/index",
  "next/cache",
  "highs/index",
];

describe("doors", () => {
  const tree = mkdtempSync(join(tmpdir(), "stillroom-doors-"));
  let caught: ICruiseResult;

  beforeAll(() => {
    buildTree(tree);
    caught = cruise(tree, ["app", "lib", "tests", "instrumentation.ts"]);
  });
  afterAll(() => {
    rmSync(tree, { recursive: true });
  });

  test("no import of the project goes through a wall, and the project was read", () => {
    const result = cruise(PROJECT, ["app", "lib", "tests", "*.ts"]);
    // With a TypeScript that the reader does not know it reads nothing, and nothing breaks no rule.
    expect(result.summary.totalCruised).toBeGreaterThan(10);
    expect(result.modules.flatMap((module) => module.dependencies).length).toBeGreaterThan(10);
    expect(result.summary.violations.map(({ rule, from, to }) => `${rule.name}: ${from} asks ${to}`)).toEqual([]);
  });

  test("every door has a reason and an import that it catches", () => {
    const doors = caught.summary.ruleSetUsed?.forbidden ?? [];
    const names = doors.map(({ name }) => name);
    expect([...new Set(CAUGHT.map(({ door }) => door))].sort()).toEqual([...names].sort());
    expect(doors.filter(({ comment }) => (comment ?? "").length < 40)).toEqual([]);
  });

  test.each(CAUGHT)("$door catches $file asking $asks", ({ door, file, asks }) => {
    expect(violationsOf(caught, file), `${file} asks ${asks}`).toContain(door);
  });

  test.each(ALLOWED)("$file may ask $asks", ({ file }) => {
    expect(violationsOf(caught, file)).toEqual([]);
  });
});

const violationsOf = (result: ICruiseResult, file: string): readonly string[] =>
  result.summary.violations.filter(({ from }) => from === file).map(({ rule }) => rule.name);

/** Reads a tree with the project's doors, as `npm run doors` does from a terminal. */
function cruise(folder: string, what: readonly string[]): ICruiseResult {
  const program = join(PROJECT, "node_modules/dependency-cruiser/bin/dependency-cruise.mjs");
  const config = join(PROJECT, ".dependency-cruiser.mjs");
  const ran = spawnSync(process.execPath, [program, "--config", config, "--output-type", "json", ...what], {
    cwd: folder,
    encoding: "utf8",
    maxBuffer: 256 * 1024 * 1024,
  });
  if (!ran.stdout.startsWith("{")) throw new Error(`the imports could not be read: ${ran.stdout}${ran.stderr}`);
  return JSON.parse(ran.stdout) as ICruiseResult;
}

function buildTree(tree: string): void {
  const put = (path: string, text: string) => {
    mkdirSync(dirname(join(tree, path)), { recursive: true });
    writeFileSync(join(tree, path), text);
  };
  put("tsconfig.json", JSON.stringify({ compilerOptions: { moduleResolution: "bundler", paths: { "@/*": ["./*"] } } }));
  const dependencies = Object.fromEntries(PACKAGES.map((path) => [packageOf(path), "1.0.0"]));
  put("package.json", JSON.stringify({ name: "tree", dependencies, devDependencies: { vitest: "1.0.0" } }));
  for (const path of [...PACKAGES, "vitest/index"]) {
    put(`node_modules/${path}.js`, "export const it = 1;\n");
    put(`node_modules/${packageOf(path)}/package.json`, JSON.stringify({ name: packageOf(path), version: "1.0.0" }));
  }
  for (const path of TARGETS) put(path, "export const it = 1;\n");
  put("lib/domain/other-way.ts", 'export { mine as it } from "./one-way";\n');
  for (const { file, asks } of [...CAUGHT, ...ALLOWED]) {
    put(file, `import { it } from "${asks}";\nexport const mine = it;\n`);
  }
}

const packageOf = (path: string): string =>
  path
    .split("/")
    .slice(0, path.startsWith("@") ? 2 : 1)
    .join("/");
