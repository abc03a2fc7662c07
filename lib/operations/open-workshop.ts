import type { Past } from "@/lib/domain/ledger/past";
import type { Workshop } from "@/lib/domain/workshop";
import { replaceWorkshop } from "@/lib/store/replace-workshop";
import { storeFile } from "@/lib/store/store-file";

export interface Opened {
  readonly kind: "opened";
  /** The file in which the old store was kept, or null where it held no workshop. */
  readonly keptAs: string | null;
}

/** Replaces what the app's store holds by this workshop, all or nothing. What it held is kept in a file beside it. */
export async function openWorkshop(workshop: Workshop, past?: Past): Promise<Opened> {
  const replaced = await replaceWorkshop(storeFile(), workshop, "anything", past);
  if (replaced.kind === "one is there") throw new Error("a workshop was to be replaced, and was not");
  return { kind: "opened", keptAs: replaced.keptAs };
}

/** Opens the first workshop of a store. Where one is there already, opened in another tab, it stays as it is. */
export async function openFirstWorkshop(
  workshop: Workshop,
  past?: Past,
): Promise<Opened | { readonly kind: "one is open" }> {
  const replaced = await replaceWorkshop(storeFile(), workshop, "nothing", past);
  return replaced.kind === "replaced" ? { kind: "opened", keptAs: replaced.keptAs } : { kind: "one is open" };
}
