/** What the rows of every section are made with: names by id, how often each is named, how figures are shown. */
import type { Route } from "next";
import type { Day } from "@/lib/domain/calendar";
import { byId } from "@/lib/domain/index-by-id";
import type { Workshop } from "@/lib/domain/workshop";
import { dayShown, priceShown } from "@/lib/edge/figures";
import type { Section } from "./sections";

export interface Column {
  readonly name: string;
  readonly kind: "text" | "number";
  /** Its figures are worked out, and open to their arithmetic at this address. */
  readonly opensAt?: (id: string) => Route;
  /** On a phone it stands at the right of the first line, beside the name. */
  readonly isMain?: boolean;
}

/** A sentence in parts, the figures of it heavier, and leading to their arithmetic where they were worked out. */
export type Said = readonly (string | { readonly figure: string; readonly to?: Route })[];

type RecordOf<S extends Section> = Workshop[S][number];

/** How a section's records become rows. */
export interface Shape<S extends Section> {
  readonly columns: readonly Column[];
  readonly row: (record: RecordOf<S>) => { readonly name: string; readonly cells: readonly string[] };
  /** What the record is, in a sentence. */
  readonly says: (record: RecordOf<S>) => Said;
}

export const text = (name: string): Column => ({ name, kind: "text" });
export const number = (name: string): Column => ({ name, kind: "number" });
export const main = (column: Column): Column => ({ ...column, isMain: true });
export const worked = (name: string, opensAt: (id: string) => Route): Column => ({ name, kind: "number", opensAt });

/** What is not there. */
export const NONE = "–";
/** What is nobody's guess: a figure that was not written down. */
export const NOT_KNOWN = "not known";
export const NO_OFFER = "no offer";
/** Cells that say that there is nothing, and are read over. */
export const QUIET: ReadonlySet<string> = new Set([NONE, NOT_KNOWN, NO_OFFER, "0"]);

/** A figure of a sentence. */
export const fig = (figure: string, to?: Route): { readonly figure: string; readonly to?: Route } =>
  to === undefined ? { figure } : { figure, to };

export type RowView = ReturnType<typeof rowView>;

export function rowView(workshop: Workshop, today: Day) {
  const { currency } = workshop.settings;
  return {
    currency,
    materialOf: byId("material", workshop.materials),
    supplierOf: byId("supplier", workshop.suppliers),
    formulaOf: byId("formula", workshop.formulas),
    productOf: byId("product", workshop.products),
    day: (on: Day | null): string => (on === null ? NONE : dayShown(on, today, { weekday: false, year: true })),
    money: (amount: bigint | null): string => (amount === null ? NONE : priceShown(amount, currency)),
    offersOf: counter(workshop.offers, ({ material }) => [material]),
    offersBy: counter(workshop.offers, ({ supplier }) => [supplier]),
    formulasOf: counter(workshop.formulas, ({ lines }) => lines.map(({ of }) => of.id)),
    productsOf: counter(workshop.products, ({ formula }) => [formula]),
  };
}

/** How often each id is named by the records of a list. */
function counter<T>(records: readonly T[], idsOf: (record: T) => readonly string[]): (id: string) => number {
  const counts = new Map<string, number>();
  for (const id of records.flatMap((record) => [...new Set(idsOf(record))])) counts.set(id, (counts.get(id) ?? 0) + 1);
  return (id) => counts.get(id) ?? 0;
}
