"use client";

import { notesAddress } from "@/lib/edge/bench-address";

/**
 * What was written down on this device and is not known to be in the books yet. It stays in the browser until it is,
 * so that neither a reload nor a lost network loses any of it; sent twice it is one note. @rule BENCH-5
 */
export interface QueuedNote {
  readonly key: string;
  /** As its form would send it. */
  readonly fields: Readonly<Record<string, string>>;
  /** Answered as written; it goes once the page knows it. */
  readonly isSent: boolean;
  readonly refused: { readonly faults: Readonly<Record<string, string>>; readonly says: string | null } | null;
}

export interface QueueState {
  readonly notes: readonly QueuedNote[];
  readonly isOffline: boolean;
}

export interface NoteQueue {
  readonly subscribe: (changed: () => void) => () => void;
  readonly state: () => QueueState;
  readonly add: (fields: Readonly<Record<string, string>>) => void;
  readonly drop: (keys: readonly string[]) => void;
  /** Sends what waits, now and whenever the network is back. @returns what ends it */
  readonly begin: (written: () => void) => () => void;
}

export const NOTHING_QUEUED: QueueState = { notes: [], isOffline: false };
const AGAIN_MS = 2_000;

const queues = new Map<string, NoteQueue>();

/** The one queue of a batch in this tab. @param batch  its run; encoded, so that none begins as another does */
export function noteQueue(batch: string): NoteQueue {
  const [place, address] = [`bench notes ${encodeURIComponent(batch)}`, notesAddress(batch)];
  const known = queues.get(place);
  if (known) return known;
  const made = queueAt(place, address);
  queues.set(place, made);
  return made;
}

function queueAt(place: string, address: string): NoteQueue {
  let state: QueueState = { notes: kept(place), isOffline: false };
  let sending = false;
  const listeners = new Set<() => void>();
  const become = (next: Partial<QueueState>): void => {
    const before = state.notes;
    state = { ...state, ...next };
    keep(place, before, state.notes);
    for (const changed of listeners) changed();
  };
  const change = (key: string, to: Partial<QueuedNote>): void => {
    become({ notes: state.notes.map((note) => (note.key === key ? { ...note, ...to } : note)) });
  };
  let wrote: () => void = () => undefined;

  async function sendAll(): Promise<void> {
    if (sending) return;
    sending = true;
    try {
      for (let note = nextOf(state.notes); note; note = nextOf(state.notes)) {
        const told = await send(address, note.fields);
        if (told === null) {
          become({ isOffline: true });
          return;
        }
        become({ isOffline: false });
        if (told.kind === "written") {
          change(note.key, { isSent: true });
          wrote();
        } else change(note.key, { refused: { faults: told.faults, says: told.says } });
      }
    } finally {
      sending = false;
    }
  }

  return {
    subscribe: (changed) => {
      listeners.add(changed);
      return () => listeners.delete(changed);
    },
    state: () => state,
    add: (fields) => {
      const key = fields.key ?? "";
      become({ notes: [...state.notes, { key, fields, isSent: false, refused: null }] });
      void sendAll();
    },
    drop: (keys) => {
      if (state.notes.some(({ key }) => keys.includes(key)))
        become({ notes: state.notes.filter(({ key }) => !keys.includes(key)) });
    },
    begin: (written) => {
      wrote = written;
      return nowAndAgain(() => void sendAll());
    },
  };
}

/** Now, every little while, and whenever the network is back. @returns what ends it */
function nowAndAgain(work: () => void): () => void {
  work();
  const timer = setInterval(work, AGAIN_MS);
  window.addEventListener("online", work);
  return () => {
    clearInterval(timer);
    window.removeEventListener("online", work);
  };
}

const nextOf = (notes: readonly QueuedNote[]): QueuedNote | undefined =>
  notes.find(({ isSent, refused }) => !isSent && refused === null);

type Answer = { readonly kind: "written" } | ({ readonly kind: "refused" } & NonNullable<QueuedNote["refused"]>);

/** Null where nobody answered: the network is gone, or the app is not running. */
async function send(address: string, fields: Readonly<Record<string, string>>): Promise<Answer | null> {
  try {
    const answer = await fetch(address, {
      method: "POST",
      headers: { "Content-Type": "application/json" },
      body: JSON.stringify(fields),
    });
    return answer.ok ? ((await answer.json()) as Answer) : null;
  } catch {
    return null;
  }
}

/** One item of the browser's for each note, so that two tabs of one device do not write over each other's. */
const itemOf = (place: string, key: string): string => `${place} ${key}`;

function kept(place: string): readonly QueuedNote[] {
  try {
    return Object.keys(localStorage)
      .filter((item) => item.startsWith(`${place} `))
      .map((item) => JSON.parse(localStorage.getItem(item) ?? "null") as QueuedNote)
      .sort((a, b) => ((a.fields.at ?? "") < (b.fields.at ?? "") ? -1 : 1));
  } catch {
    return [];
  }
}

function keep(place: string, before: readonly QueuedNote[], after: readonly QueuedNote[]): void {
  try {
    for (const { key } of before)
      if (!after.some((note) => note.key === key)) localStorage.removeItem(itemOf(place, key));
    for (const note of after)
      if (!before.includes(note)) localStorage.setItem(itemOf(place, note.key), JSON.stringify(note));
  } catch {
    // A browser that keeps nothing: what waits stays on the page, which says that it is not sent yet.
  }
}
