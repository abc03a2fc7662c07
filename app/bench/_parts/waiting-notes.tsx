"use client";

import { useRouter } from "next/navigation";
import { type ReactNode, useEffect, useEffectEvent, useMemo, useSyncExternalStore } from "react";
import { counted } from "@/lib/edge/counted";
import { NOTHING_QUEUED, noteQueue } from "./note-queue";
import { Refused } from "./refused-notes";

/** What waits on this device for a batch, on a page that writes nothing itself: it is sent, and told where it is not. */
export function WaitingNotes({
  batch,
  known,
}: {
  readonly batch: string;
  readonly known: readonly string[];
}): ReactNode {
  const queue = useMemo(() => noteQueue(batch), [batch]);
  const { notes } = useSyncExternalStore(queue.subscribe, queue.state, () => NOTHING_QUEUED);
  const router = useRouter();
  const refresh = useEffectEvent(() => {
    router.refresh();
  });
  useEffect(
    () =>
      queue.begin(() => {
        refresh();
      }),
    [queue],
  );
  useEffect(() => {
    queue.drop([...known]);
  }, [queue, known]);
  const waiting = notes.filter(({ isSent, refused }) => !isSent && refused === null);
  return (
    <div className="screen-only">
      {waiting.length > 0 && (
        <p className="bench-status offline" role="status">
          {counted(waiting.length, "note waits", "notes wait")} on this device to be sent. Let it be written down before
          the batch is closed.
        </p>
      )}
      <Refused
        refused={notes.filter(({ refused }) => refused !== null)}
        drop={(key) => {
          queue.drop([key]);
        }}
      />
    </div>
  );
}
