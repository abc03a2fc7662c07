"use client";

import { type ReactNode, type SubmitEvent, useActionState, useEffect, useRef, useState } from "react";
import { NOT_SENT } from "@/app/_ui/asking-answer";
import type { Instant } from "@/lib/domain/bench/batch";
import { gramsShown } from "@/lib/edge/figures";
import { readBenchNote } from "@/lib/edge/forms/bench-note";
import { askedOfWeight } from "@/lib/edge/forms/bench-refusals";
import type { Faults } from "@/lib/edge/forms/posting-forms";
import { writeANote } from "../actions";
import { Hidden } from "./hidden";
import { fieldsAsForm, type LineAtHand } from "./line-at-hand";
import type { BenchOnPage } from "./bench-view";
import type { Notes } from "./use-notes";
import { Field } from "./weigh-field";
import { Lots } from "./weigh-lots";

interface Weigh {
  readonly line: LineAtHand;
  readonly view: BenchOnPage;
  readonly notes: Notes;
}

/** Judges on the device, so that it asks at once and without a network; what stands is put in the queue. */
function useWeighing({ line, view, notes }: Weigh) {
  const [answer, send] = useActionState(writeANote, NOT_SENT);
  const [faults, setFaults] = useState<Faults>({});
  const [lot, setLot] = useState("");
  const form = useRef<HTMLFormElement>(null);
  useEffect(() => {
    // Not where somebody is typing elsewhere: another device may have finished the line before.
    const typing = document.activeElement;
    if (typing === null || typing === document.body || form.current?.contains(typing))
      form.current?.querySelector<HTMLElement>("[name=weight]")?.focus();
  }, [view.batch]);
  const submit = (event: SubmitEvent<HTMLFormElement>): void => {
    event.preventDefault();
    const fields: Record<string, string> = { called: line.line.called };
    for (const [name, value] of new FormData(event.currentTarget)) if (typeof value === "string") fields[name] = value;
    const found = faultsIn(fields, line, notes.who);
    setFaults(found);
    const [first] = Object.keys(found);
    if (first === undefined) {
      notes.write(fields);
      return;
    }
    requestAnimationFrame(() => form.current?.querySelector<HTMLElement>(`[name="${first}"]`)?.focus());
  };
  const scan = (text: string): void => {
    const scanned = text.trim();
    if (line.lots.some(({ id }) => id === scanned)) setLot(scanned);
  };
  const refused = answer.kind === "refused" ? answer : null;
  const told: Faults = refused?.faults ?? faults;
  return { form, send, submit, scan, lot, setLot, told, typed: refused?.typed ?? {}, says: refused?.says ?? null };
}

/**
 * The line that is weighed now: what, how much, within what, from which lot. A scale or a scanner that types is typing
 * like any other; Enter writes it down and opens the next line.
 */
export function WeighForm(weigh: Weigh): ReactNode {
  const { line, view, notes } = weigh;
  const { form, send, submit, scan, lot, setLot, told, typed, says } = useWeighing(weigh);
  const isPoured = line.line.of.kind === "formula";
  return (
    <form
      className="weigh"
      action={send}
      onSubmit={submit}
      ref={form}
      noValidate
      aria-label={`Weigh ${line.line.called}`}
    >
      {says !== null && (
        <p className="fault" role="alert">
          {says}
        </p>
      )}
      <Hidden
        values={{
          kind: "weighed",
          line: line.line.key,
          batch: view.batch,
          key: view.newKeys[0] ?? "",
          who: notes.who,
          seen: JSON.stringify(line.all.map(({ key }) => key)),
        }}
      />
      <Target line={line} decimals={view.decimals} />
      {!isPoured && <Lots line={line} lot={lot} choose={setLot} scan={scan} fault={told.lot} typed={typed.scanned} />}
      <Balance isMore={line.all.length > 0} told={told} typed={typed} />
      {!isPoured && (
        <label className="weigh-more">
          <input type="checkbox" name="more" value="yes" defaultChecked={typed.more === "yes"} />
          More of it follows from another lot
        </label>
      )}
      <Field
        name="why"
        label="Why it is kept, where it is out of tolerance"
        fault={told.why}
        typed={typed.why}
        className={told.why === undefined ? "weigh-why" : "weigh-why asked"}
      />
      <button className="button first weigh-write">Write it down</button>
    </form>
  );
}

/** What the balance shows, and what the vessel on it weighs where it was not tared. */
const Balance = ({
  isMore,
  told,
  typed,
}: {
  readonly isMore: boolean;
  readonly told: Faults;
  readonly typed: Faults;
}): ReactNode => (
  <div className="weigh-fields">
    <Field
      name="weight"
      label={isMore ? "Balance shows of the rest, g" : "Balance shows, g"}
      fault={told.weight}
      typed={typed.weight}
      className="weigh-weight"
      inputMode="decimal"
    />
    <Field
      name="vessel"
      label="Empty vessel, g (where it was not tared)"
      fault={told.vessel}
      typed={typed.vessel}
      inputMode="decimal"
    />
  </div>
);

/** What is asked before a weight is written down, worked out on the device. */
function faultsIn(fields: Readonly<Record<string, string>>, line: LineAtHand, who: string): Faults {
  const read = readBenchNote(fieldsAsForm({ ...fields, who, key: "new" }), "" as Instant);
  if (read === null) return { weight: "could not be read; load the page again" };
  if ("faults" in read) return read.faults;
  const { note } = read.asked;
  if (note.kind !== "weighed") return {};
  if (line.line.of.kind === "material") {
    const lot = line.lots.find(({ id }) => id === note.lot);
    if (note.lot === null) return { lot: "is needed: tap the lot that you weigh from, or scan it" };
    if (lot === undefined) return { lot: `${note.lot} is no lot of ${line.line.called} on the shelf` };
    if (lot.isOutOfDate && note.why === null)
      return {
        why: `is needed: lot ${lot.id} is out of date. Whether it may still be used is for its supplier and local rules to say`,
      };
  }
  return askedOfWeight(line.line, line.total, note)?.faults ?? {};
}

function Target({
  line: { line, premix, total, all },
  decimals,
}: {
  readonly line: LineAtHand;
  readonly decimals: number;
}): ReactNode {
  return (
    <div className="weigh-target">
      <h2>{line.called}</h2>
      {premix !== null && <p className="weigh-part">for {premix}</p>}
      {line.of.kind === "formula" && <p className="weigh-part">Pour in what was made of it.</p>}
      <p className="weigh-figure">
        <b>{gramsShown(line.target, decimals)}</b> <span>±{gramsShown(line.tolerance, decimals)}</span>
      </p>
      {all.length > 0 && (
        <p className="weigh-part">
          {gramsShown(total, decimals)} is written down;{" "}
          {gramsShown(line.target > total ? line.target - total : 0n, decimals)} is still to come.
        </p>
      )}
    </div>
  );
}
