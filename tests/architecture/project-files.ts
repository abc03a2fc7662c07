/** The files of the project, as git knows them: tracked, or new and not ignored. */
import { execFileSync } from "node:child_process";
import { existsSync, readFileSync } from "node:fs";
import { join, resolve } from "node:path";

export const PROJECT = resolve(import.meta.dirname, "../..");

/** Paths from the project's folder, with forward slashes, in order. */
export const projectFiles: readonly string[] = execFileSync(
  "git",
  ["ls-files", "--cached", "--others", "--exclude-standard", "-z"],
  { cwd: PROJECT, encoding: "utf8", maxBuffer: 16 * 1024 * 1024 },
)
  .split("\0")
  .filter((path) => path !== "" && existsSync(join(PROJECT, path)))
  .sort();

export const filesLike = (pattern: RegExp): readonly string[] => projectFiles.filter((path) => pattern.test(path));

export const textOf = (path: string): string => readFileSync(join(PROJECT, path), "utf8");

/** Each line of these files that matches, as `path:line: text`. */
export const linesLike = (files: readonly string[], pattern: RegExp): readonly string[] =>
  files.flatMap((path) =>
    textOf(path)
      .split("\n")
      .flatMap((line, index) => (pattern.test(line) ? [`${path}:${String(index + 1)}: ${line.trim()}`] : [])),
  );
