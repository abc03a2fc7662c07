/** Labels and label sheets as rows of a ledger. */
import { labelsOnASheet } from "@/lib/domain/label/paper";
import { countShown } from "@/lib/edge/figures";
import { NO_BREAK } from "@/lib/edge/shown-digits";
import { LABEL_MARKET_WORDS } from "@/lib/edge/forms/forms-of-labels";
import { NONE, number, type RowView, type Shape, text } from "./row-view";

export const labelRows = ({ productOf }: RowView): Shape<"labels"> => ({
  columns: [text("Label"), text("Sold in"), text("Product"), text("Responsible person")],
  row: ({ title, market, product, responsible }) => ({
    name: title ?? productOf(product).name,
    cells: [LABEL_MARKET_WORDS[market], productOf(product).name, responsible ?? NONE],
  }),
});

export const paperRows = (): Shape<"papers"> => ({
  columns: [text("Label sheet"), text("Page"), number("Labels"), number("Size of one")],
  row: (paper) => ({
    name: paper.name,
    cells: [paper.page, countShown(labelsOnASheet(paper)), `${paper.labelWidth} × ${paper.labelHeight}${NO_BREAK}mm`],
  }),
});
