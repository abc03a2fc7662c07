import type { ReactNode } from "react";
import { midSentence } from "@/app/_ui/sentence";
import type { BenchNote, NoteOf } from "@/lib/domain/bench/batch";
import { NOTE_WORDS } from "@/lib/edge/bench-words";
import { checksAsked, isMeasured } from "@/lib/domain/bench/asked-checks";
import { formulaAsStarted } from "@/lib/domain/bench/started-as";
import { dayShown } from "@/lib/edge/figures";
import { unitsInWords } from "@/lib/edge/forms/posting-forms";
import { NO_BREAK } from "@/lib/edge/shown-digits";
import type { BatchOnPage } from "../batch-for-page";
import { addedCalled } from "./record-weights";
import { type Grams, timeShown, timesFrom } from "./record-words";

/** All that was written down in a batch, in its order; what was struck stays. @rule BENCH-4 */
export function Written({ found, grams }: { readonly found: BatchOnPage; readonly grams: Grams }): ReactNode {
  const { batch } = found;
  const struck = new Set(batch.notes.flatMap((note) => (note.kind === "struck" ? [note.strikes] : [])));
  return (
    <section aria-labelledby="written">
      <h2 id="written">All that was written down</h2>
      <table className="ledger record-notes">
        <caption>{timesFrom(batch.startedAt)}</caption>
        <thead>
          <tr>
            <th scope="col">Time</th>
            <th scope="col">What</th>
            <th scope="col" className="number">
              Figure
            </th>
            <th scope="col">Who</th>
          </tr>
        </thead>
        <tbody>
          <tr>
            <td>{timeShown(batch.startedAt, batch.startedAt)}</td>
            <td>
              <b>Started</b>
              {batch.despite !== null && `: although the checks warned, ${batch.despite}`}
            </td>
            <td className="number" />
            <td>{batch.startedBy}</td>
          </tr>
          {batch.notes.map((note) => (
            <NoteRow key={note.key} note={note} found={found} grams={grams} isStruck={struck.has(note.key)} />
          ))}
        </tbody>
      </table>
    </section>
  );
}

function NoteRow({
  note,
  found,
  grams,
  isStruck,
}: {
  readonly note: BenchNote;
  readonly found: BatchOnPage;
  readonly grams: Grams;
  readonly isStruck: boolean;
}): ReactNode {
  const { says, figure } = saidOf(note, found, grams);
  return (
    <tr className={isStruck ? "struck" : ""}>
      <td>{timeShown(note.at, found.batch.startedAt)}</td>
      <td>
        <b>{NOTE_WORDS[note.kind]}</b>
        {says !== "" && `: ${says}`}
        {isStruck && " (struck)"}
      </td>
      <td className="number">{figure}</td>
      <td>{note.who}</td>
    </tr>
  );
}

interface SaidOf {
  readonly says: string;
  readonly figure?: string;
}

function saidOf(note: BenchNote, found: BatchOnPage, grams: Grams): SaidOf {
  const { batch, workshop, today } = found;
  const because = "why" in note && note.why !== null ? `; ${note.why}` : "";
  switch (note.kind) {
    case "weighed": {
      const line = batch.lines.find(({ key }) => key === note.line);
      const lot = note.lot === null ? "" : `, lot ${note.lot}`;
      const gross =
        note.gross !== null && note.tare !== null ? ` (${grams(note.gross)} less the vessel, ${grams(note.tare)})` : "";
      return {
        says: `${line?.called ?? ""}${lot}${gross}${note.more ? ", more follows" : ""}${because}`,
        figure: grams(note.net),
      };
    }
    case "added":
      return { says: `${addedCalled(note, workshop)}, lot ${note.lot ?? ""}${because}`, figure: grams(note.net) };
    case "struck": {
      const of = batch.notes.find(({ key }) => key === note.strikes);
      const what = of ? midSentence(NOTE_WORDS[of.kind]) : "a note";
      return { says: `${what} of ${of ? timeShown(of.at, batch.startedAt) : ""}${because}` };
    }
    case "temperature":
      return {
        says: [note.phase === null ? "" : `in phase ${note.phase}`, meterOf(note, today)].filter(Boolean).join(", "),
        figure: `${note.celsius}${NO_BREAK}°C`,
      };
    case "acidity":
      return { says: meterOf(note, today), figure: note.ph };
    case "seen":
      return { says: `${note.what}: ${note.found}` };
    case "checked":
      return checkedSaid(note, found);
    case "recoded":
      return { says: `batch ${note.code}${because}` };
    case "closed":
      return {
        says: `${note.held ? "held for a second look" : "not held"}${because}${reasonsOf(note)}`,
        figure: unitsInWords(note.units),
      };
    case "released":
      return { says: `${note.why ?? "nothing further"}${reasonsOf(note)}` };
    case "rejected":
      return { says: note.why ?? "nothing further" };
    case "annexed":
      return { says: note.found };
  }
}

/** A figure stands in its column with its unit; what was seen stands among the words. */
function checkedSaid({ what, asked, found, within, why }: NoteOf<"checked">, books: BatchOnPage): SaidOf {
  const check = checksAsked(formulaAsStarted(books, books.batch)).find((each) => each.what === what);
  const isFigure = check !== undefined && isMeasured(check);
  const because = why === null ? "" : `; ${why}`;
  const says = `${what}, asked ${asked}${isFigure ? "" : `: ${found}`}${within ? "" : ", not as asked"}${because}`;
  if (!isFigure) return { says };
  return { says, figure: check.unit === null ? found : `${found}${NO_BREAK}${check.unit}` };
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
  const by = meter === null ? "" : `by ${meter}`;
  if (calibrated === null) return by;
  return `${by === "" ? "" : `${by}, `}calibrated ${dayShown(calibrated, today, { year: true, weekday: false })}`;
}
