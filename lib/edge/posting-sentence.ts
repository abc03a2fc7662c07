/** What a posting did, in one sentence. @rule LEDGER-2 */
import {
  type Entry,
  isNothing,
  lotKey,
  type LotName,
  lotsOf,
  type PlaceKind,
  type Posting,
  wholeValue,
} from "@/lib/domain/ledger/posting";
import type { CurrencyCode } from "@/lib/domain/money";
import { isCostKnown, NOT_KNOWN } from "./cost-words";
import { inARow } from "./counted";
import { moneyShown } from "./figures";
import type { LotWords } from "./lot-words";

const CAME_TO: Readonly<Record<PlaceKind, string>> = {
  supplier: "went back to the supplier",
  shelf: "came onto the shelf",
  hold: "was put on hold",
  batch: "went into the batch",
  finished: "came into finished stock",
  sold: "was sold",
  lost: "was lost",
  expired: "was written off as out of date",
  counted: "was missing at the count",
  labour: "went back to labour",
  overhead: "went back to overhead",
};

/** Where such a posting takes a lot to is where it once came from, and nothing went there. */
const PUTS_RIGHT: ReadonlySet<Posting["kind"]> = new Set(["correction", "reversal"]);

/**
 * `2,200 g of Glycerin, worth £14.30, came onto the shelf.`
 * @returns nothing for a posting of many lots, or of none, and for one that puts another right: its entries say it better
 */
export function movedInWords(
  posting: Pick<Posting, "kind" | "entries">,
  words: (lot: LotName) => LotWords,
  currency: CurrencyCode,
): string {
  if (PUTS_RIGHT.has(posting.kind)) return "";
  const [lot, ...others] = lotsOf(posting);
  if (lot === undefined || others.length > 0) return "";
  const came = posting.entries.filter((entry) => lotKey(entry.lot) === lotKey(lot) && entry.quantity > 0n);
  if (came.length === 0) return "";
  const { name, shown } = words(lot);
  const worth = (entry: Entry): string =>
    !isCostKnown(entry)
      ? `, its cost ${NOT_KNOWN},`
      : isNothing(entry.value)
        ? ""
        : `, worth ${moneyShown(wholeValue(entry.value), currency)},`;
  return `${inARow(
    came.map(
      (entry, at) =>
        `${shown(entry.quantity)}${at === 0 ? ` of ${name}` : ""}${worth(entry)} ${wentWhere(posting, entry)}`,
    ),
  )}.`;
}

/** What a count finds more than was written down comes from nowhere. */
const wentWhere = ({ kind }: Pick<Posting, "kind">, { place }: Entry): string =>
  kind === "counted" && (place.kind === "shelf" || place.kind === "finished")
    ? "was found at the count"
    : CAME_TO[place.kind];
