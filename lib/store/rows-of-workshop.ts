/** A workshop as the rows of the store. `position` keeps the order of each list. */
import type { Amount, Measured, Stock, Unit } from "@/lib/domain/quantity";
import type {
  Formula,
  FormulaLine,
  Material,
  Order,
  Product,
  Settings,
  Supplier,
  Workshop,
} from "@/lib/domain/workshop";
import type { Row, RowsOfLists } from "./tables";

type Placed<T> = T & { readonly position: number };

/** The records of a list, each with its place in it. */
export const placed = <T extends object>(items: readonly T[]): readonly Placed<T>[] =>
  items.map((item, position) => ({ ...item, position }));

/** The items of an inner list with the place each has in it. */
export const within = <Owner, Item extends object, Made>(
  owners: readonly Owner[],
  list: (owner: Owner) => readonly Item[],
  row: (owner: Owner, item: Item, position: number) => Made,
): readonly Made[] => owners.flatMap((owner) => list(owner).map((item, position) => row(owner, item, position)));

/** The rows of each list of a workshop. */
export const WORKSHOP_ROWS = {
  settings: (settings: Settings) => ({
    settings: [settingsRow(settings)],
    closedDays: settings.closedDays.map((day, position) => ({ position, day })),
  }),
  suppliers: (suppliers: Workshop["suppliers"]) => ({
    suppliers: placed(suppliers),
    supplierClosedDays: suppliers.flatMap((supplier: Supplier) =>
      supplier.closedDays.map((day, position) => ({ supplier: supplier.id, position, day })),
    ),
  }),
  materials: materialRows,
  offers: (offers: Workshop["offers"]) => ({
    offers: placed(offers).map((offer) => ({
      ...offer,
      pack: offer.pack.quantity,
      packNumber: offer.pack.typed.number,
      packUnit: offer.pack.typed.unit,
    })),
    priceBreaks: within(
      offers,
      (offer) => offer.breaks,
      (offer, priceBreak, position) => ({ ...priceBreak, offer: offer.id, position }),
    ),
  }),
  lots: (lots: Workshop["lots"]) => ({ lots: placed(lots) }),
  orders: (orders: Workshop["orders"]) => ({
    orders: placed(orders),
    orderLines: within(
      orders,
      (order: Order) => order.lines,
      (order, line, position) => ({ ...line, order: order.id, position }),
    ),
  }),
  labels: (labels: Workshop["labels"]) => ({ labels: placed(labels) }),
  papers: (papers: Workshop["papers"]) => ({ papers: placed(papers) }),
  formulas: formulaRows,
  products: (products: Workshop["products"]) => ({
    products: placed(products).map(productRow),
    packagingItems: within(
      products,
      (product: Product) => product.packaging,
      (product, item, position) => ({ ...itemRow(product, item, position), spoilage: item.spoilage }),
    ),
    perRunItems: within(products, (product: Product) => product.perRun, itemRow),
  }),
  runs: (runs: Workshop["runs"]) => ({ runs: placed(runs) }),
  finished: (finished: Workshop["finished"]) => ({ finished: placed(finished) }),
  sales: (sales: Workshop["sales"]) => ({ sales: placed(sales) }),
} satisfies RowsOfLists<Workshop>;

/** Materials, each with what is known of it. */
function materialRows(materials: Workshop["materials"]) {
  return {
    materials: placed(materials).map((material) => ({
      ...material,
      safetyStock: material.safetyStock?.quantity ?? null,
      ...typedOrNull("safetyStock", material.safetyStock),
    })),
    materialComponents: within(
      materials,
      ({ composition }: Material) => composition,
      ({ id }, component, position) => ({ ...component, material: id, position }),
    ),
    materialLimits: within(
      materials,
      ({ limits }: Material) => limits,
      ({ id }, limit, position) => ({ ...limit, material: id, position }),
    ),
    materialSheets: within(
      materials,
      ({ sheets }: Material) => sheets,
      ({ id }, sheet, position) => ({ ...sheet, material: id, position }),
    ),
  };
}

/** Formulas, each with its lines, phases, steps and checks. */
function formulaRows(formulas: Workshop["formulas"]) {
  return {
    formulas: placed(formulas),
    formulaLines: within(formulas, (formula: Formula) => formula.lines, formulaLineRow),
    formulaPhases: within(
      formulas,
      ({ phases }: Formula) => phases,
      ({ id }, phase, position) => ({ ...phase, formula: id, position }),
    ),
    formulaSteps: within(
      formulas,
      ({ steps }: Formula) => steps,
      ({ id }, step, position) => ({ ...step, formula: id, position }),
    ),
    formulaChecks: within(
      formulas,
      ({ checks }: Formula) => checks,
      ({ id }, check, position) => ({ ...check, formula: id, position }),
    ),
  };
}

function settingsRow({ balanceStep, ...settings }: Settings): Row<"settings"> {
  return {
    ...settings,
    id: 1,
    balanceStep: balanceStep.quantity,
    balanceStepNumber: balanceStep.typed.number,
    balanceStepUnit: balanceStep.typed.unit,
  };
}

const formulaLineRow = (formula: Formula, line: FormulaLine, position: number): Row<"formulaLines"> => ({
  formula: formula.id,
  ...lineCells(line, position),
});

/** A line of a formula, or of a draft of one. */
export const lineCells = (
  { of, percent, phase }: FormulaLine,
  position: number,
): Omit<Row<"formulaLines">, "formula"> => ({
  position,
  ...ingredientCells(of),
  percent: percent === "qs" ? null : percent,
  phase,
});

/** What a line is of: a material or a premix, never both. */
export const ingredientCells = (of: FormulaLine["of"]): Pick<Row<"formulaLines">, "material" | "premix"> => ({
  material: of.kind === "material" ? of.id : null,
  premix: of.kind === "formula" ? of.id : null,
});

function productRow(product: Placed<Product>): Row<"products"> {
  return {
    ...product,
    fill: product.fill.quantity,
    fillNumber: product.fill.typed.number,
    fillUnit: product.fill.typed.unit,
    overfill: product.overfill?.quantity ?? null,
    ...typedOrNull("overfill", product.overfill),
    heel: product.heel?.quantity ?? null,
    ...typedOrNull("heel", product.heel),
  };
}

const itemRow = (product: Product, item: Product["perRun"][number], position: number): Row<"perRunItems"> => ({
  product: product.id,
  position,
  material: item.material,
  amount: item.amount.quantity,
  amountNumber: item.amount.typed.number,
  amountUnit: item.amount.typed.unit,
});

type TypedCells<Name extends string> = { readonly [K in `${Name}Number`]: Amount["number"] | null } & {
  readonly [K in `${Name}Unit`]: Unit | null;
};

/** What was typed of an amount that may be absent, under the names of its two columns. */
const typedOrNull = <Name extends string>(name: Name, measured: Measured<Stock> | null): TypedCells<Name> =>
  ({
    [`${name}Number`]: measured?.typed.number ?? null,
    [`${name}Unit`]: measured?.typed.unit ?? null,
  }) as TypedCells<Name>;
