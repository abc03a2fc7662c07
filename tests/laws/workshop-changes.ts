/** Changes to a workshop file under which its plan must change in a known way, or not at all. */
import { dateAfter, diceFrom, shuffled } from "../helpers/random-dice";
import { REAL_TODAY } from "../helpers/random-workshop";
import { byCodePoint } from "../second/exact";
import type { WorkshopFile } from "../second/file-shape";

const DATE = /^\d{4}-\d{2}-\d{2}$/;

/** The same value with every string changed that `change` changes. */
function everyText(value: unknown, change: (text: string) => string): unknown {
  if (typeof value === "string") return change(value);
  if (Array.isArray(value)) return value.map((item) => everyText(item, change));
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, item]) => [key, everyText(item, change)]));
}

/** Every date moved by so many days, the workshop's today with them. */
export function movedBy<T>(value: T, days: number): T {
  return everyText(value, (text) => (DATE.test(text) ? dateAfter(text, days) : text)) as T;
}

/** The file with its today written down, so that it can be moved. */
export const withToday = (file: WorkshopFile): WorkshopFile => ({
  ...file,
  workshop: { ...file.workshop, today: file.workshop.today ?? REAL_TODAY },
});

export interface Renaming {
  readonly file: WorkshopFile;
  /** The new name of a material, product, run, lot, offer or supplier. */
  readonly material: (id: string) => string;
  readonly product: (id: string) => string;
  readonly run: (id: string) => string;
  readonly lot: (id: string) => string;
  readonly offer: (id: string) => string;
  readonly supplier: (id: string) => string;
}

/** New names in the same order for what an old name can come before or after. */
function inOrder(ids: readonly string[], prefix: string): (id: string) => string {
  const ranks = new Map(ids.toSorted(byCodePoint).map((id, rank) => [id, `${prefix}${String(rank).padStart(5, "0")}`]));
  return (id) => ranks.get(id) ?? id;
}

/** Every id renamed, keeping the order among the ids of a list; lots and lines on order share one order, so a prefix. */
export function renamed(file: WorkshopFile): Renaming {
  const ids = (list: readonly { readonly id: string }[]) => list.map(({ id }) => id);
  const material = inOrder(ids(file.materials), "thing ");
  const product = inOrder(ids(file.products), "jar ");
  const run = inOrder(ids(file.runs), "batch ");
  const offer = inOrder(ids(file.offers), "price ");
  const supplier = inOrder(ids(file.suppliers), "shop ");
  const formula = (id: string) => `a formula once called ${id}`;
  const lot = (id: string) => `🌿${id}`;
  const of = <T extends { readonly material: string }>(item: T): T => ({ ...item, material: material(item.material) });
  return {
    material,
    product,
    run,
    lot,
    offer,
    supplier,
    file: {
      ...file,
      suppliers: file.suppliers.map((each) => ({ ...each, id: supplier(each.id) })),
      materials: file.materials.map((each) => ({ ...each, id: material(each.id) })),
      offers: file.offers.map((each) => ({ ...of(each), id: offer(each.id), supplier: supplier(each.supplier) })),
      lots: file.lots.map((each) => ({ ...of(each), id: lot(each.id) })),
      orders: file.orders.map((each) => ({
        ...each,
        id: lot(each.id),
        supplier: supplier(each.supplier),
        lines: each.lines.map(of),
      })),
      formulas: file.formulas.map((each) => ({
        ...each,
        id: formula(each.id),
        lines: each.lines.map((line) =>
          line.formula === undefined ? of(line) : { ...line, formula: formula(line.formula) },
        ),
      })),
      products: file.products.map((each) => ({
        ...each,
        id: product(each.id),
        formula: formula(each.formula),
        packaging: (each.packaging ?? []).map(of),
        perRun: (each.perRun ?? []).map(of),
      })),
      runs: file.runs.map((each) => ({ ...each, id: run(each.id), product: product(each.product) })),
      finished: file.finished.map((each) => ({ ...each, product: product(each.product) })),
      sales: file.sales.map((each) => ({ ...each, product: product(each.product) })),
    },
  };
}

/** The same records in another order: every list of the file, and the lists inside formulas, products and offers. */
export function reordered(file: WorkshopFile, seed: number): WorkshopFile {
  const dice = diceFrom(seed);
  const mixed = <T>(list: readonly T[]) => shuffled(dice, list);
  return {
    ...file,
    workshop: { ...file.workshop, closedDays: mixed(file.workshop.closedDays ?? []) },
    suppliers: mixed(file.suppliers),
    materials: mixed(file.materials),
    offers: mixed(file.offers.map((offer) => ({ ...offer, breaks: mixed(offer.breaks ?? []) }))),
    lots: mixed(file.lots),
    orders: mixed(file.orders),
    formulas: mixed(file.formulas.map((formula) => ({ ...formula, lines: mixed(formula.lines) }))),
    products: mixed(
      file.products.map((product) => ({
        ...product,
        packaging: mixed(product.packaging ?? []),
        perRun: mixed(product.perRun ?? []),
      })),
    ),
    runs: mixed(file.runs),
    finished: mixed(file.finished),
    sales: mixed(file.sales),
  };
}

/** One more lot on the shelf today. */
export const withLot = (
  file: WorkshopFile,
  lot: { readonly material: string; readonly remaining: string; readonly expires: string | null },
): WorkshopFile => ({
  ...file,
  lots: [...file.lots, { id: "one more lot", received: file.workshop.today ?? REAL_TODAY, value: "1.00", ...lot }],
});

/** Nothing goes out of date. */
export const withoutExpiry = (file: WorkshopFile): WorkshopFile => ({
  ...file,
  lots: file.lots.map((lot) => ({ ...lot, expires: null })),
  orders: file.orders.map((order) => ({ ...order, lines: order.lines.map((line) => ({ ...line, expires: null })) })),
});
