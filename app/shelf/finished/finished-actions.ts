"use server";

import { revalidatePath } from "next/cache";
import { redirect, RedirectType } from "next/navigation";
import type { AskingAnswer } from "@/app/_ui/asking-answer";
import { placedRefusal, shownIn, typedIn } from "@/lib/edge/forms/posting-forms";
import { waitsAtBenchWords } from "@/lib/edge/forms/posting-refusals";
import { refusalWords } from "@/lib/edge/forms/refusal-words";
import { readUnitsMoved, readWriteOffReason, UNITS_FIELDS, type UnitsAsked } from "@/lib/edge/forms/units-form";
import { textIn } from "@/lib/edge/forms/week-forms";
import { finishedAddress } from "@/lib/edge/ledger-address";
import { realToday } from "@/lib/edge/real-today";
import { PAGE_OUT_OF_DATE } from "@/lib/edge/page-out-of-date";
import { sell } from "@/lib/operations/sell-units";
import { takeUnitsBack } from "@/lib/operations/take-back";
import { writeOffStock } from "@/lib/operations/write-off";

type Moved =
  | Awaited<ReturnType<typeof sell>>
  | Awaited<ReturnType<typeof takeUnitsBack>>
  | Awaited<ReturnType<typeof writeOffStock>>;

/** Sells units of one finished lot. */
export async function sellOfLot(_before: AskingAnswer, form: FormData): Promise<AskingAnswer> {
  const outOfDate = textIn(form, "deed") === "out of date" ? "sell" : "refuse";
  return moving(form, "sold", (asked) => sell({ ...asked, outOfDate, realToday: realToday() }));
}

/** Takes sold units of one lot back into stock. */
export async function takeBackOfLot(_before: AskingAnswer, form: FormData): Promise<AskingAnswer> {
  return moving(form, "came back", (asked) => takeUnitsBack({ ...asked, realToday: realToday() }));
}

/** Writes units of one lot off: a sample, broken, given away, out of date. */
export async function writeOffOfLot(_before: AskingAnswer, form: FormData): Promise<AskingAnswer> {
  const why = readWriteOffReason(textIn(form, "why"));
  if ("fault" in why) {
    const read = readUnitsMoved(form);
    const others = read !== null && "faults" in read ? read.faults : {};
    return { kind: "refused", typed: typedIn(form, UNITS_FIELDS), faults: { ...others, why: why.fault }, says: null };
  }
  return moving(form, "written off", (asked) =>
    writeOffStock({
      ...asked,
      reason: asked.reason === null ? why.value : `${why.value}: ${asked.reason}`,
      as: why.value === "out of date" ? "expired" : "lost",
      from: "stock",
      realToday: realToday(),
    }),
  );
}

async function moving(form: FormData, did: string, move: (asked: UnitsAsked) => Promise<Moved>): Promise<AskingAnswer> {
  const typed = typedIn(form, UNITS_FIELDS);
  const refused = (faults: Readonly<Partial<Record<string, string>>>, says: string | null): AskingAnswer => {
    if (says !== null) revalidatePath("/", "layout");
    return { kind: "refused", typed, faults, says };
  };
  const read = readUnitsMoved(form);
  if (read === null) return refused({}, PAGE_OUT_OF_DATE);
  if ("faults" in read) return refused(read.faults, null);
  const told = await move(read.asked);
  switch (told.kind) {
    case "posted":
    case "already posted":
      return goOn(read.asked, textIn(form, "lot"), did);
    case "no workshop":
      return refused({}, "No workshop is open any more. Open one on the first page.");
    case "waits at the bench":
      return refused({}, waitsAtBenchWords(told.code));
    case "not finished":
      return refused({}, "Only finished units can be moved here. Load the page again.");
    case "future day":
    case "no such lot":
    case "before the lot":
    case "nothing to post":
    case "asked twice":
    case "not there":
    case "out of date":
    case "cost came later":
    case "out of range": {
      const { faults, says } = placedRefusal(refusalWords(told, shownIn(form)), () => "units");
      return refused(faults, says);
    }
  }
}

function goOn({ lines }: UnitsAsked, lot: string, did: string): never {
  revalidatePath("/", "layout");
  const units = String(lines.reduce((sum, { quantity }) => sum + quantity, 0n));
  redirect(`${finishedAddress(lot)}?${new URLSearchParams({ did, units }).toString()}`, RedirectType.replace);
}
