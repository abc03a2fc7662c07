import { mkdtempSync, rmSync } from "node:fs";
import { constants, tmpdir } from "node:os";
import path from "node:path";
import type { Past } from "@/lib/domain/ledger/past";
import type { Workshop } from "@/lib/domain/workshop";
import { readWorkshopFrom } from "@/lib/store/books";
import { closeStore } from "@/lib/store/open-store";
import { replaceWorkshop } from "@/lib/store/replace-workshop";

/** A workshop, with its past where it has one. */
interface Opened {
  readonly workshop: Workshop;
  readonly past?: Past;
}

/** The workshop as the app would have it: put into a new store, read out again, and the store thrown away. */
export async function throughStoreOfItsOwn({ workshop, past }: Opened): Promise<Workshop> {
  const folder = mkdtempSync(path.join(tmpdir(), "stillroom-report-"));
  const file = path.join(folder, "stillroom.db");
  const forgetSignals = onSignal(() => {
    rmSync(folder, { recursive: true, force: true });
  });
  try {
    await replaceWorkshop(file, workshop, "anything", past);
    const held = await readWorkshopFrom(file);
    if (!held) throw new Error("the store did not keep the workshop that was put into it");
    return held;
  } finally {
    await closeStore(file);
    rmSync(folder, { recursive: true, force: true });
    forgetSignals();
  }
}

function onSignal(tidy: () => void): () => void {
  const stop = (signal: NodeJS.Signals): void => {
    tidy();
    process.exit(128 + constants.signals[signal]);
  };
  process.once("SIGINT", stop).once("SIGTERM", stop);
  return () => void process.off("SIGINT", stop).off("SIGTERM", stop);
}
