import type { ReactNode } from "react";
import { MakeIt } from "@/app/_ui/make-it";
import { toBuyLines } from "@/app/_ui/to-buy-working";
import { Working, type WorkingLine } from "@/app/_ui/working";
import { HowItComes } from "@/app/_ui/how-it-comes";
import { MakeWorking } from "@/app/_ui/make-working";
import { arrivalLines, oneDayLater } from "@/app/_ui/arrival-working";
import { arrivalOf, deliveryFrom } from "@/lib/domain/arrivals";
import { type Day, weekday } from "@/lib/domain/calendar";
import { leastLeft } from "@/lib/domain/to-buy";
import { inARow } from "@/lib/edge/counted";
import { dayShown, daysShown, densityShown, stockShown } from "@/lib/edge/figures";
import { leadWords, type MaterialPart } from "./shelf";

/** How the order day was reached. */
export function OrderDayWorking({ outlook, shelf }: MaterialPart): ReactNode {
  const { material, belowSafetyOn } = outlook;
  const amount = (value: bigint): string => stockShown(value, material.measure, "nearest");
  return (
    <>
      {belowSafetyOn !== null && (
        <>
          <h3 className="shelf-further">How the order day comes about</h3>
          <Working lines={orderLines({ outlook, shelf }, belowSafetyOn)} />
          <Arrival outlook={outlook} shelf={shelf} />
        </>
      )}
      <p className="shelf-facts">
        {material.safetyStock ? `Safety stock ${amount(material.safetyStock.quantity)}` : "No safety stock"}
        {material.safetyDays > 0 && `, wanted in the house ${daysShown(material.safetyDays)} before it is needed`}.{" "}
        {material.measure === "mass" &&
          (material.density === null ? "Density not known." : `Density ${densityShown(material.density)}.`)}
      </p>
    </>
  );
}

/** How much is to be bought or made. */
export function PurchaseWorking({ outlook, shelf }: MaterialPart): ReactNode {
  const { material, belowSafetyOn, toBuy, onHand } = outlook;
  const { today, workshop } = shelf;
  const instead = shelf.instead.get(material.id);
  const coverDays = workshop.settings.coverDays ?? workshop.settings.horizonDays;
  const least = leastLeft(outlook, { today, lastDay: shelf.lastDay, coverDays });
  return (
    <>
      {least && (
        <>
          <h3 className="shelf-further">How much to buy</h3>
          <Working lines={toBuyLines({ material, onHand, least, wanted: toBuy, today })} />
          <FirstToCome outlook={outlook} shelf={shelf} />
        </>
      )}
      {belowSafetyOn !== null && (
        <p className="shelf-facts">
          {toBuy > 0n ? (
            <>
              <b>
                {instead !== undefined && outlook.pricedOffer === null ? "Make" : "Buy"}{" "}
                {stockShown(toBuy, material.measure, "lacking")}
              </b>
              : by so much it falls below the safety stock in the {daysShown(coverDays)} from{" "}
              {dayShown(outlook.firstArrival, today)}, the first day on which an order could come.{" "}
              {instead !== undefined && <MakeIt instead={instead} today={today} />}
            </>
          ) : (
            <>
              <b>Nothing to buy.</b> It falls short before an order could come, and what is on the way fills it by then,
              or later than the {daysShown(coverDays)} that a purchase is to cover.
            </>
          )}
        </p>
      )}
      {instead !== undefined && <MakeWorking instead={instead} measure={material.measure} today={today} />}
    </>
  );
}

/** When the first of the offers that may be bought from would come, ordered today. @rule PLAN-7 */
function FirstToCome({ outlook: { offersConsidered, firstArrival }, shelf }: MaterialPart): ReactNode {
  const { today, workshop, supplierOf } = shelf;
  const first = offersConsidered
    .map(({ supplier }) => deliveryFrom(supplierOf(supplier), workshop.settings.closedDays))
    .find((delivery) => arrivalOf(delivery, today) === firstArrival);
  if (first === undefined) return null;
  return (
    <HowItComes
      says={`Ordered today, the first could come ${dayShown(firstArrival, today)}`}
      lines={arrivalLines(first, today, today)}
    />
  );
}

/** What the calendar makes of the lead time. */
function Arrival({ outlook: { pricedOffer, orderBy }, shelf }: MaterialPart): ReactNode {
  if (pricedOffer === null || orderBy === null) return null;
  const { today, workshop, supplierOf } = shelf;
  const delivery = deliveryFrom(supplierOf(pricedOffer.supplier), workshop.settings.closedDays);
  return <Working lines={arrivalLines(delivery, orderBy, today)} notes={[oneDayLater(delivery, orderBy, today)]} />;
}

function orderLines({ outlook, shelf }: MaterialPart, belowSafetyOn: Day): readonly WorkingLine[] {
  const { material, pricedOffer, neededBy, orderBy, daysLate } = outlook;
  const { today, workshop, supplierOf } = shelf;
  const shown = (day: Day): string => dayShown(day, today);
  const safety = material.safetyStock?.quantity ?? 0n;
  const first: WorkingLine = {
    figure: shown(belowSafetyOn),
    reason:
      safety > 0n
        ? `the first day below the safety stock of ${stockShown(safety, material.measure, "nearest")}, if every run goes ahead`
        : "the first day on which a run cannot be met, if every run goes ahead",
  };
  if (neededBy === null || orderBy === null || pricedOffer === null)
    return [
      first,
      {
        figure: "not known",
        reason: `the order day: nobody offers it${shelf.instead.has(material.id) ? ", it is made here" : ""}`,
        isResult: true,
      },
    ];
  const supplier = supplierOf(pricedOffer.supplier);
  const closed = [...new Set([...supplier.closedDays, ...workshop.settings.closedDays])]
    .filter((day) => day >= orderBy && day <= neededBy && weekday(day) <= 5)
    .sort((a, b) => a - b);
  return [
    first,
    ...(material.safetyDays > 0
      ? [{ operator: "−" as const, figure: daysShown(material.safetyDays), reason: "wanted in the house before that" }]
      : []),
    { figure: shown(neededBy), reason: "needed by", isResult: true },
    {
      operator: "−",
      figure: daysShown(supplier.leadDays),
      reason: `${supplier.name} ${leadWords(supplier)}${closed.length > 0 ? `; shut ${inARow(closed.map(shown))}` : ""}`,
    },
    {
      figure: shown(orderBy),
      reason: `order by, the last working day that is early enough${daysLate ? `: ${daysShown(daysLate)} ago` : ""}`,
      isResult: true,
    },
  ];
}
