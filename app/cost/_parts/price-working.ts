import { isUsable } from "@/lib/domain/lots";
import type { Price, PriceSource } from "@/lib/domain/plan-figures";
import { total } from "@/lib/domain/fraction";
import type { Material } from "@/lib/domain/workshop";
import { counted, inARow } from "@/lib/edge/counted";
import {
  amountShown,
  countShown,
  moneyShown,
  pricePerGramShown,
  priceShown,
  stockInFull,
  stockShown,
} from "@/lib/edge/figures";
import { packReason } from "@/lib/edge/pack-words";
import type { WorkingLine } from "@/app/_ui/working";
import type { CostView } from "./cost-view";

/** Arithmetic, and what is to be said about it in words. */
export interface Opened {
  readonly lines: readonly WorkingLine[];
  readonly notes: readonly string[];
}

type From<Kind extends PriceSource["kind"]> = Extract<PriceSource, { kind: Kind }>;

/** What a material is bought as, in a few words. */
export function boughtAs(price: Price | null, { currency }: CostView): string {
  if (price === null) return "no offer, no usable lot";
  const { from } = price;
  switch (from.kind) {
    case "offer":
      return `${amountShown(from.offer.pack.typed)}, ${priceShown(from.packPrice, currency)}`;
    case "average":
      return "what the shelf cost";
    case "shelf":
      return `${counted(from.draws.length, "lot", "lots")}${from.topUp ? ", rest bought" : ""}`;
  }
}

/** How the price of one gram or piece came about, down to the pack and its density, or the lots. */
export function priceWorking(material: Material, price: Price | null, view: CostView): Opened {
  if (price === null)
    return {
      lines: [],
      notes: [
        `Nothing prices ${material.name}: no supplier offers it, and no usable lot is on the shelf. Add an offer or a lot in the Book. Until then it is not counted as zero: what this product costs is not known.`,
      ],
    };
  const each: WorkingLine = {
    figure: pricePerGramShown(price.each, material.measure, view.currency),
    reason: material.measure === "mass" ? "for one gram" : "for one piece",
    isResult: true,
  };
  const { lines, notes } = sourceWorking(material, price.from, view);
  return { lines: [...lines, each], notes };
}

function sourceWorking(material: Material, from: PriceSource, view: CostView): Opened {
  switch (from.kind) {
    case "offer":
      return offerWorking(material, from, view);
    case "average":
      return averageWorking(material, from, view);
    case "shelf":
      return shelfWorking(material, from, view);
  }
}

function offerWorking(material: Material, { offer, packs, packPrice }: From<"offer">, view: CostView): Opened {
  const { currency, supplierName, offersOf, basis } = view;
  const pack = amountShown(offer.pack.typed);
  const order = packs > 1n ? `, at its fewest packs, ${countShown(packs)}` : "";
  const others = offersOf(material.id).length;
  const why = offer.preferred
    ? "It is the preferred offer."
    : others > 1
      ? `Of ${counted(others, "offer", "offers")} it has the lowest price for a ${material.measure === "mass" ? "gram" : "piece"} at its fewest packs.`
      : null;
  return {
    lines: [
      { figure: priceShown(packPrice, currency), reason: `${pack} from ${supplierName(offer.supplier)}${order}` },
      {
        operator: "÷",
        figure: stockInFull(offer.pack.quantity, material.measure),
        reason: packReason(material, offer.pack),
      },
    ],
    notes: [
      ...(why ? [why] : []),
      ...(packPrice === offer.price ? [] : [`One pack alone is ${priceShown(offer.price, currency)}.`]),
      ...(basis === "replacement" ? [] : ["Nothing usable is on the shelf, so it is priced as if bought now."]),
    ],
  };
}

function averageWorking(material: Material, { value, quantity }: From<"average">, view: CostView): Opened {
  const usable = view.lotsOf(material.id).filter((lot) => lot.remaining > 0n && isUsable(lot, view.today));
  const lots = usable.length > 5 ? countShown(usable.length) : inARow(usable.map(({ id }) => id));
  return {
    lines: [
      {
        figure: priceShown(value, view.currency),
        reason: `paid for what is left of ${usable.length === 1 ? "lot" : "lots"} ${lots}`,
      },
      { operator: "÷", figure: stockInFull(quantity, material.measure), reason: "usable today" },
    ],
    notes: view.basis === "replacement" ? ["No supplier offers it, so what the shelf cost counts."] : [],
  };
}

function shelfWorking(material: Material, { draws, topUp }: From<"shelf">, view: CostView): Opened {
  const { currency, product } = view;
  const amount = (quantity: Parameters<typeof stockInFull>[0]) => stockShown(quantity, material.measure, "nearest");
  const quantities = draws.map(({ quantity }) => quantity);
  const run = total(topUp ? [...quantities, topUp.quantity] : quantities);
  return {
    lines: [
      ...draws.map(({ lot, quantity, value }, at): WorkingLine => ({
        ...(at > 0 && { operator: "+" as const }),
        figure: moneyShown(value, currency, 2),
        reason: `${amount(quantity)} of lot ${lot.id}, which cost ${priceShown(lot.value, currency)} for ${amount(lot.remaining)}`,
      })),
      ...(topUp
        ? [
            {
              operator: "+" as const,
              figure: moneyShown(
                {
                  over: topUp.quantity.over * topUp.price.each.over,
                  under: topUp.quantity.under * topUp.price.each.under,
                },
                currency,
                2,
              ),
              reason: `${amount(topUp.quantity)} that the shelf lacks, at ${pricePerGramShown(topUp.price.each, material.measure, currency)} if bought now`,
            },
          ]
        : []),
      {
        operator: "÷",
        figure: stockInFull(run, material.measure),
        reason: `what a run of ${countShown(product.usualRun)} draws today, first expired first out`,
      },
    ],
    notes: [],
  };
}
