/** How an invented workshop that shows a fault is cut down: one record or one field less, still valid. */
import type { WorkshopFile } from "../second/file-shape";

const without = <T>(list: readonly T[], index: number): T[] => list.filter((_, place) => place !== index);

/** Every list item that nothing else leans on left out, one at a time; what leans on a dropped record goes with it. */
function* withOneRecordLess(file: WorkshopFile): Generator<WorkshopFile> {
  for (const product of file.products)
    yield {
      ...file,
      products: file.products.filter((each) => each !== product),
      runs: file.runs.filter((run) => run.product !== product.id),
      finished: file.finished.filter((lot) => lot.product !== product.id),
      sales: file.sales.filter((sale) => sale.product !== product.id),
    };
  for (const supplier of file.suppliers)
    yield {
      ...file,
      suppliers: file.suppliers.filter((each) => each !== supplier),
      offers: file.offers.filter((offer) => offer.supplier !== supplier.id),
      orders: file.orders.filter((order) => order.supplier !== supplier.id),
    };
  const lists = ["runs", "orders", "lots", "offers", "finished", "sales"] as const;
  for (const list of lists)
    for (const index of file[list].keys()) yield { ...file, [list]: without<unknown>(file[list], index) };
  for (const [index, order] of file.orders.entries())
    for (const line of order.lines.length > 1 ? order.lines.keys() : [])
      yield { ...file, orders: file.orders.with(index, { ...order, lines: without(order.lines, line) }) };
}

/** Formulas that nothing uses and materials that no formula or product uses left out; formulas made of one material. */
function* withSimplerRecipes(file: WorkshopFile): Generator<WorkshopFile> {
  const used = new Set([
    ...file.products.map((product) => product.formula),
    ...file.formulas.flatMap((formula) => formula.lines.map((line) => line.formula)),
  ]);
  for (const formula of file.formulas)
    if (!used.has(formula.id)) yield { ...file, formulas: file.formulas.filter((each) => each !== formula) };
  for (const [index, formula] of file.formulas.entries()) {
    const material = formula.lines.find((line) => line.material !== undefined)?.material;
    if (material !== undefined && formula.lines.length > 1)
      yield { ...file, formulas: file.formulas.with(index, { ...formula, lines: [{ material, percent: "100" }] }) };
  }
  for (const [index, product] of file.products.entries()) {
    for (const list of ["packaging", "perRun"] as const)
      for (const place of (product[list] ?? []).keys())
        yield {
          ...file,
          products: file.products.with(index, { ...product, [list]: without<unknown>(product[list] ?? [], place) }),
        };
  }
  const needed = new Set([
    ...file.formulas.flatMap((formula) => formula.lines.map((line) => line.material)),
    ...file.products.flatMap((product) =>
      [...(product.packaging ?? []), ...(product.perRun ?? [])].map((item) => item.material),
    ),
    ...file.orders.flatMap((order) => order.lines.map((line) => line.material)),
  ]);
  for (const material of file.materials)
    if (!needed.has(material.id))
      yield {
        ...file,
        materials: file.materials.filter((each) => each !== material),
        lots: file.lots.filter((lot) => lot.material !== material.id),
        offers: file.offers.filter((offer) => offer.material !== material.id),
      };
}

const OPTIONAL_FIELDS = {
  suppliers: ["closedDays", "shipping", "shippingFreeFrom", "minimumOrder"],
  materials: ["safetyStock", "safetyDays", "useMin", "useMax", "addBelow"],
  offers: ["breaks", "minPacks", "preferred"],
  lots: ["expires"],
  products: [
    "overfill",
    "processLoss",
    "heel",
    "labourMinutesPerRun",
    "labourMinutesPerUnit",
    "priceToShops",
    "priceToCustomers",
  ],
  runs: ["sequence"],
} as const;

const hasField = (record: object, field: string): boolean =>
  Object.entries(record).some(([key, value]) => key === field && value !== null);

const withoutField = (record: object, field: string): object =>
  Object.fromEntries(Object.entries(record).filter(([key]) => key !== field));

/** One field that has a default left out, one at a time. */
function* withOneFieldLess(file: WorkshopFile): Generator<WorkshopFile> {
  for (const field of ["closedDays", "coverDays", "taxPercent", "paymentFeePercent", "paymentFeeFixed"])
    if (hasField(file.workshop, field))
      yield { ...file, workshop: withoutField(file.workshop, field) as WorkshopFile["workshop"] };
  for (const days of [0, 7]) {
    if ((file.workshop.horizonDays ?? 56) > days) yield { ...file, workshop: { ...file.workshop, horizonDays: days } };
  }
  for (const [list, fields] of Object.entries(OPTIONAL_FIELDS)) {
    const records: readonly object[] = file[list as keyof typeof OPTIONAL_FIELDS];
    for (const [index, record] of records.entries())
      for (const field of fields)
        if (hasField(record, field)) yield { ...file, [list]: records.with(index, withoutField(record, field)) };
  }
}

/** Workshops that are a little simpler than this one, the largest cuts first. */
export function* smallerWorkshops(file: WorkshopFile): Generator<WorkshopFile> {
  yield* withOneRecordLess(file);
  yield* withSimplerRecipes(file);
  yield* withOneFieldLess(file);
}
