import type { ReactNode } from "react";
import { midSentence } from "@/app/_ui/sentence";
import type { BenchNote, NoteOf } from "@/lib/domain/bench/batch";
import { NOTE_WORDS } from "@/lib/edge/bench-words";
import { countShown, dayShown } from "@/lib/edge/figures";
import { NO_BREAK } from "@/lib/edge/shown-digits";
import type { BatchOnPage } from "../batch-for-page";
import { type Grams, momentShown } from "./record-words";

/** All that was written down in a batch, in its order; what was struck stays. @rule BENCH-4 */
export function Written({ found, grams }: { readonly found: BatchOnPage; readonly grams: Grams }): ReactNode {
  const { batch } = found;
  const struck = new Set(batch.notes.flatMap((note) => (note.kind === "struck" ? [note.strikes] : [])));
  return (
    <section aria-labelledby="written">
      <h2 id="written">All that was written down</h2>
      <ol className="record-notes">
        <li>
          <b>Started</b> {momentShown(batch.startedAt)}, {batch.startedBy}
          {batch.despite !== null && `: although the checks warned, ${batch.despite}`}
        </li>
        {batch.notes.map((note) => (
          <li key={note.key} className={struck.has(note.key) ? "struck" : ""}>
            <b>{NOTE_WORDS[note.kind]}</b> {momentShown(note.at)}, {note.who}: {saidOf(note, found, grams)}
            {struck.has(note.key) && " (struck)"}
          </li>
        ))}
      </ol>
    </section>
  );
}

function saidOf(note: BenchNote, { batch, workshop, today }: BatchOnPage, grams: Grams): string {
  const because = "why" in note && note.why !== null ? `; ${note.why}` : "";
  switch (note.kind) {
    case "weighed": {
      const line = batch.lines.find(({ key }) => key === note.line);
      const lot = note.lot === null ? "" : `, lot ${note.lot}`;
      const gross =
        note.gross !== null && note.tare !== null ? ` (${grams(note.gross)} less the vessel, ${grams(note.tare)})` : "";
      return `${line?.called ?? ""} ${grams(note.net)}${gross}${lot}${note.more ? ", more follows" : ""}${because}`;
    }
    case "added": {
      const named = note.called ?? workshop.materials.find(({ id }) => id === note.material)?.name ?? note.material;
      return `${named} ${grams(note.net)}, lot ${note.lot ?? ""}${because}`;
    }
    case "struck": {
      const of = batch.notes.find(({ key }) => key === note.strikes);
      return `${of ? midSentence(NOTE_WORDS[of.kind]) : "a note"} of ${of ? momentShown(of.at) : ""}${because}`;
    }
    case "temperature":
      return `${note.celsius}${NO_BREAK}°C${note.phase === null ? "" : ` in phase ${note.phase}`}${meterOf(note, today)}`;
    case "acidity":
      return `${note.ph}${meterOf(note, today)}`;
    case "seen":
      return `${note.what}: ${note.found}`;
    case "checked":
      return `${note.what}, asked ${note.asked}: ${note.found}${note.within ? "" : ", not as asked"}${because}`;
    case "recoded":
      return `batch ${note.code}${because}`;
    case "closed":
      return `${countShown(note.units)} units${note.held ? ", held for a second look" : ""}${because}${reasonsOf(note)}`;
    case "released":
      return `${note.why ?? "nothing further"}${reasonsOf(note)}`;
    case "rejected":
      return note.why ?? "nothing further";
    case "annexed":
      return note.found;
  }
}

/** Each thing that was asked about, with the reason that was given. */
const reasonsOf = (note: Partial<Pick<NoteOf<"closed">, keyof typeof REASON_WORDS>>): string =>
  (Object.keys(REASON_WORDS) as (keyof typeof REASON_WORDS)[])
    .flatMap((name) => (note[name] == null ? [] : [`; ${REASON_WORDS[name]}: ${note[name]}`]))
    .join("");

const REASON_WORDS = {
  whyNotWeighed: "lines not weighed to the end",
  whyMoreFilled: "more filled than was weighed",
  whyOutOfDate: "a lot that was out of date",
  whyNotChecked: "not checked",
} as const;

function meterOf(
  { meter, calibrated }: Pick<NoteOf<"acidity">, "meter" | "calibrated">,
  today: BatchOnPage["today"],
): string {
  const by = meter === null ? "" : `, by ${meter}`;
  return calibrated === null ? by : `${by}, calibrated ${dayShown(calibrated, today, { year: true, weekday: false })}`;
}
