/**
 * How long the server takes for a page, and for a change of one run to show on the week and on the shelf. Beside the time
 * until the last byte stands the processor time of the thread that draws pages, which a busy machine lengthens less.
 */
import { readFileSync } from "node:fs";
import { loadavg } from "node:os";
import { daysAfter, isoDate } from "@/lib/domain/calendar";
import type { Run } from "@/lib/domain/workshop";
import bringBuildUpToDate from "../journeys/built";
import { type Opened, serveStore } from "../journeys/server";
import { line, median, TIMES } from "./median-time";

/** A server that was just started compiles what it does most: its first answers are not those of the day. */
const WARM_UPS = 5;
const A_MILLION = 1_000_000;

interface Took {
  readonly wall: number;
  /** Null where the system does not tell. */
  readonly own: number | null;
}

/** Asks and reads to the last byte. */
async function ask(pid: number | undefined, url: URL, sent?: FormData): Promise<Took & { text: string; to: string }> {
  const [before, began] = [processorTime(pid), performance.now()];
  const post = sent && { method: "POST", body: sent, headers: { Origin: url.origin }, redirect: "manual" as const };
  const answer = await fetch(url, post);
  const text = await answer.text();
  const wall = performance.now() - began;
  const after = processorTime(pid);
  if (answer.status >= 400) throw new Error(`${url.pathname} answered ${String(answer.status)}`);
  const own = before === null || after === null ? null : after - before;
  return { wall, own, text, to: answer.headers.get("location") ?? "" };
}

/** What the first thread of a process has taken of a processor, in milliseconds; Linux alone tells. */
function processorTime(pid: number | undefined): number | null {
  try {
    return Number(readFileSync(`/proc/${String(pid)}/schedstat`, "utf8").split(" ")[0]) / A_MILLION;
  } catch {
    return null;
  }
}

function told(what: string, took: readonly Took[], remark = ""): string {
  const own = took.flatMap((each) => each.own ?? []);
  const processor = own.length === 0 ? "" : `${median(own).toFixed(0)} ms of the processor`;
  const remarks = [processor, remark].filter((each) => each !== "").join(", ");
  return line(what, median(took.map(({ wall }) => wall)), remarks);
}

/** The form of a page that has this field, with another value in it, as a browser without scripts sends it. */
function formWith(page: string, field: string, value: string): FormData {
  const form = (page.match(/<form(?:(?!<\/form>).)*<\/form>/gs) ?? []).find((each) => each.includes(`name="${field}"`));
  if (form === undefined) throw new Error(`the page has no form with the field ${field}`);
  const sent = new FormData();
  for (const [, tag = ""] of form.matchAll(/<input ([^>]*)>/g)) {
    const name = /name="([^"]+)"/.exec(tag)?.[1];
    if (name !== undefined) sent.append(name, asText(/value="([^"]*)"/.exec(tag)?.[1] ?? ""));
  }
  sent.set(field, value);
  return sent;
}

const asText = (value: string): string => value.replaceAll("&quot;", '"').replaceAll("&amp;", "&");

/** @param runs  of the opened workshop: each time another is changed */
export async function benchPages(opened: Opened, runs: readonly Run[]): Promise<void> {
  bringBuildUpToDate();
  const app = await serveStore(opened);
  const at = (path: string) => new URL(path, app.url);
  const took = new Map<string, (Took & { readonly text: string })[]>();
  const keep = async (what: string, url: URL, sent?: FormData) => {
    const answer = await ask(app.pid, url, sent);
    took.set(what, [...(took.get(what) ?? []), answer]);
    return answer;
  };
  try {
    const places = ["/cost", "/week", "/shelf"];
    for (let time = 0; time < WARM_UPS; time += 1) for (const place of places) await ask(app.pid, at(place));
    for (let time = 0; time < TIMES; time += 1) for (const place of places) await keep(place, at(place));
    for (let time = 0; time < TIMES; time += 1) {
      const run = runs[time * 7];
      if (run === undefined) throw new Error("the workshop has too few runs");
      const week = at(`/week?of=${isoDate(run.date)}&run=${encodeURIComponent(run.id)}`);
      const changes = [
        ["resized", "size", String(run.units + 1n)],
        ["moved", "date", isoDate(daysAfter(run.date, 1))],
      ] as const;
      for (const [deed, field, value] of changes) {
        const { text } = await ask(app.pid, week);
        const { to } = await keep(`a run ${deed}: the change itself`, week, formWith(text, field, value));
        if (to === "") throw new Error(`a run was not ${deed}`);
        await keep(`a run ${deed}: the week after it`, at(to));
        await keep(`a run ${deed}: the shelf after it`, at("/shelf"));
      }
    }
  } finally {
    await app.stop();
  }
  console.log(`\nPages, of a machine with a load of ${loadavg()[0]?.toFixed(1) ?? "unknown size"}`);
  for (const [what, each] of took) {
    const size = each[0]?.text.length ?? 0;
    console.log(told(what, each, size === 0 ? "" : `${String(Math.round(size / 1000))} kB`));
  }
}
