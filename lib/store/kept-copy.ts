import { closeSync, existsSync, fsyncSync, openSync, readdirSync, renameSync, rmSync } from "node:fs";
import path from "node:path";
import { openReader } from "./connection";

/**
 * Writes the last committed state of a store into a new file beside it, `stillroom-kept-2026-11-25T121530.db`, by the
 * computer's own clock. Whoever is about to change the store calls this while holding its write lock, so that what is
 * kept is exactly what is given up. A copy that is cut short is never left under the final name.
 * @returns the copy's path
 */
export async function keepCopy(file: string, now: Date): Promise<string> {
  const kept = unusedName(file, now);
  const unfinished = `${kept}.unfinished`;
  clearUnfinished(file);
  const reader = await openReader(file);
  try {
    await reader.alone((sql) => sql.run("VACUUM INTO ?", unfinished));
  } finally {
    await reader.close();
  }
  flush(unfinished);
  renameSync(unfinished, kept);
  return kept;
}

/** Takes away what a copy that was killed has left. Only who holds the write lock copies, so that none is under way. */
function clearUnfinished(file: string): void {
  const { dir, name } = path.parse(file);
  readdirSync(dir)
    .filter((found) => found.startsWith(`${name}-kept-`) && found.includes(".unfinished"))
    .forEach((found) => {
      rmSync(path.join(dir, found), { force: true });
    });
}

function unusedName(file: string, now: Date): string {
  const { dir, name, ext } = path.parse(file);
  const stem = path.join(dir, `${name}-kept-${stamp(now)}`);
  for (let count = 1; ; count += 1) {
    const candidate = count === 1 ? `${stem}${ext}` : `${stem}-${String(count)}${ext}`;
    if (!existsSync(candidate)) return candidate;
  }
}

function stamp(now: Date): string {
  const two = (part: number): string => String(part).padStart(2, "0");
  const date = [String(now.getFullYear()), two(now.getMonth() + 1), two(now.getDate())].join("-");
  return `${date}T${two(now.getHours())}${two(now.getMinutes())}${two(now.getSeconds())}`;
}

function flush(file: string): void {
  const handle = openSync(file, "r+");
  fsyncSync(handle);
  closeSync(handle);
}
