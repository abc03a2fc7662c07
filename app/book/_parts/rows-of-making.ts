/** Products and formulas as rows of a ledger. */
import { counted } from "@/lib/edge/counted";
import { amountShown, countShown, densityShown } from "@/lib/edge/figures";
import { unitsInWords } from "@/lib/edge/forms/posting-forms";
import { asSentence } from "@/app/_ui/sentence";
import { fig, main, NOT_KNOWN, number, type RowView, type Shape, text } from "./row-view";

export const productRows = ({ formulaOf, money }: RowView): Shape<"products"> => ({
  says: ({ formula, fill, usualRun, priceToShops, priceToCustomers }) => [
    fig(amountShown(fill.typed)),
    ` of ${formulaOf(formula).name}, `,
    fig(unitsInWords(usualRun)),
    " in a usual run; ",
    ...(priceToShops === null && priceToCustomers === null ? ["without a price"] : []),
    ...(priceToShops === null ? [] : [fig(money(priceToShops)), " to shops"]),
    ...(priceToShops === null || priceToCustomers === null ? [] : [", "]),
    ...(priceToCustomers === null ? [] : [fig(money(priceToCustomers)), " to customers"]),
    ".",
  ],
  columns: [
    text("Product"),
    text("Formula"),
    number("Fill"),
    number("Usual run"),
    number("To shops"),
    main(number("To customers")),
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
  says: ({ id, lines, density }) => [
    fig(asSentence(counted(lines.length, "line", "lines"))),
    ", in ",
    fig(counted(productsOf(id), "product", "products")),
    ...(formulasOf(id) === 0 ? [] : [" and ", fig(counted(formulasOf(id), "formula", "formulas"))]),
    ...(density === null ? [] : ["; ", fig(densityShown(density))]),
    ".",
  ],
  columns: [text("Formula"), number("Lines"), number("Products"), number("In formulas"), number("Density")],
  row: ({ id, name, lines, density }) => ({
    name,
    cells: [
      countShown(lines.length),
      countShown(productsOf(id)),
      countShown(formulasOf(id)),
      density === null ? NOT_KNOWN : densityShown(density),
    ],
  }),
});
