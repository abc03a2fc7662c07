import type { ReactNode } from "react";
import { type BenchNote, type NoteOf, standing } from "@/lib/domain/bench/batch";
import { heldBy } from "@/lib/domain/bench/refused-note";
import { judged, type LineWeighed, linesWeighed, massIn } from "@/lib/domain/bench/weights";
import { bulkOf, roundedUpFor } from "@/lib/domain/needs";
import { quantity, type Stock } from "@/lib/domain/quantity";
import { ratio } from "@/lib/domain/fraction";
import { NOTE_WORDS } from "@/lib/edge/bench-words";
import { countShown, dayShown, gramsShown, massInFull, shareShown } from "@/lib/edge/figures";
import type { BatchOnPage } from "../batch-for-page";
import { decimalsOf } from "../bench-on-page";

/**
 * What 21 CFR 211.188(b) lists of a batch production and control record, point by point (read in a summary; the
 * regulation for drugs, which ISO 22716 for cosmetics asks much of as well).
 */
export function BatchRecord({ found }: { readonly found: BatchOnPage }): ReactNode {
  const step = found.workshop.settings.balanceStep.quantity;
  const grams: Grams = (amount) => gramsShown(amount, decimalsOf(step));
  return (
    <div className="record">
      <Weights found={found} grams={grams} />
      <Yield found={found} grams={grams} />
      <Written found={found} grams={grams} />
      <Marks found={found} />
    </div>
  );
}

type Grams = (amount: bigint) => string;

interface Part {
  readonly found: BatchOnPage;
  readonly grams: Grams;
}

function Weights({ found: { batch }, grams }: Part): ReactNode {
  return (
    <section aria-labelledby="components">
      <h2 id="components">Components, lots and weights</h2>
      <table className="ledger record-weights">
        <caption className="unseen">What was weighed against what was to be weighed</caption>
        <thead>
          <tr className="paper-batch-row">
            <th colSpan={6}>Batch {batch.code}</th>
          </tr>
          <tr>
            {["What", "Lot", "Target", "Weighed", "Off by", "When, by whom"].map((head) => (
              <th key={head} scope="col">
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {linesWeighed(batch).map((weighed) => (
            <LineRows key={weighed.line.key} weighed={weighed} grams={grams} />
          ))}
        </tbody>
      </table>
    </section>
  );
}

function LineRows({
  weighed: { line, weights, total },
  grams,
}: {
  readonly weighed: LineWeighed;
  readonly grams: Grams;
}): ReactNode {
  const { off } = judged(line, quantity<Stock>(0n), total);
  const rows = weights.length === 0 ? [null] : weights;
  return rows.map((weight, at) => (
    <tr key={weight?.key ?? "none"}>
      <th scope="row">{at === 0 ? `${line.phase === null ? "" : `${line.phase} · `}${line.called}` : ""}</th>
      <td>{weight === null ? "" : (weight.lot ?? "made here")}</td>
      <td className="number">{at === 0 ? grams(line.target) : ""}</td>
      <td className="number">{weight === null ? "not weighed" : grams(weight.net)}</td>
      <td className="number">{at === rows.length - 1 && weight !== null ? signed(off, grams) : ""}</td>
      <td>{weight === null ? "" : `${momentShown(weight.at)}, ${weight.who}`}</td>
    </tr>
  ));
}

function Written({ found, grams }: Part): ReactNode {
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

function Marks({ found: { batch, workshop, today } }: { readonly found: BatchOnPage }): ReactNode {
  const nameOf = (formula: string): string => workshop.formulas.find(({ id }) => id === formula)?.name ?? formula;
  return (
    <section className="record-marks" aria-label="Versions and signatures">
      <p>
        Formula versions:{" "}
        {batch.versions.map(({ formula, number }) => `${nameOf(formula)} ${String(number)}`).join(", ")}
      </p>
      <p>
        Planned for {dayShown(batch.run.date, today, { year: true })}. Weighed in {workshop.settings.name}.
      </p>
      {["Made by", "Checked by", "Released by"].map((label) => (
        <p key={label}>
          {label} <u className="paper-blank" /> Date <u className="paper-blank" />
        </p>
      ))}
    </section>
  );
}

const signed = (off: bigint, grams: (amount: bigint) => string): string =>
  off === 0n ? "none" : off > 0n ? `+${grams(off)}` : `−${grams(-off)}`;

/** A moment in universal time, as the record keeps it. */
const momentShown = (at: string): string => `${at.slice(0, 10)} ${at.slice(11, 16)} UTC`;

function Yield({ found, grams }: Part): ReactNode {
  const { batch, product } = found;
  const closed = standing(batch, "closed").at(-1);
  const weighed = massIn(batch);
  const planned = roundedUpFor(bulkOf(product), batch.run.units);
  return (
    <section aria-labelledby="yield">
      <h2 id="yield">Yield</h2>
      <dl className="record-yield">
        <dt>Planned</dt>
        <dd>
          {countShown(batch.run.units)} units from {massInFull(planned)}
        </dd>
        <dt>Weighed</dt>
        <dd>{grams(weighed)}</dd>
        {closed && (
          <>
            <dt>Filled</dt>
            <dd>
              {countShown(closed.units)} units, {shareShown(ratio(closed.units, batch.run.units))} of the plan
            </dd>
            <dt>Left over</dt>
            <dd>{closed.leftOver === null ? "not written down" : grams(closed.leftOver)}</dd>
            <dt>Lost at the bench</dt>
            <dd>{grams(max0(weighed - heldBy(product, closed)))}</dd>
          </>
        )}
      </dl>
    </section>
  );
}

const max0 = (amount: bigint): bigint => (amount > 0n ? amount : 0n);

function saidOf(note: BenchNote, { batch, workshop, today }: BatchOnPage, grams: (amount: bigint) => string): string {
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
      const named = workshop.materials.find(({ id }) => id === note.material)?.name ?? note.material;
      return `${named} ${grams(note.net)}, lot ${note.lot ?? ""}${because}`;
    }
    case "struck": {
      const of = batch.notes.find(({ key }) => key === note.strikes);
      return `${of ? NOTE_WORDS[of.kind].toLowerCase() : "a note"} of ${of ? momentShown(of.at) : ""}${because}`;
    }
    case "temperature":
      return `${note.celsius} °C${note.phase === null ? "" : ` in phase ${note.phase}`}${meterOf(note, today)}`;
    case "acidity":
      return `${note.ph}${meterOf(note, today)}`;
    case "seen":
      return `${note.what}: ${note.found}`;
    case "closed":
      return `${countShown(note.units)} units${note.held ? ", held for a second look" : ""}${because}`;
    case "released":
    case "rejected":
      return note.why ?? "nothing further";
    case "annexed":
      return note.found;
  }
}

function meterOf(
  { meter, calibrated }: Pick<NoteOf<"acidity">, "meter" | "calibrated">,
  today: BatchOnPage["today"],
): string {
  const by = meter === null ? "" : `, by ${meter}`;
  return calibrated === null ? by : `${by}, calibrated ${dayShown(calibrated, today, { year: true, weekday: false })}`;
}
