import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";

const at = (path: string) => fileURLToPath(new URL(path, import.meta.url));

export default defineConfig({
  resolve: { alias: { "server-only": at("./tests/helpers/nothing.ts"), "@": at(".") } },
  test: {
    include: ["tests/**/*.test.ts"],
    exclude: ["tests/journeys/**", "tests/bench/**"],
    // better-sqlite3 is a native addon; a process for each file keeps one test's store out of another's.
    pool: "forks",
    maxWorkers: 2,
    setupFiles: ["tests/helpers/quiet-console.ts"],
    // A busy machine must not fail what is right: the longest test takes ten seconds where nothing else runs.
    testTimeout: 180_000,
    hookTimeout: 60_000,
  },
});
