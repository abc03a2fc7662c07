/** The tables of labels and of the papers that they are printed on, column by column. */
import type { CodeKind, LabelMarket } from "@/lib/domain/label/label";
import type { Page } from "@/lib/domain/label/paper";
import type { DecimalText } from "@/lib/domain/quantity";
import { flag, orNull, small, table, text } from "./columns";

const id = text<string>();
const words = orNull(text<string>());
const length = text<DecimalText>();

export const LABEL_TABLES = {
  labels: table(
    "labels",
    {
      id,
      position: small,
      product: id,
      market: text<LabelMarket>(),
      title: words,
      function: words,
      cautions: words,
      responsible: words,
      address: words,
      contact: words,
      madeIn: words,
      monthsOpen: orNull(small),
      gtin: words,
      code: orNull(text<CodeKind>()),
      showsPh: flag,
      showsMade: flag,
    },
    ["position"],
  ),
  papers: table(
    "papers",
    {
      id,
      position: small,
      name: text<string>(),
      page: text<Page>(),
      columns: small,
      rows: small,
      labelWidth: length,
      labelHeight: length,
      top: length,
      left: length,
      gapAcross: length,
      gapDown: length,
    },
    ["position"],
  ),
};
