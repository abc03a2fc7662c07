"use server";

import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import { writtenDraft } from "@/lib/edge/forms/change-draft";
import { fingerprint } from "@/lib/edge/forms/fingerprint";
import { removeDraft, removeRecord as takeOut } from "@/lib/edge/forms/remove-record";
import { writtenRecord } from "@/lib/edge/forms/written-record";
import { removeRecord } from "@/lib/operations/remove-record";
import { bringBackRecord, retireRecord } from "@/lib/operations/retire-record";
import { sectionPath } from "@/app/book/_parts/addresses";
import { type DeedAnswer, refusedDeed } from "@/app/book/_parts/deed-answer";
import { sectionOf } from "@/app/book/_parts/sections";

const RETIRABLE = ["suppliers", "materials", "offers", "formulas", "products"] as const;
const NONE_OPEN = "No workshop is open any more; open one on the first page.";
const STALE = { kind: "stale" } as const;

/** Hides a record from new work, or offers it again. */
export async function retireOrBringBack(list: string, id: string, deed: "retire" | "bring back"): Promise<DeedAnswer> {
  const section = RETIRABLE.find((retirable) => retirable === list);
  if (section === undefined) return refusedDeed("This cannot be retired.");
  const told = await (deed === "retire" ? retireRecord(section, id) : bringBackRecord(section, id));
  revalidatePath("/", "layout");
  switch (told.kind) {
    case "no workshop":
      return refusedDeed(NONE_OPEN);
    case "no such record":
      return refusedDeed("It is not there any more; it was removed meanwhile.");
    case "retired":
    case "already retired":
    case "brought back":
    case "not retired":
      return { kind: "done" };
  }
}

/** @param seen  the fingerprint of the record as it was shown */
export async function remove(list: string, id: string, seen: string): Promise<DeedAnswer> {
  const section = sectionOf(list);
  if (section === null) return refusedDeed("There is no such section in the Book.");
  const told = await removeRecord({
    remove: (books) => takeOut(books, section, id),
    stale: ({ workshop }) => {
      const stored = writtenRecord(workshop, section, id);
      return stored !== null && fingerprint(stored) === seen ? null : STALE;
    },
  });
  switch (told.kind) {
    case "no workshop":
      return refusedDeed(NONE_OPEN);
    case "stale":
      return refusedDeed("It was changed meanwhile, in another tab or window. Open it again before you remove it.");
    case "refused":
      revalidatePath("/", "layout");
      return { kind: "refused", says: told.faults.map(({ message }) => message).join("; "), names: told.breaks };
    case "removed":
      revalidatePath("/", "layout");
      return redirect(sectionPath(section, { done: "removed" }));
  }
}

/** Takes a draft off the desk. */
export async function throwAway(id: string, seen: string): Promise<DeedAnswer> {
  const told = await removeRecord({
    remove: (books) => removeDraft(books, id),
    stale: ({ workshop, desk }) => {
      const draft = desk.drafts.find((one) => one.id === id);
      return draft !== undefined && fingerprint(writtenDraft(workshop, draft)) === seen ? null : STALE;
    },
  });
  switch (told.kind) {
    case "no workshop":
      return refusedDeed(NONE_OPEN);
    case "stale":
      return refusedDeed("It was changed meanwhile, in another tab or window. Open it again before you remove it.");
    case "refused":
      return { kind: "refused", says: told.faults.map(({ message }) => message).join("; "), names: told.breaks };
    case "removed":
      revalidatePath("/", "layout");
      return redirect(sectionPath("formulas", { done: "removed" }));
  }
}
