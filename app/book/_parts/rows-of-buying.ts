/** What is bought, held and on its way as rows of a ledger. */
import type { Route } from "next";
import { ratio } from "@/lib/domain/fraction";
import { counted } from "@/lib/edge/counted";
import { amountShown, countShown, daysShown, densityShown, pricePerGramShown, stockShown } from "@/lib/edge/figures";
import { NO_BREAK } from "@/lib/edge/shown-digits";
import { lotAddress } from "@/lib/edge/ledger-address";
import { recordPath } from "./addresses";
import { WORKED } from "./offer-working";
import { NONE, number, type RowView, type Shape, text, worked } from "./row-view";

const KIND_WORDS = { ingredient: "Ingredient", packaging: "Packaging", consumable: "Consumable" } as const;

export const materialRows = ({ offersOf, formulasOf }: RowView): Shape<"materials"> => ({
  columns: [text("Material"), text("Kind"), number("Offers"), number("In formulas"), number("Density")],
  row: ({ id, name, kind, density }) => ({
    name,
    cells: [
      KIND_WORDS[kind],
      countShown(offersOf(id)),
      countShown(formulasOf(id)),
      density === null ? NONE : densityShown(density),
    ],
  }),
});

const offerWorked = (id: string): Route => `${recordPath("offers", id)}#${WORKED}` as Route;

export const offerRows = ({ materialOf, supplierOf, money, currency }: RowView): Shape<"offers"> => ({
  columns: [
    text("Material"),
    text("Supplier"),
    number("Pack"),
    number("Price"),
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

export const supplierRows = ({ offersBy, money }: RowView): Shape<"suppliers"> => ({
  columns: [text("Supplier"), text("Comes in"), number("Delivery"), number("Minimum order"), number("Offers")],
  row: ({ id, name, leadDays, leadCounts, shipping, minimumOrder }) => ({
    name,
    cells: [
      leadCounts === "working"
        ? `${countShown(leadDays)}${NO_BREAK}working${NO_BREAK}${leadDays === 1 ? "day" : "days"}`
        : daysShown(leadDays),
      money(shipping),
      money(minimumOrder),
      countShown(offersBy(id)),
    ],
  }),
});

/** What is there of a lot is what its postings come to, which stand in its history. */
const itsHistory = (id: string): Route => lotAddress(id) as Route;

export const lotRows = ({ materialOf, money, day }: RowView): Shape<"lots"> => ({
  columns: [
    text("Material"),
    text("Lot"),
    worked("What is left", itsHistory),
    worked("What it cost", itsHistory),
    number("Last day of use"),
  ],
  row: ({ id, material, remaining, value, expires }) => ({
    name: materialOf(material).name,
    cells: [id, stockShown(remaining, materialOf(material).measure, "there"), money(value), day(expires)],
  }),
});

export const orderRows = ({ materialOf, supplierOf, day }: RowView): Shape<"orders"> => ({
  columns: [text("Supplier"), text("Order"), text("What comes"), number("Ordered"), number("Due")],
  row: ({ id, supplier, lines, placed, due }) => ({
    name: supplierOf(supplier).name,
    cells: [id, comes(lines.map(({ material }) => materialOf(material).name)), day(placed), day(due)],
  }),
});

const comes = ([first = "", ...others]: readonly string[]): string =>
  others.length === 0 ? first : `${first} and ${counted(others.length, "more", "more")}`;
