/** What a record is used by, so that one in use is not removed and the message can say by what. @rule BOOK-4 */
import { type Batch, openBatches } from "./bench/batch";
import type { Day } from "./calendar";
import type { Books, ClosedRun, RetirableList } from "./desk";
import { byId } from "./index-by-id";
import type { Formula, FormulaLine, Product, Workshop } from "./workshop";

/** The users in one list, in its order; never empty. */
export interface Usage {
  readonly list: UsingList;
  readonly users: readonly User[];
}

export type UsingList =
  | "offers"
  | "lots"
  | "orders"
  | "formulas"
  | "drafts"
  | "versions"
  | "trials"
  | "products"
  | "runs"
  | "finished"
  | "sales"
  | "closedRuns"
  | "batches"
  | "labels";

export interface User {
  /** Null for a sale, which has none. */
  readonly id: string | null;
  /** The name it is known by: its own, or for an offer or order that of its supplier or material; null where the day says it. */
  readonly name: string | null;
  /** The day of a lot, order, run, finished lot or sale. */
  readonly on: Day | null;
}

/**
 * Everything that refers to a record, list by list; nothing where it can be removed.
 * @param list  the list in which the record stands
 * @rule BOOK-4
 */
export function usageOf(books: Books, list: RetirableList, id: string): readonly Usage[] {
  return usersIn(books, list, id).filter(({ users }) => users.length > 0);
}

function usersIn(books: Books, list: RetirableList, id: string): readonly Usage[] {
  const { workshop } = books;
  switch (list) {
    case "suppliers":
      return usersOfSupplier(workshop, id);
    case "materials":
      return [
        ...usersOfMaterial(workshop, id),
        ...inFormulas(books, "material", id),
        inProducts(books, holds(id)),
        openBatchesWhere(books, ({ lines }) => lines.some(({ of }) => of.kind === "material" && of.id === id)),
      ];
    case "offers":
      return [];
    case "formulas":
      return [
        ...inFormulas(books, "formula", id),
        inProducts(books, ({ formula }) => formula === id),
        closedRunsWhere(books, ({ versions }) => versions.some(({ formula }) => formula === id)),
        openBatchesWhere(books, ({ versions }) => versions.some(({ formula }) => formula === id)),
      ];
    case "products":
      return [...usersOfProduct(workshop, id), closedRunsWhere(books, ({ run }) => run.product === id)];
  }
}

function usersOfSupplier({ materials, offers, orders }: Workshop, id: string): readonly Usage[] {
  const materialOf = byId("material", materials);
  return [
    {
      list: "offers",
      users: offers
        .filter(({ supplier }) => supplier === id)
        .map((offer) => ({ id: offer.id, name: materialOf(offer.material).name, on: null })),
    },
    {
      list: "orders",
      users: orders
        .filter(({ supplier }) => supplier === id)
        .map((order) => ({ id: order.id, name: null, on: order.placed })),
    },
  ];
}

function usersOfMaterial({ suppliers, offers, lots, orders }: Workshop, id: string): readonly Usage[] {
  const supplierOf = byId("supplier", suppliers);
  return [
    {
      list: "offers",
      users: offers
        .filter(({ material }) => material === id)
        .map((offer) => ({ id: offer.id, name: supplierOf(offer.supplier).name, on: null })),
    },
    {
      list: "lots",
      users: lots
        .filter(({ material }) => material === id)
        .map((lot) => ({ id: lot.id, name: null, on: lot.received })),
    },
    {
      list: "orders",
      users: orders
        .filter(({ lines }) => lines.some(({ material }) => material === id))
        .map((order) => ({ id: order.id, name: supplierOf(order.supplier).name, on: order.placed })),
    },
  ];
}

function usersOfProduct({ runs, finished, sales, labels }: Workshop, id: string): readonly Usage[] {
  return [
    {
      list: "runs",
      users: runs.filter(({ product }) => product === id).map((run) => ({ id: run.id, name: null, on: run.date })),
    },
    {
      list: "finished",
      users: finished.filter(({ product }) => product === id).map((lot) => ({ id: lot.id, name: null, on: lot.made })),
    },
    {
      list: "sales",
      users: sales.filter(({ product }) => product === id).map(({ date }) => ({ id: null, name: null, on: date })),
    },
    {
      list: "labels",
      users: labels
        .filter(({ product }) => product === id)
        .map((label) => ({ id: label.id, name: label.market, on: null })),
    },
  ];
}

const closedRunsWhere = ({ desk }: Books, used: (closed: ClosedRun) => boolean): Usage => ({
  list: "closedRuns",
  users: desk.closedRuns.filter(used).map(({ run, madeOn }) => ({ id: run.id, name: null, on: madeOn })),
});

/** A batch that is open was frozen with formulas and materials that the Book may not use any more. @rule BENCH-1 */
const openBatchesWhere = ({ desk }: Books, uses: (batch: Batch) => boolean): Usage => ({
  list: "batches",
  users: openBatches(desk.batches)
    .filter(uses)
    .map((batch) => ({ id: batch.run.id, name: null, on: batch.startedOn })),
});

/** Formulas, drafts, earlier versions and trials with a line of it. A draft may still name itself; that does not keep it. */
function inFormulas({ workshop, desk }: Books, kind: "material" | "formula", id: string): readonly Usage[] {
  const hasLine = ({ lines }: { readonly lines: readonly Pick<FormulaLine, "of">[] }): boolean =>
    lines.some(({ of }) => of.kind === kind && of.id === id);
  const isItself = (formula: string): boolean => kind === "formula" && formula === id;
  const named = (formula: Formula) => !isItself(formula.id) && hasLine(formula);
  const users = (formulas: readonly Formula[]): readonly User[] =>
    formulas.filter(named).map((formula) => ({ id: formula.id, name: formula.name, on: null }));
  return [
    { list: "formulas", users: users(workshop.formulas) },
    { list: "drafts", users: users(desk.drafts) },
    {
      list: "versions",
      users: desk.versions
        .filter(({ formula, content }) => content !== null && !isItself(formula) && hasLine(content))
        .map((version) => ({ id: version.formula, name: version.content?.name ?? null, on: version.since })),
    },
    {
      list: "trials",
      users: desk.trials
        .filter((trial) => isItself(trial.formula) || hasLine(trial))
        .map((trial) => ({ id: trial.id, name: trial.name, on: trial.day })),
    },
  ];
}

const holds =
  (materialId: string) =>
  ({ packaging, perRun, madeInto }: Product): boolean =>
    madeInto === materialId || [...packaging, ...perRun].some(({ material }) => material === materialId);

const inProducts = ({ workshop }: Books, uses: (product: Product) => boolean): Usage => ({
  list: "products",
  users: workshop.products.filter(uses).map(({ id, name }) => ({ id, name, on: null })),
});
