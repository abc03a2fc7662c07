/** The records of a section as rows of a ledger: what each is called, what is said of it, by what it is found. */
import type { Day } from "@/lib/domain/calendar";
import type { Workshop } from "@/lib/domain/workshop";
import { type Column, type RowView, rowView, type Shape } from "./row-view";
import { lotRows, materialRows, offerRows, orderRows, supplierRows } from "./rows-of-buying";
import { formulaRows, productRows } from "./rows-of-making";
import { labelRows, paperRows } from "./rows-of-labels";
import type { Section } from "./sections";

export interface Row {
  readonly id: string;
  readonly name: string;
  /** One for each column but the first. */
  readonly cells: readonly string[];
  readonly isRetired: boolean;
}

export interface Listing {
  readonly columns: readonly Column[];
  readonly rows: readonly Row[];
}

const SHAPES: { readonly [S in Section]: (view: RowView) => Shape<S> } = {
  products: productRows,
  formulas: formulaRows,
  labels: labelRows,
  papers: paperRows,
  materials: materialRows,
  offers: offerRows,
  suppliers: supplierRows,
  lots: lotRows,
  orders: orderRows,
};

/** Every record of a section, in the order of names. */
export function listingOf(
  section: Section,
  workshop: Workshop,
  today: Day,
  retired: ReadonlySet<string> = new Set(),
): Listing {
  const { columns, row } = SHAPES[section](rowView(workshop, today)) as Shape<Section>;
  const records: readonly Workshop[Section][number][] = workshop[section];
  const rows = records
    .map((record) => ({ id: record.id, isRetired: retired.has(record.id), ...row(record) }))
    .sort((a, b) => IN_ORDER.compare(a.name, b.name));
  return { columns, rows };
}

const IN_ORDER = new Intl.Collator("en-GB", { numeric: true, sensitivity: "base" });

/** The rows in which every word of the text stands somewhere. */
export function found(rows: readonly Row[], sought: string): readonly Row[] {
  const words = plain(sought)
    .split(/\s+/)
    .filter((word) => word !== "");
  return rows.filter(({ name, cells }) => {
    const all = plain([name, ...cells].join(" "));
    return words.every((word) => all.includes(word));
  });
}

const plain = (words: string): string => words.normalize("NFKD").replace(/\p{M}/gu, "").toLowerCase();
