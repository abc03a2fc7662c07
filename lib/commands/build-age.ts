import { existsSync, readdirSync, statSync } from "node:fs";
import path from "node:path";

/** What the build is made of. The store's generated client follows from prisma/ and package-lock.json. */
const SOURCES = [
  "app",
  "lib",
  "prisma",
  "public",
  "instrumentation.ts",
  "next.config.mjs",
  "package-lock.json",
  "package.json",
  "proxy.ts",
  "tsconfig.json",
];
const NOT_SOURCES = new Set([path.join("lib", "store", "generated")]);

/** Whether there is no build in the project's folder, or a source is newer than it. */
export function buildIsOld(project: string): boolean {
  const built = path.join(project, ".next", "BUILD_ID");
  if (!existsSync(built)) return true;
  const builtAt = statSync(built).mtimeMs;
  return SOURCES.some((source) => isNewer(project, source, builtAt));
}

/** A folder counts too: what was taken away leaves no other trace. */
function isNewer(project: string, source: string, than: number): boolean {
  const file = path.join(project, source);
  if (NOT_SOURCES.has(source) || !existsSync(file)) return false;
  const found = statSync(file);
  if (found.mtimeMs > than) return true;
  return found.isDirectory() && readdirSync(file).some((name) => isNewer(project, path.join(source, name), than));
}
