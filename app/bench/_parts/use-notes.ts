"use client";

import { useRouter } from "next/navigation";
import { useEffect, useEffectEvent, useMemo, useState, useSyncExternalStore } from "react";
import { notesAddress } from "@/lib/edge/bench-address";
import type { BenchOnPage } from "./bench-view";
import { NOTHING_QUEUED, type NoteQueue, noteQueue, type QueueState } from "./note-queue";

const ASK_MS = 4_000;
const WHO = "bench who";

/** What waits on this device, and what is written down through it. */
export interface Notes extends QueueState {
  readonly who: string;
  readonly setWho: (who: string) => void;
  /** A time of today as 09:30, for what was written on paper; empty for now. */
  readonly when: string;
  readonly setWhen: (when: string) => void;
  /** Puts a note in the queue under a new key. */
  readonly write: (fields: Readonly<Record<string, string>>) => void;
  readonly drop: (key: string) => void;
}

export function useNotes(view: BenchOnPage): Notes {
  const queue = useMemo(() => noteQueue(view.batch), [view.batch]);
  const { notes, isOffline } = useSyncExternalStore(queue.subscribe, queue.state, () => NOTHING_QUEUED);
  useSent(queue, view);
  const [when, setWhen] = useState("");
  const [typedWho, setTypedWho] = useState<string | null>(null);
  const keptWho = useSyncExternalStore(nobodyElse, whoOfDevice, () => "");
  const who = typedWho ?? (keptWho || view.startedBy);
  return {
    // What is already on the page is not shown a second time.
    notes: notes.filter(({ key }) => !view.notes.some((known) => known.key === key)),
    isOffline,
    who,
    setWho: (typed) => {
      setTypedWho(typed);
      rememberWho(typed);
    },
    when,
    setWhen,
    write: (fields) => {
      const at = `${momentOf(when).toISOString().slice(0, 19)}Z`;
      setWhen("");
      queue.add({ ...fields, batch: view.batch, who, at, key: crypto.randomUUID() });
    },
    drop: (key) => {
      queue.drop([key]);
    },
  };
}

/** Now, or that time of today by this device's clock. */
function momentOf(when: string): Date {
  const now = new Date();
  const moment = new Date(now);
  const [hours, minutes] = when.split(":").map(Number);
  if (hours !== undefined && minutes !== undefined) moment.setHours(hours, minutes, 0, 0);
  return moment > now ? now : moment;
}

/** Sends what waits, and asks now and then whether another device has written something. */
function useSent(queue: NoteQueue, view: BenchOnPage): void {
  const router = useRouter();
  const refresh = useEffectEvent(() => {
    router.refresh();
  });
  const known = useEffectEvent(() => view.notes.length);
  useEffect(
    () =>
      queue.begin(() => {
        refresh();
      }),
    [queue],
  );
  useEffect(() => {
    queue.drop(view.notes.map(({ key }) => key));
  }, [queue, view.notes]);
  useEffect(() => {
    const timer = setInterval(() => {
      void notesOnServer(view.batch).then((there) => {
        if (there !== null && there !== known()) refresh();
      });
    }, ASK_MS);
    return () => {
      clearInterval(timer);
    };
  }, [view.batch]);
}

async function notesOnServer(batch: string): Promise<number | null> {
  try {
    const answer = await fetch(notesAddress(batch), { cache: "no-store" });
    return answer.ok ? ((await answer.json()) as { readonly notes: number | null }).notes : null;
  } catch {
    return null;
  }
}

const nobodyElse = (): (() => void) => () => undefined;

function whoOfDevice(): string {
  try {
    return localStorage.getItem(WHO) ?? "";
  } catch {
    return "";
  }
}

function rememberWho(who: string): void {
  try {
    localStorage.setItem(WHO, who);
  } catch {
    // A browser that keeps nothing: it is typed again.
  }
}
