"use client";

import type { ReactNode } from "react";
import type { BenchNote } from "@/lib/domain/bench/batch";
import { NOTE_WORDS } from "@/lib/edge/bench-words";
import { massInFull } from "@/lib/edge/figures";
import type { BenchOnPage } from "./bench-view";
import { SmallForm } from "./small-form";
import type { Notes } from "./use-notes";

/** What stands beside the weights; one that was wrong is struck like them. */
export function OtherNotes({ view, notes }: { readonly view: BenchOnPage; readonly notes: Notes }): ReactNode {
  const struck = new Set(view.notes.flatMap((note) => (note.kind === "struck" ? [note.strikes] : [])));
  const others = view.notes.filter(
    ({ kind, key }) => ["added", "temperature", "acidity", "seen", "checked"].includes(kind) && !struck.has(key),
  );
  const waiting = notes.notes.filter(
    ({ fields, refused }) => refused === null && fields.kind !== "weighed" && fields.kind !== "struck",
  );
  if (others.length + waiting.length === 0) return null;
  return (
    <section className="bench-notes" aria-labelledby="bench-others">
      <h2 id="bench-others">Written down beside the weights</h2>
      {others.map((note) => (
        <details key={note.key} className="bench-weight opens">
          <summary>
            {NOTE_WORDS[note.kind]}: {saidBy(note)}, {note.who}
          </summary>
          <SmallForm
            view={view}
            notes={notes}
            carried={{ kind: "struck", strikes: note.key }}
            fields={[{ name: "why", label: "Why it is struck" }]}
            button="Strike it"
          />
        </details>
      ))}
      {waiting.map(({ key, fields }) => (
        <p key={key}>
          {[fields.what, fields.celsius, fields.ph, fields.weight, fields.found].filter(Boolean).join(", ")} (waits to
          be sent)
        </p>
      ))}
    </section>
  );
}

function saidBy(note: BenchNote): string {
  switch (note.kind) {
    case "added":
      return `${massInFull(note.net)}, lot ${note.lot ?? ""}, ${note.why ?? ""}`;
    case "temperature":
      return `${note.celsius} °C${note.phase === null ? "" : ` in phase ${note.phase}`}`;
    case "acidity":
      return note.ph;
    case "seen":
      return `${note.what}: ${note.found}`;
    case "checked":
      return `${note.what}, ${note.found} (asked: ${note.asked})${note.why === null ? "" : `; ${note.why}`}`;
    case "recoded":
    case "weighed":
    case "struck":
    case "closed":
    case "released":
    case "rejected":
    case "annexed":
      return "";
  }
}
