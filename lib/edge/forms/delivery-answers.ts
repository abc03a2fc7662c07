/** What a delivery would come to line by line, and why one is refused, at the field that it is about. */
import { byId } from "@/lib/domain/index-by-id";
import { lotKey, materialLot } from "@/lib/domain/ledger/posting";
import type { DeliveryRefusal, ReceivedLot } from "@/lib/domain/ledger/receive-delivery";
import type { Refusal } from "@/lib/domain/ledger/refusal";
import type { Workshop } from "@/lib/domain/workshop";
import { moneyShown, priceShown, stockInFull } from "@/lib/edge/figures";
import { inARow } from "@/lib/edge/counted";
import type { DeliveryTyped } from "./delivery-form";
import type { FieldFault } from "./form-reading";
import { refusalInWords, type Saying } from "./posting-refusals";
import type { ShownTable } from "./shown-table";

/** What each line would cost with its shares. */
export function deliveryShown(
  { materials, settings: { currency } }: Workshop,
  { lines, extras }: DeliveryTyped,
  lots: readonly ReceivedLot[],
): ShownTable {
  const materialOf = byId("material", materials);
  const money = (micros: bigint): string => moneyShown(micros, currency);
  const sum = (amounts: readonly bigint[]): bigint => amounts.reduce((all, amount) => all + amount, 0n);
  return {
    says: "Each line becomes a lot at what it costs in the end. Nothing is kept yet.",
    columns: ["Lot", "Quantity", "Paid", ...extras.map(({ what }) => (what === "duty" ? "Duty" : "Delivery")), "Costs"],
    rows: lots.map(({ lot, paid, shares, cost }, at) => {
      const line = lines[at];
      const of = line && materialOf(line.material);
      return [
        of ? `${of.name}, lot ${lot}` : lot,
        line && of ? stockInFull(line.quantity, of.measure) : "",
        priceShown(paid, currency),
        ...shares.map(money),
        money(cost),
      ];
    }),
    total: [
      "All",
      "",
      money(sum(lots.map(({ paid }) => paid))),
      ...extras.map(({ amount }) => money(amount)),
      money(sum(lots.map(({ cost }) => cost))),
    ],
  };
}

type WhyNot =
  | Refusal
  | DeliveryRefusal
  | { readonly kind: "no such material"; readonly material: string }
  | { readonly kind: "no such line on order"; readonly order: string; readonly line: number }
  | { readonly kind: "id of a line on order" | "code of a batch"; readonly lot: string };

const codeOfBatchWords = (lot: string): string =>
  `${lot} is the code of a batch that is open at the bench; write it as ${lot}-2`;

/** A refusal at the line that it is about. */
export function deliveryFault(refusal: WhyNot, { lines }: DeliveryTyped, saying: Saying): FieldFault {
  const ofLot = (lot: string): number => lines.findLastIndex((line) => line.lot === lot);
  const at = (line: number, field: string, message: string): FieldFault => ({
    field: line < 0 ? null : `lines[${String(line)}].${field}`,
    message,
  });
  switch (refusal.kind) {
    case "lot exists":
    case "id of a line on order":
      return at(ofLot(refusal.lot), "lot", `there is a lot ${refusal.lot} already; write it as ${refusal.lot}-2`);
    case "code of a batch":
      return at(ofLot(refusal.lot), "lot", codeOfBatchWords(refusal.lot));
    case "arrived out of date":
      return at(ofLot(refusal.lot), "expires", `was ${saying.day(refusal.expires)}, before the day on which it came`);
    case "no weight": {
      const { extra, lots } = refusal;
      const [first = "", ...others] = lots;
      const more = others.length === 0 ? "" : `, and of ${inARow(others.map((lot) => `lot ${lot}`))} as well`;
      return at(
        ofLot(first),
        "weight",
        `is needed to share the ${extra.what} by weight${more}; write what all pieces of the line weigh together, as 4.2 kg, or share the ${extra.what} by what each line cost or by packs`,
      );
    }
    case "nothing to share by":
      return {
        field: `${refusal.extra.what}By`,
        message: "cannot be by what each line cost: nothing was paid for any of them. Choose packs or weight",
      };
    case "no such material":
      return at(
        lines.findIndex(({ material }) => material === refusal.material),
        "material",
        "is not in the workshop any more; choose another",
      );
    case "no such line on order":
      return at(
        lines.findIndex(({ order }) => order?.line === refusal.line),
        "material",
        `is not what stands in that line of order ${refusal.order} now; take this line out and write a new one`,
      );
    case "future day":
      return { field: "day", message: refusalInWords(refusal, saying) };
    case "asked twice":
    case "nothing to post":
    case "out of range": {
      const { lot } = refusal;
      const line = lot === null ? -1 : lines.findLastIndex((each) => lotKey(materialLot(each.lot)) === lotKey(lot));
      return at(line, "lot", refusalInWords(refusal, saying));
    }
    case "no such lot":
    case "before the lot":
    case "not there":
    case "out of date":
    case "cost came later":
      return { field: null, message: refusalInWords(refusal, saying) };
  }
}
