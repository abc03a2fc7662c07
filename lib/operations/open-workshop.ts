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
export const openWorkshop = async (workshop: Workshop, past?: Past): Promise<Opened> => ({
  kind: "opened",
  keptAs: await replaceWorkshop(storeFile(), workshop, past),
});
