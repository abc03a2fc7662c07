/** What can be done with a lot of a material, each with its form and what was typed into it. @rule LEDGER-10, LEDGER-14 */
import type { Day } from "@/lib/domain/calendar";
import type { MicroUnits } from "@/lib/domain/money";
import { quantity, type Stock } from "@/lib/domain/quantity";
import type { Workshop } from "@/lib/domain/workshop";
import { day, id, name } from "@/lib/edge/fields";
import { price } from "@/lib/edge/figure-fields";
import { AMOUNT, choice, DAY, type FormField, ID, MONEY, needed, optional, TEXT } from "./form-fields";
import { type FieldFault, type FormReading, readFormOf, type SentForm } from "./form-reading";
import { judging } from "./judged-fields";

export const LOT_DEEDS = ["hold", "release", "off", "cost"] as const;
export type LotDeed = (typeof LOT_DEEDS)[number];

export const lotDeedIn = (text: unknown): LotDeed | null => LOT_DEEDS.find((deed) => deed === text) ?? null;

const ON = needed("day", "Day", DAY);
const HOW_MUCH = needed("amount", "How much", AMOUNT);

/** As the reason of the posting says it. */
const WHY_HELD = { quarantine: "Quarantine", recall: "Recalled by the supplier", doubt: "In doubt" } as const;
const WHY_OFF = {
  spilt: "Spilt",
  expired: "Out of date",
  sample: "Used as a sample",
  given: "Given away",
  recalled: "Recalled",
} as const;
const WHY_COST = {
  adds: "It adds to what the lot cost: delivery, duty, a corrected invoice",
  credit: "It takes from it: a credit",
} as const;

export const LOT_FORMS: Readonly<Record<LotDeed, readonly FormField[]>> = {
  hold: [ID, needed("why", "Why", choice(WHY_HELD)), HOW_MUCH, ON, optional("reason", "In words", TEXT)],
  release: [ID, HOW_MUCH, ON, needed("reason", "Why", TEXT, { hint: "As what the supplier or a test has shown." })],
  off: [
    ID,
    needed("why", "Why", choice(WHY_OFF)),
    needed("from", "From", choice({ stock: "the shelf", hold: "what is on hold" })),
    HOW_MUCH,
    ON,
    optional("reason", "In words", TEXT),
  ],
  cost: [
    ID,
    needed("why", "What it does", choice(WHY_COST)),
    needed("cost", "Amount", MONEY, { hint: "Without the tax that you reclaim." }),
    ON,
    needed("reason", "What it is", TEXT, { hint: "As the carrier and the number of its bill." }),
  ],
};

interface Typed {
  readonly key: string;
  readonly day: Day;
  readonly reason: string;
}

export type LotAsked =
  | (Typed & { readonly deed: "hold" | "release"; readonly quantity: Stock })
  | (Typed & {
      readonly deed: "off";
      readonly quantity: Stock;
      readonly as: "lost" | "expired";
      readonly from: "stock" | "hold";
    })
  | (Typed & { readonly deed: "cost"; readonly amount: MicroUnits });

export type LotReading =
  | { readonly kind: "read"; readonly asked: LotAsked; readonly reading: FormReading }
  | { readonly kind: "refused"; readonly faults: readonly FieldFault[]; readonly reading: FormReading };

/** @param lot  whose material an amount is measured by */
export function readLotForm(workshop: Workshop, lot: string, deed: LotDeed, form: SentForm): LotReading {
  const reading = readFormOf(LOT_FORMS[deed], form, workshop.settings.currency);
  const judged = judging(reading);
  const { record } = reading;
  const refused = (): LotReading => ({ kind: "refused", faults: judged.faults(), reading });
  const of = workshop.lots.find((each) => each.id === lot);
  const material = workshop.materials.find((each) => each.id === of?.material);
  if (material === undefined) {
    judged.tell(null, "the lot is on no list any more; load the page again");
    return refused();
  }
  const key = judged.value(id, record.id, "id");
  const on = judged.value(day, record.day, "day");
  const words = judged.value(name, record.reason, "reason");
  const moved = deed === "cost" ? undefined : judged.stock(record.amount, material, 1n, "amount");
  const amount = deed === "cost" ? judged.value(price, record.cost, "cost") : undefined;
  if (judged.faults().length > 0 || key === undefined || on === undefined) return refused();
  const typed = { key, day: on, reason: reasonOf(deed, String(record.why), words) };
  const read = (asked: LotAsked): LotReading => ({ kind: "read", asked, reading });
  if (deed === "cost" && amount !== undefined)
    return read({ ...typed, deed, amount: quantity<MicroUnits>(record.why === "credit" ? -amount : amount) });
  if (deed === "cost" || moved === undefined) return refused();
  if (deed === "off")
    return read({
      ...typed,
      deed,
      quantity: moved,
      as: record.why === "expired" ? "expired" : "lost",
      from: record.from === "hold" ? "hold" : "stock",
    });
  return read({ ...typed, deed, quantity: moved });
}

function reasonOf(deed: LotDeed, why: string, words: string | undefined): string {
  const kinds: Readonly<Record<string, string>> = deed === "hold" ? WHY_HELD : deed === "off" ? WHY_OFF : {};
  return [Object.hasOwn(kinds, why) ? kinds[why] : undefined, words].filter((part) => part !== undefined).join(": ");
}

/** The field that a refusal is about. */
export const fieldOfRefusal = (deed: LotDeed, kind: string): string | null => {
  if (kind === "future day" || kind === "before the lot") return "day";
  if (kind === "not there" || kind === "nothing to post") return deed === "cost" ? "cost" : "amount";
  return null;
};
