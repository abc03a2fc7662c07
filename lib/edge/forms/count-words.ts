/** What a count would change, and why one is refused, in words. @rule LEDGER-13, LEDGER-26 */
import type { CountResult, Difference } from "@/lib/domain/ledger/count-shelf";
import { lotKey, wholeValue } from "@/lib/domain/ledger/posting";
import type { CurrencyCode } from "@/lib/domain/money";
import type { Workshop } from "@/lib/domain/workshop";
import { costsNotKnown, isCostKnown, lotsNotKnown, NOT_KNOWN } from "@/lib/edge/cost-words";
import { inWordsFirst } from "@/lib/edge/counted";
import { moneyShown } from "@/lib/edge/figures";
import { lotWords } from "@/lib/edge/lot-words";
import type { CountTyped } from "./count-form";
import { refusalInWords, type Saying } from "./posting-refusals";
import type { ShownTable } from "./shown-table";

type Refused = Exclude<CountResult, { readonly kind: "posted" }>;

/** @param typed  the count as it was read */
export function countRefusal(
  refused: Refused,
  { day, lines }: Pick<CountTyped, "day" | "lines">,
  saying: Saying,
): string {
  switch (refused.kind) {
    case "stale count":
      return `something of it moved since the form was drawn: ${saying.amount(refused.lot, refused.now)} is written down now. Load the page again and count it once more`;
    case "counted since":
      return `it was counted for ${saying.day(refused.on)} as well, and would not stand as it was counted then. Count it for that day or a later one, or take that count back first`;
    case "not there": {
      const { lot, asked, there, on } = refused;
      const counted = lines.find((line) => lotKey(line.lot) === lotKey(lot))?.counted ?? 0n;
      const only = counted === 0n ? "nothing" : `only ${saying.amount(lot, counted)}`;
      return `with ${only} at the end of ${saying.day(day)}, what was taken later would be missing: ${saying.amount(lot, asked - there)} at the end of ${saying.day(on)}. Count it for that day or a later one, or take back what was taken too much`;
    }
    case "future day":
    case "no such lot":
    case "before the lot":
    case "nothing to post":
    case "asked twice":
    case "out of date":
    case "cost came later":
    case "out of range":
      return refusalInWords(refused, saying);
  }
}

/** What a count would change of each lot, and what that is worth. */
export function countShown(workshop: Workshop, differences: readonly Difference[], saying: Saying): ShownTable {
  const { currency } = workshop.settings;
  const words = lotWords(workshop, []);
  const called = ({ id, of }: Difference["lot"]): string => `${words({ id, of }).name}, lot ${id}`;
  const differing = differences.filter(({ quantity }) => quantity !== 0n);
  const rowsShown = differing.map((each) => [
    called(each.lot),
    saying.amount(each.lot, each.expected),
    saying.amount(each.lot, each.counted),
    saying.amount(each.lot, each.quantity),
    isCostKnown(each) ? moneyShown(wholeValue(each.value), currency) : NOT_KNOWN,
  ]);
  const [first, ...others] = differing;
  if (first === undefined)
    return {
      says: "All that was counted is as it is written down. Keep the count, so that it is known to have been counted; nothing is kept yet.",
      columns: ["Lot", "Written down"],
      rows: differences.map(({ lot, expected }) => [called(lot), saying.amount(lot, expected)]),
      total: null,
    };
  const worth = worthInAll(differing, currency);
  const same = differences.length - differing.length;
  const asWritten = same === 0 ? "" : ` ${inWordsFirst(same)} ${same === 1 ? "is" : "are"} as written down.`;
  return {
    says:
      others.length === 0
        ? `One lot differs: ${called(first.lot)}, ${saying.amount(first.lot, first.quantity)}, ${worth}.${asWritten} Nothing is kept yet.`
        : `${inWordsFirst(differing.length)} lots differ, ${worth}.${asWritten} Nothing is kept yet.`,
    columns: ["Lot", "Written down", "Counted", "Difference", "Worth"],
    rows: rowsShown,
    total: [
      "All",
      "",
      "",
      "",
      costsNotKnown(differing) === differing.length ? NOT_KNOWN : moneyShown(sumOf(differing), currency),
    ],
  };
}

const sumOf = (differing: readonly Difference[]): bigint =>
  differing.reduce((sum, { value }) => sum + wholeValue(value), 0n);

/** `£0.40 less`, and what that leaves out. */
function worthInAll(differing: readonly Difference[], currency: CurrencyCode): string {
  const unknown = costsNotKnown(differing);
  if (unknown === differing.length) return `what that is worth is ${NOT_KNOWN}`;
  const all = sumOf(differing);
  const money = moneyShown(all < 0n ? -all : all, currency);
  const worth = all === 0n ? "worth as much as was written down" : `${money} ${all < 0n ? "less" : "more"}`;
  const inAll = differing.length === 1 ? worth : `${worth} in all`;
  return unknown === 0 ? inAll : `${inAll}, without ${lotsNotKnown(unknown)}`;
}
