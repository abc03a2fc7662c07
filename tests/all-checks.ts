/**
 * Everything that has to hold before a change is kept, in one command. The first step that fails ends it, once what
 * runs beside it has come to its end.
 * Types, lint, format, migrations and build count as one check each; tests and journeys count one by one.
 * The last line is `N passed, N failed`; the exit status is 0 only where nothing failed.
 */
import { spawn } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { findBrowser } from "./journeys/browser";
import { npmProgram, PROJECT } from "./journeys/server";

interface Count {
  readonly passed: number;
  readonly failed: number;
  /** Those among the passed that failed at first and passed when they were tried again, by name. */
  readonly again?: readonly string[];
}

/** What of Playwright's report is read here: a file's suite, or one inside it. */
interface Suite {
  readonly suites?: readonly Suite[];
  readonly specs: readonly { readonly title: string; readonly tests: readonly { readonly status: string }[] }[];
}

interface Step {
  readonly name: string;
  readonly script: string;
  /** How the step's own report is asked for and counted; without one the step is one check. */
  readonly report?: {
    readonly args: (file: string) => readonly string[];
    readonly environment: (file: string) => Record<string, string>;
    readonly count: (report: unknown) => Count;
  };
}

interface Ended {
  readonly count: Count;
  readonly said: string;
}

const LINES_OF_A_FAILURE = 200;
const scratch = mkdtempSync(join(tmpdir(), "stillroom-checks-"));

const vitest = {
  args: (file: string) => ["--reporter=default", "--reporter=json", `--outputFile.json=${file}`],
  environment: () => ({}),
  count: (report: unknown): Count => {
    const { numPassedTests, numTotalTests, success } = report as Record<string, number>;
    const passed = numPassedTests ?? 0;
    // A test that did not run did not pass, and a file that could not be read has no tests to fail.
    const others = (numTotalTests ?? 0) - passed;
    return { passed, failed: success ? others : Math.max(others, 1) };
  },
};

const playwright = {
  args: () => ["--reporter=list,json"],
  environment: (file: string) => ({ PLAYWRIGHT_JSON_OUTPUT_FILE: file }),
  count: (report: unknown): Count => {
    const { stats, errors, suites } = report as {
      readonly stats: Readonly<Record<string, number>>;
      readonly errors: readonly unknown[];
      readonly suites: readonly Suite[];
    };
    const failed = (stats.unexpected ?? 0) + (stats.skipped ?? 0);
    return {
      passed: (stats.expected ?? 0) + (stats.flaky ?? 0),
      failed: Math.max(failed, errors.length > 0 ? 1 : 0),
      again: suites.flatMap(passedAgain),
    };
  },
};

const passedAgain = ({ suites = [], specs }: Suite): readonly string[] => [
  ...specs.filter(({ tests }) => tests.some(({ status }) => status === "flaky")).map(({ title }) => title),
  ...suites.flatMap(passedAgain),
];

type Lane = readonly Step[];

/**
 * Stages in order, and in a stage its lanes beside one another: most of their steps keep one processor busy. Lint reads
 * the types of the routes that the types step writes, so the two share a lane, and has read them long before the build
 * writes them again. The unit tests keep every processor busy by themselves, and fill what the other lane leaves; the
 * journeys are given all of them.
 */
const STAGES: readonly (readonly Lane[])[] = [
  [
    [
      { name: "types", script: "typecheck" },
      { name: "lint", script: "lint" },
    ],
    [
      { name: "format", script: "format:check" },
      { name: "doors", script: "doors", report: vitest },
      { name: "migrations", script: "db:check" },
      { name: "build", script: "build" },
      { name: "unit tests", script: "test:unit", report: vitest },
    ],
  ],
  [[{ name: "journeys", script: "test:journeys", report: playwright }]],
];

async function runAll(): Promise<Count> {
  const browser = findBrowser();
  if (browser.kind === "none") {
    console.log(browser.message);
    return { passed: 0, failed: 1 };
  }
  const ended = new Map<Step, Ended>();
  const isFailing = () => [...ended.values()].some(({ count }) => count.failed > 0);
  const runLane = async (lane: Lane) => {
    for (const step of lane) if (!isFailing()) ended.set(step, await runTimed(step));
  };
  for (const lanes of STAGES) await Promise.all(lanes.map(runLane));
  for (const [step, { count, said }] of ended) if (count.failed > 0) tellFailure(step, said);
  const left = STAGES.flat(2).filter((step) => !ended.has(step));
  if (left.length > 0) console.log(`Not run: ${left.map(({ name }) => name).join(", ")}.`);
  const sum = (key: "passed" | "failed") => [...ended.values()].reduce((total, { count }) => total + count[key], 0);
  return { passed: sum("passed"), failed: sum("failed") };
}

async function runTimed(step: Step): Promise<Ended> {
  const began = performance.now();
  const ended = await run(step);
  const seconds = ((performance.now() - began) / 1000).toFixed(1);
  const { passed, failed, again = [] } = ended.count;
  const told = again.map((name) => `\n            failed at first, passed when tried again: ${name}`).join("");
  // In one piece, since another lane writes its lines too.
  console.log(`${step.name.padEnd(12)}${String(passed)} passed, ${String(failed)} failed, ${seconds} s${told}`);
  return ended;
}

function tellFailure({ name, script }: Step, said: string): void {
  console.log(`\n${said.trimEnd().split("\n").slice(-LINES_OF_A_FAILURE).join("\n")}`);
  console.log(`\nStopped at ${name}; run it alone with: npm run ${script}`);
}

async function run({ script, report }: Step): Promise<Ended> {
  const file = join(scratch, `${script.replaceAll(":", "-")}.json`);
  const [program, npm] = npmProgram();
  const args = [...npm, "run", "--silent", script, ...(report ? ["--", ...report.args(file)] : [])];
  const { status, said } = await output(program, args, report?.environment(file) ?? {});
  if (report && existsSync(file)) {
    const count = report.count(JSON.parse(readFileSync(file, "utf8")));
    return { count: { ...count, failed: status === 0 ? count.failed : Math.max(count.failed, 1) }, said };
  }
  // A step that was to report and did not has failed, whatever its exit status says.
  const passed = status === 0 && !report;
  return { count: passed ? { passed: 1, failed: 0 } : { passed: 0, failed: 1 }, said };
}

const output = (program: string, args: readonly string[], extra: Record<string, string>) =>
  new Promise<{ readonly status: number | null; readonly said: string }>((end, failed) => {
    const environment: NodeJS.ProcessEnv = {
      ...process.env,
      // The checks must never open the store that a maker works with.
      STILLROOM_STORE: join(scratch, "stillroom.db"),
      NEXT_TELEMETRY_DISABLED: "1",
      NO_COLOR: "1",
      ...extra,
    };
    delete environment.PORT;
    // Node warns where both of the two are set.
    delete environment.FORCE_COLOR;
    const child = spawn(program, args, { cwd: PROJECT, env: environment, stdio: ["ignore", "pipe", "pipe"] });
    const said: string[] = [];
    child.stdout.on("data", (text: Buffer) => said.push(text.toString()));
    child.stderr.on("data", (text: Buffer) => said.push(text.toString()));
    child.once("error", failed);
    child.once("close", (status) => {
      end({ status, said: said.join("") });
    });
  });

const { passed, failed } = await runAll().finally(() => {
  rmSync(scratch, { recursive: true, force: true });
});
console.log(`\n${String(passed)} passed, ${String(failed)} failed`);
process.exitCode = failed === 0 && passed > 0 ? 0 : 1;
