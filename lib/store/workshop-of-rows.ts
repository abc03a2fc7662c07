/** The rows of the store as a workshop: every object has the keys of its type and no others. */
import type {
  Formula,
  FormulaLine,
  Material,
  Offer,
  Order,
  PerRunItem,
  Product,
  Settings,
  Supplier,
  Workshop,
} from "@/lib/domain/workshop";
import { measuredOf, measuredOrNull } from "./columns";
import type { Row, WorkshopRows } from "./tables";

/** @returns null where no workshop has been opened yet */
export function workshopOfRows(rows: WorkshopRows): Workshop | null {
  const [settings] = rows.settings;
  if (!settings) return null;
  return {
    settings: settingsOf(settings, rows),
    suppliers: suppliersOf(rows),
    materials: rows.materials.map(materialOf),
    offers: offersOf(rows),
    lots: rows.lots.map(withoutPosition),
    orders: ordersOf(rows),
    formulas: formulasOf(rows),
    products: productsOf(rows),
    runs: rows.runs.map(withoutPosition),
    finished: rows.finished.map(withoutPosition),
    sales: rows.sales.map(withoutPosition),
  };
}

/** A row as the record that it is of. */
export function withoutPosition<T extends { readonly position: number }>(row: T): Omit<T, "position"> {
  const { position: _place, ...rest } = row;
  return rest;
}

/** Finds the rows that belong to one owner, in their order. */
export function inner<T>(rows: readonly T[], ownerOf: (row: T) => string): (owner: string) => readonly T[] {
  const byOwner = new Map<string, T[]>();
  for (const row of rows) {
    const owner = ownerOf(row);
    const known = byOwner.get(owner);
    if (known) known.push(row);
    else byOwner.set(owner, [row]);
  }
  return (owner) => byOwner.get(owner) ?? [];
}

function settingsOf(row: Row<"settings">, rows: WorkshopRows): Settings {
  const { id: _one, balanceStep, balanceStepNumber, balanceStepUnit, ...settings } = row;
  return {
    ...settings,
    balanceStep: measuredOf({ quantity: balanceStep, number: balanceStepNumber, unit: balanceStepUnit }),
    closedDays: rows.closedDays.map(({ day }) => day),
  };
}

function suppliersOf(rows: WorkshopRows): readonly Supplier[] {
  const closedDaysOf = inner(rows.supplierClosedDays, (row) => row.supplier);
  return rows.suppliers.map((row) => ({
    ...withoutPosition(row),
    closedDays: closedDaysOf(row.id).map(({ day }) => day),
  }));
}

function materialOf(row: Row<"materials">): Material {
  const { safetyStock, safetyStockNumber, safetyStockUnit, ...material } = withoutPosition(row);
  return { ...material, safetyStock: measuredOrNull(safetyStock, safetyStockNumber, safetyStockUnit) };
}

function offersOf(rows: WorkshopRows): readonly Offer[] {
  const breaksOf = inner(rows.priceBreaks, (row) => row.offer);
  return rows.offers.map((row) => {
    const { pack, packNumber, packUnit, ...offer } = withoutPosition(row);
    return {
      ...offer,
      pack: measuredOf({ quantity: pack, number: packNumber, unit: packUnit }),
      breaks: breaksOf(offer.id).map(({ packs, price }) => ({ packs, price })),
    };
  });
}

function ordersOf(rows: WorkshopRows): readonly Order[] {
  const linesOf = inner(rows.orderLines, (row) => row.order);
  return rows.orders.map((row) => ({
    ...withoutPosition(row),
    lines: linesOf(row.id).map(({ material, quantity, cost, expires }) => ({ material, quantity, cost, expires })),
  }));
}

function formulasOf(rows: WorkshopRows): readonly Formula[] {
  const linesOf = inner(rows.formulaLines, (row) => row.formula);
  return rows.formulas.map((row) => ({ ...withoutPosition(row), lines: linesOf(row.id).map(formulaLineOf) }));
}

/** A line of a formula, or of a draft of one. */
export function formulaLineOf({ material, premix, percent, phase }: Omit<Row<"formulaLines">, "formula">): FormulaLine {
  const of = ingredientOf(material, premix);
  return { of, percent: percent ?? "qs", phase };
}

function ingredientOf(material: string | null, premix: string | null): FormulaLine["of"] {
  if (material !== null) return { kind: "material", id: material };
  if (premix !== null) return { kind: "formula", id: premix };
  throw new Error("a line of a formula names neither a material nor a premix");
}

function productsOf(rows: WorkshopRows): readonly Product[] {
  const packagingOf = inner(rows.packagingItems, (row) => row.product);
  const perRunOf = inner(rows.perRunItems, (row) => row.product);
  return rows.products.map((row) => {
    const { fill, fillNumber, fillUnit, overfill, overfillNumber, overfillUnit, ...others } = withoutPosition(row);
    const { heel, heelNumber, heelUnit, ...product } = others;
    return {
      ...product,
      fill: measuredOf({ quantity: fill, number: fillNumber, unit: fillUnit }),
      overfill: measuredOrNull(overfill, overfillNumber, overfillUnit),
      heel: measuredOrNull(heel, heelNumber, heelUnit),
      packaging: packagingOf(row.id).map((item) => ({ ...itemOf(item), spoilage: item.spoilage })),
      perRun: perRunOf(row.id).map(itemOf),
    };
  });
}

const itemOf = (row: Row<"perRunItems">): PerRunItem => ({
  material: row.material,
  amount: measuredOf({ quantity: row.amount, number: row.amountNumber, unit: row.amountUnit }),
});
