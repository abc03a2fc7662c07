/** Products and formulas as rows of a ledger. */
import { amountShown, countShown, densityShown } from "@/lib/edge/figures";
import { unitsInWords } from "@/lib/edge/forms/posting-forms";
import { NONE, number, type RowView, type Shape, text } from "./row-view";

export const productRows = ({ formulaOf, money }: RowView): Shape<"products"> => ({
  columns: [
    text("Product"),
    text("Formula"),
    number("Fill"),
    number("Usual run"),
    number("To shops"),
    number("To customers"),
  ],
  row: ({ name, formula, fill, usualRun, priceToShops, priceToCustomers }) => ({
    name,
    cells: [
      formulaOf(formula).name,
      amountShown(fill.typed),
      unitsInWords(usualRun),
      money(priceToShops),
      money(priceToCustomers),
    ],
  }),
});

export const formulaRows = ({ productsOf, formulasOf }: RowView): Shape<"formulas"> => ({
  columns: [text("Formula"), number("Lines"), number("Products"), number("In formulas"), number("Density")],
  row: ({ id, name, lines, density }) => ({
    name,
    cells: [
      countShown(lines.length),
      countShown(productsOf(id)),
      countShown(formulasOf(id)),
      density === null ? NONE : densityShown(density),
    ],
  }),
});
