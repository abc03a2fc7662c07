/** Labels and label sheets as rows of a ledger. */
import { labelsOnASheet } from "@/lib/domain/label/paper";
import { countShown } from "@/lib/edge/figures";
import { counted } from "@/lib/edge/counted";
import { MARKET_IN_A_SENTENCE } from "@/lib/edge/forms/fact-words";
import { NO_BREAK } from "@/lib/edge/shown-digits";
import { LABEL_MARKET_WORDS } from "@/lib/edge/forms/forms-of-labels";
import { fig, NONE, number, type RowView, type Shape, text } from "./row-view";

export const labelRows = ({ productOf }: RowView): Shape<"labels"> => ({
  says: ({ market, product, responsible }) => [
    "For ",
    fig(productOf(product).name),
    `, sold in ${MARKET_IN_A_SENTENCE[market]}; `,
    responsible === null ? "who is responsible is not written yet." : `${responsible} is responsible.`,
  ],
  columns: [text("Label"), text("Sold in"), text("Product"), text("Responsible person")],
  row: ({ title, market, product, responsible }) => ({
    name: title ?? productOf(product).name,
    cells: [LABEL_MARKET_WORDS[market], productOf(product).name, responsible ?? NONE],
  }),
});

export const paperRows = (): Shape<"papers"> => ({
  says: (paper) => [
    fig(counted(labelsOnASheet(paper), "label", "labels")),
    " of ",
    fig(`${paper.labelWidth} × ${paper.labelHeight}${NO_BREAK}mm`),
    ` on ${paper.page}.`,
  ],
  columns: [text("Label sheet"), text("Page"), number("Labels"), number("Size of one")],
  row: (paper) => ({
    name: paper.name,
    cells: [paper.page, countShown(labelsOnASheet(paper)), `${paper.labelWidth} × ${paper.labelHeight}${NO_BREAK}mm`],
  }),
});
