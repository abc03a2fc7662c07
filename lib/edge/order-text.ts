/** An order as words to send and as rows for a spreadsheet. The app sends nothing. */
import { type Day, isoDate } from "@/lib/domain/calendar";
import { whole } from "@/lib/domain/fraction";
import { type CurrencyCode, decimalsOf, moneyText } from "@/lib/domain/money";
import type { Amount } from "@/lib/domain/quantity";
import { csvText } from "./csv-text";
import { amountShown, longDayShown, moneyShown, priceShown } from "./figures";
import { NO_BREAK } from "./shown-digits";

/** What is written of an order: of one that is planned, or of one that is kept. */
export interface WrittenOrder {
  readonly supplier: { readonly name: string };
  readonly goods: bigint;
  readonly shipping: bigint;
  readonly total: bigint;
  readonly lines: readonly WrittenLine[];
}

export interface WrittenLine {
  readonly offer: { readonly id: string; readonly pack: { readonly typed: Amount } };
  readonly material: { readonly name: string };
  readonly packs: bigint;
  readonly packPrice: bigint;
  readonly cost: bigint;
  readonly arrives: Day;
}

interface Ordering {
  readonly order: WrittenOrder;
  readonly workshop: string;
  readonly currency: CurrencyCode;
  readonly today: Day;
}

/** Words that can be pasted into a letter, a line for each offer, without no-break spaces. */
export function orderText({
  order: { supplier, lines, goods, shipping, total },
  workshop,
  currency,
  today,
}: Ordering): string {
  const words = [
    `Order of ${workshop}, to ${supplier.name}`,
    longDayShown(today, today),
    "",
    ...lines.map(
      (line) =>
        `${line.packs.toString()} × ${amountShown(line.offer.pack.typed)} ${line.material.name}, ` +
        `${priceShown(line.packPrice, currency)} each, ${moneyShown(line.cost, currency)}`,
    ),
    "",
    `Goods ${moneyShown(goods, currency)}`,
    `Delivery ${moneyShown(shipping, currency)}`,
    `In all ${moneyShown(total, currency)}`,
  ];
  return `${words.join("\n").replaceAll(NO_BREAK, " ")}\n`;
}

const COLUMNS = ["Supplier", "Material", "Offer", "Pack", "Packs", "Price of a pack", "Cost", "Currency", "Comes on"];

/** An order as rows for a spreadsheet. */
export function orderCsv({
  order: { supplier, lines, shipping },
  currency,
}: Omit<Ordering, "workshop" | "today">): string {
  const rows = [
    COLUMNS,
    ...lines.map((line) => lineFields(line, supplier.name, currency)),
    [supplier.name, "Delivery", "", "", "", "", exact(shipping, currency), currency, ""],
  ];
  return csvText(rows);
}

const lineFields = (line: WrittenLine, supplier: string, currency: CurrencyCode): readonly string[] => [
  supplier,
  line.material.name,
  line.offer.id,
  `${line.offer.pack.typed.number} ${line.offer.pack.typed.unit}`,
  line.packs.toString(),
  exact(line.packPrice, currency),
  exact(line.cost, currency),
  currency,
  isoDate(line.arrives),
];

/** With the currency's own decimals, or with all where it has more. */
function exact(micros: bigint, currency: CurrencyCode): string {
  const own = decimalsOf(currency);
  const decimals = [own, 6].find((each) => micros % 10n ** BigInt(6 - each) === 0n) ?? 6;
  return moneyText(whole(micros), decimals);
}
