/** A recall as rows for a spreadsheet, and its places in words. @rule RECALL-1, RECALL-2 */
import type { Recall, RecallPlace } from "@/lib/domain/ledger/recall";
import type { LotName } from "@/lib/domain/ledger/posting";
import { csvText } from "./csv-text";
import { decimalsThatSay, inDecimals } from "./shown-digits";
import { decimalText } from "./written-figures";
import { WHERE_WORDS } from "./posting-words";
import { times, whole } from "@/lib/domain/fraction";

export const recallPlaceWords = (place: RecallPlace): string =>
  place === "lost within plan" ? "lost in making, within plan" : WHERE_WORDS[place];

const COLUMNS = [
  "Lot",
  "Material or product",
  "Went into lot",
  "Material or product made",
  "Run",
  "Where",
  "Units",
  "Holds of the lot",
  "Unit",
  "Percent of the lot",
];

interface Called {
  readonly recall: Recall;
  /** What a lot is of. */
  readonly nameOf: (lot: LotName) => string;
  readonly measure: "mass" | "count" | "units";
}

const UNIT = { mass: "g", count: "pieces", units: "units" } as const;

/** The lines, and a last one for all that came. */
export function recallCsv({ recall: { lot, came, lines, accounted }, nameOf, measure }: Called): string {
  const amount = (quantity: bigint): string => (measure === "mass" ? grams(quantity) : quantity.toString());
  const share = (quantity: bigint): string => (came === 0n ? "" : percent(quantity, came));
  const own = [lot.id, nameOf(lot)];
  const rows = lines.map(({ into, run, place, units, holding }) => [
    ...own,
    into?.id ?? "",
    into === null ? "" : nameOf(into),
    run ?? "",
    recallPlaceWords(place),
    units?.toString() ?? "",
    amount(holding),
    UNIT[measure],
    share(holding),
  ]);
  const total = [...own, "", "", "", "accounted for", "", amount(accounted), UNIT[measure], share(accounted)];
  const all = [...own, "", "", "", "all that came", "", amount(came), UNIT[measure], share(came)];
  return csvText([COLUMNS, ...rows, total, all]);
}

/** Grams with all six decimals that a microgram has. */
function grams(micrograms: bigint): string {
  const digits = micrograms.toString().padStart(7, "0");
  return `${digits.slice(0, -6)}.${digits.slice(-6)}`;
}

/** To four decimals, or as many as say something; always with a point, since a program reads it. */
function percent(part: bigint, of: bigint): string {
  const share = times({ over: part, under: of }, whole(100n));
  const decimals = decimalsThatSay(share, 4, "nearest");
  return decimalText(inDecimals(share, decimals, "nearest"), decimals);
}
