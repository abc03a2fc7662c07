/**
 * Counts how often a process that posts has the system bring the store's log to the disk, by what strace tells of its
 * calls. Only a call that reports success counts, and only what it reports before the posting is acknowledged.
 */
import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";
import path from "node:path";

/** Begins each line with which a posting is told of. */
export const TOLD = "told: ";

export type Counted =
  /** How often the log was synced before each acknowledgement, since the one before. */
  | { readonly kind: "counted"; readonly syncs: readonly number[] }
  /** Nothing on this machine tells of the calls of a process. */
  | { readonly kind: "cannot count"; readonly reason: string };

const CALLS = "trace=fsync,fdatasync,pwrite64,pwritev,pwritev2,write,writev";
const ROOT = path.resolve(import.meta.dirname, "../..");

/** @throws where a posting was acknowledged before all that it wrote to the log was synced, or not every one was told of */
export function countSyncs(store: string, postings: number, tool = "strace"): Counted {
  const probe = spawnSync(tool, ["-qq", "-o", `${store}.probe`, process.execPath, "--version"]);
  if (probe.error ?? probe.status !== 0) {
    return { kind: "cannot count", reason: probe.error?.message ?? probe.stderr.toString().trim() };
  }
  const trace = `${store}.trace`;
  const poster = [process.execPath, "--import", "tsx", "tests/helpers/told-poster.ts", String(postings)];
  // Every thread, files by their names, and enough of a text to know it.
  const ran = spawnSync(tool, ["-f", "-y", "-qq", "-s", "32", "-e", CALLS, "-o", trace, ...poster], {
    cwd: ROOT,
    env: { ...process.env, STILLROOM_STORE: store },
  });
  if (ran.status !== 0) throw new Error(`the process that posts failed: ${ran.stderr.toString()}`);
  const syncs = syncsIn(readFileSync(trace, "utf8"), `${store}-wal`);
  if (syncs.length !== postings)
    throw new Error(`${String(syncs.length)} of ${String(postings)} postings were told of`);
  return { kind: "counted", syncs };
}

/** @throws where something was told of before what was written to the log was synced */
export function syncsIn(trace: string, log: string): readonly number[] {
  const perPosting: number[] = [];
  let [syncs, unsynced] = [0, false];
  for (const { call, on, text, outcome } of callsOf(trace)) {
    if (on === log && call.includes("sync")) {
      if (outcome !== "0") throw new Error(`the log was not brought to the disk: ${call} gave ${outcome}`);
      [syncs, unsynced] = [syncs + 1, false];
    } else if (on === log) {
      unsynced = true;
    } else if (text.startsWith(TOLD)) {
      const name = text.slice(TOLD.length);
      if (unsynced || syncs === 0) throw new Error(`posting ${name} was acknowledged before it was on the disk`);
      perPosting.push(syncs);
      syncs = 0;
    }
  }
  return perPosting;
}

interface Call {
  readonly call: string;
  /** The file's name. */
  readonly on: string;
  /** How what was written begins; else empty. */
  readonly text: string;
  readonly outcome: string;
}

/**
 * The calls of all threads, each where it ended: `7 fdatasync(22</a/b-wal>) = 0`. One that another thread's call
 * interrupts stands in two lines, `7 fdatasync(22</a/b-wal> <unfinished ...>` and `7 <... fdatasync resumed>) = 0`.
 */
function* callsOf(trace: string): Generator<Call> {
  const begun = new Map<string, string>();
  for (const line of trace.split("\n")) {
    const [, thread = "", rest = ""] = /^(\d+) +(.*)$/.exec(line) ?? [];
    const [, beginning] = /^(.*) <unfinished \.\.\.>$/.exec(rest) ?? [];
    if (beginning !== undefined) begun.set(thread, beginning);
    else {
      const [, ending] = /^<\.\.\. \w+ resumed>(.*)$/.exec(rest) ?? [];
      const whole = ending === undefined ? rest : `${begun.get(thread) ?? ""}${ending}`;
      const [, call, on, told, outcome] =
        /^(\w+)\(\d+<([^>]*)>(?:, "((?:[^"\\]|\\.)*)".*)?.*\) += (-?\d+)/.exec(whole) ?? [];
      if (call !== undefined)
        yield { call, on: on ?? "", text: told?.replace(/\\n$/, "") ?? "", outcome: outcome ?? "" };
    }
  }
}
