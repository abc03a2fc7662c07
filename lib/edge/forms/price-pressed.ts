/** The press that takes a price that was paid into its offer. @rule OFFER-3 */
import type { Day } from "@/lib/domain/calendar";
import { isoDate } from "@/lib/domain/calendar";
import type { MicroUnits } from "@/lib/domain/money";
import { LARGEST_FIGURE, type Packs, quantity } from "@/lib/domain/quantity";
import { id } from "@/lib/edge/fields";
import { carriedDay, textIn } from "./week-forms";

export interface PricePressed {
  readonly offer: string;
  readonly packs: Packs;
  /** What a pack costs by the offer as the page showed it. */
  readonly from: MicroUnits;
  readonly to: MicroUnits;
  readonly on: Day;
}

export const priceFields = ({ offer, packs, from, to, on }: PricePressed): Readonly<Record<string, string>> => ({
  offer,
  packs: packs.toString(),
  from: from.toString(),
  to: to.toString(),
  on: isoDate(on),
});

/** @returns null where the form carries nothing that can be understood */
export function pricePressed(form: { readonly get: (name: string) => unknown }): PricePressed | null {
  const offer = id.safeParse(textIn(form, "offer"));
  const [packs, from, to] = ["packs", "from", "to"].map((name) => figureIn(textIn(form, name)));
  const on = carriedDay(form, "on");
  if (!offer.success || packs == null || packs === 0n || from == null || to == null || to === 0n || on === null)
    return null;
  return {
    offer: offer.data,
    packs: quantity<Packs>(packs),
    from: quantity<MicroUnits>(from),
    to: quantity<MicroUnits>(to),
    on,
  };
}

function figureIn(text: string): bigint | null {
  if (!/^\d{1,16}$/.test(text)) return null;
  const figure = BigInt(text);
  return figure <= LARGEST_FIGURE ? figure : null;
}
