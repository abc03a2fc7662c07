import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";

const at = (path: string) => fileURLToPath(new URL(path, import.meta.url));

const testsIn = (...rooms: readonly string[]) => rooms.map((room) => `tests/${room}/**/*.test.ts`);
const RECKONING = testsIn("agreement", "domain", "edge", "laws", "outside");
const HOUSE = testsIn("architecture");

export default defineConfig({
  resolve: { alias: { "server-only": at("./tests/helpers/nothing.ts"), "@": at(".") } },
  test: {
    exclude: ["tests/journeys/**", "tests/bench/**"],
    pool: "forks",
    projects: [
      // Nothing is kept in these rooms between one call and the next: the files share a process, which reads the code once.
      { extends: true, test: { name: "reckoning", include: RECKONING, isolate: false } },
      // better-sqlite3 is a native addon; a process for each file keeps one test's store out of another's.
      { extends: true, test: { name: "keeping", include: testsIn("*"), exclude: [...RECKONING, ...HOUSE] } },
      { extends: true, test: { name: "house", include: HOUSE } },
    ],
    maxWorkers: 2,
    setupFiles: ["tests/helpers/quiet-console.ts"],
    // A busy machine must not fail what is right: the longest test takes ten seconds where nothing else runs.
    testTimeout: 180_000,
    hookTimeout: 60_000,
  },
});
