import type { ReactNode } from "react";
import { HowItComes } from "@/app/_ui/how-it-comes";
import { Ledger } from "@/app/_ui/ledger";
import type { WorkingLine } from "@/app/_ui/working";
import type { Day } from "@/lib/domain/calendar";
import { reorderPoint, safetyStockFor } from "@/lib/domain/buying/reorder-suggestions";
import type { MaterialOutlook } from "@/lib/domain/plan-figures";
import type { Offer, Workshop } from "@/lib/domain/workshop";
import { amountShown, dayShown, moneyShown, stockShown } from "@/lib/edge/figures";
import type { SuggestionInputs } from "@/lib/edge/forms/suggestion-inputs";
import { economicOf, yearlyUseOf } from "./suggestions-worked";
import { economicLines, pointLines, safetyLines } from "./suggestion-working";

interface Suggested {
  readonly inputs: SuggestionInputs;
  readonly outlook: MaterialOutlook;
  readonly workshop: Workshop;
  readonly today: Day;
}

const COLUMNS = [
  { name: "Suggestion" },
  { name: "The textbook says", kind: "number" },
  { name: "The plan says", kind: "number" },
] as const;

/** Each figure with its formula, beside what the plan has. @rule BUY-13, BUY-14 */
export function Suggestions({ inputs, outlook, workshop, today }: Suggested): ReactNode {
  const { material, pricedOffer, toBuy, belowSafetyOn, onHand } = outlook;
  const { demand } = inputs;
  const shown = (held: bigint): string => stockShown(held, material.measure, "lacking");
  const safety = safetyStockFor(demand);
  const { currency } = workshop.settings;
  const order = pricedOffer === null ? null : economicOf(inputs, pricedOffer);
  const kept = material.safetyStock;
  return (
    <section aria-labelledby="suggested">
      <h2 id="suggested">Suggestions, not orders</h2>
      <Ledger caption={`Suggestions for ${material.name}, beside the plan`} columns={COLUMNS} className="order-lines">
        <Row
          name="Safety stock"
          words="What covers the swings of use and of lead time, for as many orders as should not run short."
          formula="z × √(lead × deviation of a day² + use of a day² × deviation of the lead²)"
          textbook={shown(safety)}
          plan={kept === null ? "none is kept" : shown(kept.quantity)}
          lines={safetyLines(demand, material.measure)}
        />
        <Row
          name="Reorder point"
          words="Order when no more than this is left: what is used until it comes, and the safety stock."
          formula="use of a day × lead + safety stock"
          textbook={shown(reorderPoint(demand))}
          plan={
            belowSafetyOn === null
              ? `${shown(onHand)} here, enough to the end`
              : `${shown(onHand)} here, too little from ${dayShown(belowSafetyOn, today)}`
          }
          lines={pointLines(demand, material.measure)}
        />
        <Row
          name="Economic order"
          words="How much at once, so that ordering and keeping cost least together, within the offer’s price breaks."
          formula="√(2 × cost of an order × use of a year ÷ keeping one for a year)"
          textbook={
            order === null ? "no figure: nothing is used, or ordering or keeping is free" : shown(order.quantity)
          }
          plan={toBuy === 0n ? "nothing to buy" : `${shown(toBuy)} to buy`}
          lines={
            order === null
              ? []
              : economicLines({ order, inputs, yearlyUse: yearlyUseOf(inputs), measure: material.measure, currency })
          }
        />
      </Ledger>
      {order !== null && pricedOffer !== null && (
        <p className="small soft">
          That is {packsFor(order.quantity, pricedOffer)} of {amountShown(pricedOffer.pack.typed)}, and would cost{" "}
          {moneyShown(order.yearlyCost, currency)} a year with orders and keeping.
        </p>
      )}
      <WhatIsAssumed />
    </section>
  );
}

const WhatIsAssumed = (): ReactNode => (
  <p className="small soft">
    The use of a day is that of the planned runs alone, as long as you write nothing else: what was sold, and what was
    made before today, do not count. They assume that use and lead time vary by chance, independently, as the normal
    distribution has it, and that the use goes on as it is. A bench that makes to a plan should trust the plan first.
  </p>
);

const Row = ({
  name,
  words,
  formula,
  textbook,
  plan,
  lines,
}: {
  readonly name: string;
  readonly words: string;
  readonly formula: string;
  readonly textbook: string;
  readonly plan: string;
  readonly lines: readonly WorkingLine[];
}): ReactNode => (
  <>
    <tr className={lines.length > 0 ? "with-note" : undefined}>
      <th scope="row">
        {name}
        <small>{words}</small>
        <small>{formula}</small>
      </th>
      <td className="number end">{textbook}</td>
      <td className="number second-line">
        <span className="phone-only">The plan says: </span>
        {plan}
      </td>
    </tr>
    {lines.length > 0 && (
      <tr className="line-note">
        <td colSpan={COLUMNS.length}>
          <HowItComes lines={lines} />
        </td>
      </tr>
    )}
  </>
);

/** The nearest whole number of packs, at least one. */
function packsFor(wanted: bigint, { pack }: Offer): string {
  const packs = (wanted * 2n + pack.quantity) / (pack.quantity * 2n);
  return packs <= 1n ? "about one pack" : `about ${packs.toString()} packs`;
}
