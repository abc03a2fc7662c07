/** The records of a section as rows of a ledger: what each is called, what is said of it, by what it is found. */
import type { Day } from "@/lib/domain/calendar";
import type { Workshop } from "@/lib/domain/workshop";
import { type Mark, marksIn } from "@/lib/edge/record-marks";
import { type Column, type RowView, rowView, type Said, type Shape } from "./row-view";
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
  readonly mark: Mark | null;
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

/** Every record of a section, in the order of names; what is to be looked at before, and what is done with after. */
export function listingOf(
  section: Section,
  workshop: Workshop,
  today: Day,
  retired: ReadonlySet<string> = new Set(),
): Listing {
  const { columns, row } = SHAPES[section](rowView(workshop, today)) as Shape<Section>;
  const records: readonly Workshop[Section][number][] = workshop[section];
  const marks = marksIn(section, workshop, today);
  const rows = records
    .map((record): Row => ({
      id: record.id,
      isRetired: retired.has(record.id),
      mark: marks.get(record.id) ?? null,
      ...row(record),
    }))
    .sort((a, b) => placeOf(a) - placeOf(b) || IN_ORDER.compare(a.name, b.name));
  return { columns, rows };
}

const placeOf = ({ mark }: Row): number => (mark?.place === "first" ? -1 : mark?.place === "last" ? 1 : 0);

/** What a record is called, and what it is in a sentence; null where there is none of that id. */
export function saidOf(
  section: Section,
  workshop: Workshop,
  today: Day,
  id: string,
): { readonly name: string; readonly says: Said } | null {
  const { row, says } = SHAPES[section](rowView(workshop, today)) as Shape<Section>;
  const records: readonly Workshop[Section][number][] = workshop[section];
  const record = records.find((one) => one.id === id);
  return record === undefined ? null : { name: row(record).name, says: says(record) };
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
