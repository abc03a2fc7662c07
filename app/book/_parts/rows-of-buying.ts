/** What is bought, held and on its way as rows of a ledger. */
import type { Route } from "next";
import { ratio } from "@/lib/domain/fraction";
import { progressOf } from "@/lib/domain/orders";
import type { Supplier } from "@/lib/domain/workshop";
import { counted } from "@/lib/edge/counted";
import { amountShown, countShown, daysShown, densityShown, pricePerGramShown, stockShown } from "@/lib/edge/figures";
import { NO_BREAK } from "@/lib/edge/shown-digits";
import { PROGRESS_WORDS } from "@/lib/edge/order-words";
import { lotAddress } from "@/lib/edge/ledger-address";
import { recordPath } from "./addresses";
import { WORKED } from "./offer-working";
import { fig, main, NO_OFFER, NONE, NOT_KNOWN, number, type RowView, type Shape, text, worked } from "./row-view";

const KIND_WORDS = { ingredient: "Ingredient", packaging: "Packaging", consumable: "Consumable" } as const;

export const materialRows = ({ offersOf, formulasOf }: RowView): Shape<"materials"> => ({
  says: ({ id, kind, measure, density }) => [
    `${KIND_WORDS[kind]}, measured by ${measure === "mass" ? "weight" : "pieces"}, with `,
    fig(counted(offersOf(id), "offer", "offers")),
    ", in ",
    fig(counted(formulasOf(id), "formula", "formulas")),
    ...(density === null ? [] : ["; ", fig(densityShown(density))]),
    ".",
  ],
  columns: [text("Material"), text("Kind"), number("Offers"), number("In formulas"), number("Density")],
  row: ({ id, name, kind, measure, density }) => ({
    name,
    cells: [
      KIND_WORDS[kind],
      offersOf(id) === 0 ? NO_OFFER : countShown(offersOf(id)),
      countShown(formulasOf(id)),
      density !== null ? densityShown(density) : measure === "mass" ? NOT_KNOWN : NONE,
    ],
  }),
});

const offerWorked = (id: string): Route => `${recordPath("offers", id)}#${WORKED}` as Route;

export const offerRows = ({ materialOf, supplierOf, money, currency }: RowView): Shape<"offers"> => ({
  says: ({ id, material, supplier, pack, price, preferred }) => [
    fig(amountShown(pack.typed)),
    ` from ${supplierOf(supplier).name} at `,
    fig(money(price)),
    ", ",
    fig(pricePerGramShown(ratio(price, pack.quantity), materialOf(material).measure, currency), offerWorked(id)),
    ` a ${materialOf(material).measure === "mass" ? "gram" : "piece"}${preferred ? "; preferred" : ""}.`,
  ],
  columns: [
    text("Material"),
    text("Supplier"),
    number("Pack"),
    main(number("Price")),
    worked("A gram or piece", offerWorked),
  ],
  row: ({ material, supplier, pack, price, preferred }) => ({
    name: materialOf(material).name,
    cells: [
      supplierOf(supplier).name + (preferred ? ", preferred" : ""),
      amountShown(pack.typed),
      money(price),
      pricePerGramShown(ratio(price, pack.quantity), materialOf(material).measure, currency),
    ],
  }),
});

const comesIn = ({ leadDays, leadCounts }: Pick<Supplier, "leadDays" | "leadCounts">): string =>
  leadCounts === "working"
    ? `${countShown(leadDays)}${NO_BREAK}working${NO_BREAK}${leadDays === 1 ? "day" : "days"}`
    : daysShown(leadDays);

export const supplierRows = ({ offersBy, money }: RowView): Shape<"suppliers"> => ({
  says: ({ id, leadDays, leadCounts, shipping, shippingFreeFrom, minimumOrder }) => [
    "Comes in ",
    fig(comesIn({ leadDays, leadCounts })),
    ", delivery ",
    fig(money(shipping)),
    ...(shippingFreeFrom === null ? [] : [", free from ", fig(money(shippingFreeFrom))]),
    ...(minimumOrder === null ? [] : [", no order below ", fig(money(minimumOrder))]),
    ", ",
    fig(counted(offersBy(id), "offer", "offers")),
    ".",
  ],
  columns: [text("Supplier"), text("Comes in"), number("Delivery"), number("Minimum order"), number("Offers")],
  row: ({ id, name, leadDays, leadCounts, shipping, minimumOrder }) => ({
    name,
    cells: [
      comesIn({ leadDays, leadCounts }),
      money(shipping),
      money(minimumOrder),
      offersBy(id) === 0 ? NO_OFFER : countShown(offersBy(id)),
    ],
  }),
});

/** What is there of a lot is what its postings come to, which stand in its history. */
const itsHistory = (id: string): Route => lotAddress(id) as Route;

export const lotRows = ({ materialOf, money, day }: RowView): Shape<"lots"> => ({
  says: ({ id, material, remaining, value, received, expires }) => [
    ...(remaining === 0n
      ? ["Used up"]
      : [
          fig(stockShown(remaining, materialOf(material).measure, "there"), itsHistory(id)),
          " left, worth ",
          fig(money(value), itsHistory(id)),
        ]),
    ", received ",
    fig(day(received)),
    ...(expires === null ? [] : ["; last day of use ", fig(day(expires))]),
    ".",
  ],
  columns: [
    text("Material"),
    text("Lot"),
    main(worked("What is left", itsHistory)),
    worked("What it cost", itsHistory),
    number("Last day of use"),
  ],
  row: ({ id, material, remaining, value, expires }) => ({
    name: materialOf(material).name,
    cells: [id, stockShown(remaining, materialOf(material).measure, "there"), money(value), day(expires)],
  }),
});

export const orderRows = ({ materialOf, supplierOf, day }: RowView): Shape<"orders"> => ({
  says: (order) => [
    `${comes(order.lines.map(({ material }) => materialOf(material).name))}: ${PROGRESS_WORDS[progressOf(order)].toLowerCase()}`,
    ...(order.state === "drafted" ? [] : [", ordered ", fig(day(order.placed))]),
    ", due ",
    fig(day(order.due)),
    ".",
  ],
  columns: [text("Supplier"), text("Order"), text("What comes"), text("State"), number("Ordered"), number("Due")],
  row: (order) => ({
    name: supplierOf(order.supplier).name,
    cells: [
      order.id,
      comes(order.lines.map(({ material }) => materialOf(material).name)),
      PROGRESS_WORDS[progressOf(order)],
      order.state === "drafted" ? NONE : day(order.placed),
      day(order.due),
    ],
  }),
});

const comes = ([first = "", ...others]: readonly string[]): string =>
  others.length === 0 ? first : `${first} and ${counted(others.length, "more", "more")}`;
