import Link from "next/link";
import type { ReactNode } from "react";
import type { FrameFault } from "@/lib/domain/buying/buying-frame";
import type { Material, Supplier } from "@/lib/domain/workshop";
import { inARow } from "@/lib/edge/counted";
import { amountShown, dayShown, daysShown, stockShown } from "@/lib/edge/figures";
import type { Day } from "@/lib/domain/calendar";
import { type BuyingView, moneyIn } from "./buying-view";

interface NotHeld {
  readonly view: BuyingView;
  readonly faults: readonly FrameFault[];
  /** Nobody offers them, and nothing is made into them. */
  readonly unsourced: readonly Material[];
  readonly supplierOf: (id: string) => Supplier;
}

/** What the frame or the lack of an offer keeps from the basket: which rule, and by how much. @rule BUY-11 */
export function CannotHold({ view, faults, unsourced, supplierOf }: NotHeld): ReactNode {
  if (faults.length + unsourced.length === 0) return null;
  return (
    <section className="fault buying-not-held" aria-labelledby="not-held">
      <h2 id="not-held">What cannot be done</h2>
      <ul className="fault-list">
        {faults.map((fault, at) => (
          <li key={at}>{wordsFor(fault, view, supplierOf)}</li>
        ))}
        {unsourced.map((material) => (
          <li key={material.id}>
            {material.name}: nobody offers it. <Link href="/book/offers/new">Enter an offer in the Book</Link>
          </li>
        ))}
      </ul>
    </section>
  );
}

function outOfDateWords(
  { material, wanted, used, lastUse }: Extract<FrameFault, { kind: "out of date before use" }>,
  today: Day,
): string {
  const late = stockShown(wanted - used, material.measure, "lacking");
  return `${material.name}: ${late} of ${stockShown(wanted, material.measure, "lacking")} would be out of date before a run takes it, after ${dayShown(lastUse, today)}. Buy that part later.`;
}

function tooLargeWords(
  { offer, of, by }: Extract<FrameFault, { kind: "line too large" }>,
  view: BuyingView,
  supplierOf: NotHeld["supplierOf"],
): string {
  const measure = offer.pack.typed.unit === "each" ? "count" : "mass";
  const beyond = of === "cost" ? moneyIn(view, by) : stockShown(by, measure, "lacking");
  return `What would be ordered of ${supplierOf(offer.supplier).name} in packs of ${amountShown(offer.pack.typed)} is ${beyond} more than can be kept. Correct the pack or the price of that offer.`;
}

function wordsFor(fault: FrameFault, view: BuyingView, supplierOf: NotHeld["supplierOf"]): string {
  const { today } = view;
  switch (fault.kind) {
    case "everyone left out": {
      const { material, suppliers } = fault;
      const names = inARow(suppliers.map((id) => supplierOf(id).name));
      return `${material.name}: offered only by ${names}, and left out with ${suppliers.length === 1 ? "it" : "them"}. Take a supplier in again.`;
    }
    case "nothing in time":
      return `${fault.material.name} cannot come in time: the earliest day is ${dayShown(fault.first, today)}, ${daysShown(fault.daysLate)} after it should be there, ${dayShown(fault.buyBy, today)}. Let it come late, or move the run.`;
    case "nothing wanted":
      return `Nothing is wanted of ${fault.supplier.name}${fault.minimumOrder === null ? "" : `, whose minimum order is ${moneyIn(view, fault.minimumOrder)}`}.`;
    case "chosen offer not wanted":
      return `Nothing is wanted of an offer of ${supplierOf(fault.offer.supplier).name}.`;
    case "out of date before use":
      return outOfDateWords(fault, today);
    case "minimum out of reach":
      return `${fault.supplier.name}’s minimum order cannot be reached without buying what goes out of date: ${moneyIn(view, fault.by)} are missing. Leave it out, cover more days, or let goods go out of date.`;
    case "line too large":
      return tooLargeWords(fault, view, supplierOf);
    case "over the cap":
      return `The least that it costs is ${moneyIn(view, fault.least)}, ${moneyIn(view, fault.by)} more than may be spent.`;
  }
}
