"use client";

import { type SubmitEvent, useActionState, useEffect, useRef, useState } from "react";
import { NOT_SENT } from "@/app/_ui/asking-answer";
import type { Instant } from "@/lib/domain/bench/batch";
import { judged } from "@/lib/domain/bench/weights";
import { quantity, type Stock } from "@/lib/domain/quantity";
import { readBenchNote } from "@/lib/edge/forms/bench-note";
import { askedOfWeight } from "@/lib/edge/forms/bench-refusals";
import type { Faults } from "@/lib/edge/forms/posting-forms";
import { writeANote } from "../actions";
import { fieldsAsForm, type LineAtHand } from "./line-at-hand";
import type { Notes } from "./use-notes";
import { type Hanging, isOutside } from "./weigh-hang";
import { askWho } from "./who-writes";

interface Weighing {
  readonly line: LineAtHand;
  readonly notes: Notes;
  /** Whether the page shows it from the beginning: it does not scroll to it then. */
  readonly isFirst: boolean;
}

/** Judges on the device, so that it asks at once and without a network; what stands is put in the queue. */
export function useWeighing({ line, notes, isFirst }: Weighing) {
  const [answer, send] = useActionState(writeANote, NOT_SENT);
  const [faults, setFaults] = useState<Faults>({});
  const [lot, setLot] = useState("");
  const [hanging, setHanging] = useState<Hanging | null>(null);
  const [isKept, setKept] = useState(false);
  const form = useRef<HTMLFormElement>(null);
  const fieldCalled = (name: string) => form.current?.querySelector<HTMLInputElement>(`[name="${name}"]`);
  useEffect(() => {
    // Not where somebody is typing elsewhere: another device may have finished the line before.
    const typing = document.activeElement;
    if (typing === null || typing === document.body || form.current?.contains(typing))
      form.current?.querySelector<HTMLElement>("[name=weight]")?.focus({ preventScroll: isFirst });
  }, [isFirst]);
  const submit = (event: SubmitEvent<HTMLFormElement>): void => {
    event.preventDefault();
    const fields = { called: line.line.called, ...fieldsIn(event.currentTarget) };
    const found = faultsIn(fields, line, notes.who);
    setFaults(found);
    const [first] = Object.keys(found);
    if (first === undefined) notes.write(fields);
    if (first === undefined) return;
    // What a scale types next is another weight, never the reason for this one.
    const asksWhy = first === "why" && isOutside(hanging) && !isKept;
    requestAnimationFrame(() => {
      if (first === "who") askWho();
      else if (asksWhy) fieldCalled("weight")?.select();
      else fieldCalled(first)?.focus();
    });
  };
  const refused = answer.kind === "refused" ? answer : null;
  return {
    form,
    send,
    submit,
    scan: (text: string) => {
      if (line.lots.some(({ id }) => id === text.trim())) setLot(text.trim());
    },
    look: () => {
      setHanging(form.current && hangingOf(fieldsIn(form.current), line));
    },
    again: () => {
      const weight = fieldCalled("weight");
      if (weight) weight.value = "";
      weight?.focus();
      setFaults({});
      setHanging(null);
    },
    keep: () => {
      setKept(true);
      // That it is outside is answered for; what the lot asks still stands.
      setFaults(form.current ? askedOfLot(fieldsIn(form.current), line) : {});
      requestAnimationFrame(() => fieldCalled("why")?.focus());
    },
    lot,
    setLot,
    hanging,
    isKept,
    told: refused?.faults ?? faults,
    typed: refused?.typed ?? {},
    says: refused?.says ?? null,
  };
}

function fieldsIn(form: HTMLFormElement): Record<string, string> {
  const fields: Record<string, string> = {};
  for (const [name, value] of new FormData(form)) if (typeof value === "string") fields[name] = value;
  return fields;
}

/** Null while what is typed is no weight yet. */
function hangingOf(fields: Readonly<Record<string, string>>, { line, total }: LineAtHand): Hanging | null {
  const read = readBenchNote(fieldsAsForm({ ...fields, who: "whoever weighs", key: "new" }), "" as Instant);
  if (read === null || "faults" in read || read.asked.note.kind !== "weighed") return null;
  const { net, more } = read.asked.note;
  const after = judged(line, quantity<Stock>(total), net);
  return { ...after, isShort: more && after.off <= 0n };
}

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
    if (lot.isOutOfDate && note.why === null) return outOfDate(lot);
  }
  return askedOfWeight(line.line, line.total, note)?.faults ?? {};
}

const outOfDate = ({ id }: LineAtHand["lots"][number]): Faults => ({
  why: `is needed: lot ${id} is out of date. Whether it may still be used is for its supplier and local rules to say`,
});

/** What the lot asks, however much is weighed of it. */
function askedOfLot(fields: Readonly<Record<string, string>>, { lots }: LineAtHand): Faults {
  const lot = lots.find(({ id }) => id === fields.lot);
  return lot?.isOutOfDate === true ? outOfDate(lot) : {};
}
