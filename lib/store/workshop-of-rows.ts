/** The rows of the store as a workshop: every object has the keys of its type and no others. */
import type { FormulaCheck, Phase, Step } from "@/lib/domain/formula-book/facts";
import type { MicroUnits } from "@/lib/domain/money";
import { quantity, type Stock, type Units } from "@/lib/domain/quantity";
import type {
  Formula,
  FormulaLine,
  Lot,
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
import { madeOfTables, madeOnce } from "./made-of-tables";
import { runsAsBefore } from "./runs-as-before";
import type { Row, Rows, TableName, WorkshopRows } from "./tables";

/** What stands of every lot where it can be used or sold: shelf and stock. By (place). */
export const STANDING = `SELECT json_group_array(json_array("of", "lot", "quantity", "materials")) FROM "balances"
  WHERE "place" IN ('shelf', 'finished')`;

/** What the ledger says is there of a lot. */
export interface OnHand {
  readonly quantity: bigint;
  /** Of materials: what a lot of a material is worth. */
  readonly value: bigint;
}

type OnHandOf = (of: "material" | "finished", id: string) => OnHand;

const NONE: OnHand = { quantity: 0n, value: 0n };

export const standingOfText = madeOnce((text: string): OnHandOf => {
  const [material, finished] = [new Map<string, OnHand>(), new Map<string, OnHand>()];
  for (const [of, lot, quantity, value] of JSON.parse(text) as ["material" | "finished", string, number, number][]) {
    (of === "material" ? material : finished).set(lot, { quantity: BigInt(quantity), value: BigInt(value) });
  }
  return (of, id) => (of === "material" ? material : finished).get(id) ?? NONE;
});

/** @returns null where no workshop has been opened yet; lists of which nothing has changed as they came back last */
export function workshopOfRows(rows: WorkshopRows, onHand: OnHandOf): Workshop | null {
  if (rows.settings.length === 0) return null;
  return {
    settings: settingsOf(rows),
    suppliers: suppliersOf(rows),
    materials: materialsOf(rows),
    offers: offersOf(rows),
    lots: lotsOf(onHand)(rows),
    orders: ordersOf(rows),
    formulas: formulasOf(rows),
    products: productsOf(rows),
    runs: runsOf(rows),
    finished: finishedOf(onHand)(rows),
    sales: salesOf(rows),
    labels: labelsOf(rows),
    papers: papersOf(rows),
  };
}

type Of<Name extends TableName> = Pick<Rows, Name>;

const asBefore = runsAsBefore();
const runsOf = madeOfTables(["runs"], ({ runs }) => asBefore(runs.map(withoutPosition)));
const labelsOf = madeOfTables(["labels"], ({ labels }) => labels.map(withoutPosition));
const papersOf = madeOfTables(["papers"], ({ papers }) => papers.map(withoutPosition));
const salesOf = madeOfTables(["sales"], ({ sales }) => sales.map(withoutPosition));

const lotsOf = madeOnce((onHand: OnHandOf) =>
  madeOfTables(["lots"], ({ lots }): readonly Lot[] => lots.map((row) => lotOf(row, onHand("material", row.id)))),
);

/** The lot that was made of a row last: most lots stand as they stood when one has moved. */
const lotOfRow = new WeakMap<Row<"lots">, Lot>();

function lotOf(row: Row<"lots">, { quantity: remaining, value }: OnHand): Lot {
  const last = lotOfRow.get(row);
  if (last?.remaining === remaining && last.value === value) return last;
  const lot = { ...withoutPosition(row), remaining: quantity<Stock>(remaining), value: quantity<MicroUnits>(value) };
  lotOfRow.set(row, lot);
  return lot;
}

const finishedOf = madeOnce((onHand: OnHandOf) =>
  madeOfTables(["finished"], ({ finished }) =>
    finished.map((row) => ({
      ...withoutPosition(row),
      units: quantity<Units>(onHand("finished", row.id).quantity),
    })),
  ),
);

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

const settingsOf = madeOfTables(["settings", "closedDays"], (rows: Of<"settings" | "closedDays">): Settings => {
  const [row] = rows.settings;
  if (row === undefined) throw new Error("no workshop has been opened yet");
  const { id: _one, balanceStep, balanceStepNumber, balanceStepUnit, ...settings } = row;
  return {
    ...settings,
    balanceStep: measuredOf({ quantity: balanceStep, number: balanceStepNumber, unit: balanceStepUnit }),
    closedDays: rows.closedDays.map(({ day }) => day),
  };
});

const suppliersOf = madeOfTables(
  ["suppliers", "supplierClosedDays"],
  (rows: Of<"suppliers" | "supplierClosedDays">): readonly Supplier[] => {
    const closedDaysOf = inner(rows.supplierClosedDays, (row) => row.supplier);
    return rows.suppliers.map((row) => ({
      ...withoutPosition(row),
      closedDays: closedDaysOf(row.id).map(({ day }) => day),
    }));
  },
);

const materialsOf = madeOfTables(
  ["materials", "materialComponents", "materialLimits", "materialSheets"],
  (rows: Of<"materials" | "materialComponents" | "materialLimits" | "materialSheets">): readonly Material[] => {
    const componentsOf = inner(rows.materialComponents, (row) => row.material);
    const limitsOf = inner(rows.materialLimits, (row) => row.material);
    const sheetsOf = inner(rows.materialSheets, (row) => row.material);
    return rows.materials.map((row) => {
      const { safetyStock, safetyStockNumber, safetyStockUnit, ...material } = withoutPosition(row);
      return {
        ...material,
        safetyStock: measuredOrNull(safetyStock, safetyStockNumber, safetyStockUnit),
        composition: componentsOf(row.id).map(({ inci, share }) => ({ inci, share })),
        limits: limitsOf(row.id).map(({ material: _own, ...limit }) => withoutPosition(limit)),
        sheets: sheetsOf(row.id).map(({ kind, reference, reviewBy }) => ({ kind, reference, reviewBy })),
      };
    });
  },
);

const offersOf = madeOfTables(["offers", "priceBreaks"], (rows: Of<"offers" | "priceBreaks">): readonly Offer[] => {
  const breaksOf = inner(rows.priceBreaks, (row) => row.offer);
  return rows.offers.map((row) => {
    const { pack, packNumber, packUnit, ...offer } = withoutPosition(row);
    return {
      ...offer,
      pack: measuredOf({ quantity: pack, number: packNumber, unit: packUnit }),
      breaks: breaksOf(offer.id).map(({ packs, price }) => ({ packs, price })),
    };
  });
});

const ordersOf = madeOfTables(["orders", "orderLines"], (rows: Of<"orders" | "orderLines">): readonly Order[] => {
  const linesOf = inner(rows.orderLines, (row) => row.order);
  return rows.orders.map((row) => ({
    ...withoutPosition(row),
    lines: linesOf(row.id).map(({ order: _order, position: _place, ...line }) => line),
  }));
});

const formulasOf = madeOfTables(
  ["formulas", "formulaLines", "formulaPhases", "formulaSteps", "formulaChecks"],
  (rows: Of<"formulas" | "formulaLines" | "formulaPhases" | "formulaSteps" | "formulaChecks">): readonly Formula[] => {
    const linesOf = inner(rows.formulaLines, (row) => row.formula);
    const phasesOf = inner(rows.formulaPhases, (row) => row.formula);
    const stepsOf = inner(rows.formulaSteps, (row) => row.formula);
    const checksOf = inner(rows.formulaChecks, (row) => row.formula);
    return rows.formulas.map((row) => ({
      ...withoutPosition(row),
      lines: linesOf(row.id).map(formulaLineOf),
      phases: phasesOf(row.id).map(phaseOf),
      steps: stepsOf(row.id).map(stepOf),
      checks: checksOf(row.id).map(checkOf),
    }));
  },
);

/** A check, a phase and a step of a formula, or of a draft of one. */
export const checkOf = ({ what, from, to, unit, looks }: Omit<Row<"formulaChecks">, "formula">): FormulaCheck => ({
  what,
  from,
  to,
  unit,
  looks,
});

export const phaseOf = ({ name, temperature }: Omit<Row<"formulaPhases">, "formula">): Phase => ({ name, temperature });

export const stepOf = ({ phase, text, temperature, minutes, caution }: Omit<Row<"formulaSteps">, "formula">): Step => ({
  phase,
  text,
  temperature,
  minutes,
  caution,
});

/** A line of a formula, or of a draft of one. */
export function formulaLineOf({ material, premix, percent, phase }: Omit<Row<"formulaLines">, "formula">): FormulaLine {
  const of = ingredientOf(material, premix);
  return { of, percent: percent ?? "qs", phase };
}

export function ingredientOf(material: string | null, premix: string | null): FormulaLine["of"] {
  if (material !== null) return { kind: "material", id: material };
  if (premix !== null) return { kind: "formula", id: premix };
  throw new Error("a line of a formula names neither a material nor a premix");
}

const productsOf = madeOfTables(
  ["products", "packagingItems", "perRunItems"],
  (rows: Of<"products" | "packagingItems" | "perRunItems">): readonly Product[] => {
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
  },
);

const itemOf = (row: Row<"perRunItems">): PerRunItem => ({
  material: row.material,
  amount: measuredOf({ quantity: row.amount, number: row.amountNumber, unit: row.amountUnit }),
});
