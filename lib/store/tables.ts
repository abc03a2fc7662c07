/** The tables of the store, column by column, as prisma/schema.prisma has them. */
import type { CurrencyCode, MicroUnits } from "@/lib/domain/money";
import type {
  DecimalText,
  Density,
  Measure,
  Micrograms,
  Packs,
  PartsPerMillion,
  Pieces,
  Stock,
  Unit,
  Units,
} from "@/lib/domain/quantity";
import type { MaterialKind, OrderState, Supplier } from "@/lib/domain/workshop";
import {
  CHECK_COLUMNS,
  COMPONENT_COLUMNS,
  FORMULA_FACT_COLUMNS,
  LINE_COLUMNS,
  LIMIT_COLUMNS,
  MATERIAL_FACT_COLUMNS,
  PHASE_COLUMNS,
  SHEET_COLUMNS,
  STEP_COLUMNS,
} from "./fact-columns";
import { BENCH_TABLES } from "./bench-tables";
import { LABEL_TABLES } from "./label-tables";
import { VERSION_TABLES } from "./version-tables";
import { day, flag, orNull, small, type Table, table, text, whole } from "./columns";

const id = text<string>();
/** A name or another label. */
const label = text<string>();
const position = small;
const money = whole<MicroUnits>();
const share = whole<PartsPerMillion>();
const mass = whole<Micrograms>();
const stock = whole<Stock>();
const decimal = text<DecimalText>();
const unit = text<Unit>();
const units = whole<Units>();
const packs = whole<Packs>();
const amount = { amount: whole<Micrograms | Pieces>(), amountNumber: decimal, amountUnit: unit };
/** Of a formula, or of a draft of one. */
const formulaColumns = { id, position, name: label, density: orNull(whole<Density>()), ...FORMULA_FACT_COLUMNS };
const runColumns = { id, position, product: id, date: day, sequence: small, units };

/** What a workshop file carries. In an order in which each table names only those before it. */
const WORKSHOP_TABLES = {
  settings: table(
    "settings",
    {
      id: small,
      name: label,
      currency: text<CurrencyCode>(),
      today: orNull(day),
      horizonDays: small,
      coverDays: orNull(small),
      labourPerHour: money,
      overheadPerHour: money,
      balanceStep: mass,
      balanceStepNumber: decimal,
      balanceStepUnit: unit,
      tax: share,
      paymentFee: share,
      paymentFeeFixed: money,
    },
    ["id"],
  ),
  closedDays: table("closed_days", { position, day }, ["position"]),
  suppliers: table(
    "suppliers",
    {
      id,
      position,
      name: label,
      leadDays: small,
      leadCounts: text<Supplier["leadCounts"]>(),
      shipping: money,
      shippingFreeFrom: orNull(money),
      minimumOrder: orNull(money),
    },
    ["position"],
  ),
  supplierClosedDays: table("supplier_closed_days", { supplier: id, position, day }, ["supplier", "position"]),
  materials: table(
    "materials",
    {
      id,
      position,
      name: label,
      kind: text<MaterialKind>(),
      measure: text<Measure>(),
      density: orNull(whole<Density>()),
      safetyStock: orNull(stock),
      safetyStockNumber: orNull(decimal),
      safetyStockUnit: orNull(unit),
      safetyDays: small,
      useMin: orNull(share),
      useMax: orNull(share),
      addBelow: orNull(decimal),
      ...MATERIAL_FACT_COLUMNS,
    },
    ["position"],
  ),
  materialComponents: table("material_components", { material: id, ...COMPONENT_COLUMNS }, ["material", "position"]),
  materialLimits: table("material_limits", { material: id, ...LIMIT_COLUMNS }, ["material", "position"]),
  materialSheets: table("material_sheets", { material: id, ...SHEET_COLUMNS }, ["material", "position"]),
  offers: table(
    "offers",
    {
      id,
      position,
      material: id,
      supplier: id,
      pack: stock,
      packNumber: decimal,
      packUnit: unit,
      price: money,
      minPacks: packs,
      preferred: flag,
      shelfLifeDays: orNull(small),
      confirmedOn: orNull(day),
    },
    ["position"],
  ),
  priceBreaks: table("price_breaks", { offer: id, position, packs, price: money }, ["offer", "position"]),
  // What remains of a lot, and what is left of finished units, is what the ledger's entries come to.
  lots: table("lots", { id, position, material: id, received: day, expires: orNull(day) }, ["position"], {
    lots: "material",
    column: "material",
    items: "materials",
  }),
  orders: table("orders", { id, position, supplier: id, placed: day, due: day, state: text<OrderState>() }, [
    "position",
  ]),
  orderLines: table(
    "order_lines",
    {
      order: id,
      position,
      material: id,
      quantity: stock,
      cost: money,
      expires: orNull(day),
      offer: orNull(id),
      packs: orNull(packs),
      received: stock,
    },
    ["order", "position"],
  ),
  formulas: table("formulas", formulaColumns, ["position"]),
  formulaLines: table("formula_lines", { formula: id, ...LINE_COLUMNS }, ["formula", "position"]),
  formulaPhases: table("formula_phases", { formula: id, ...PHASE_COLUMNS }, ["formula", "position"]),
  formulaSteps: table("formula_steps", { formula: id, ...STEP_COLUMNS }, ["formula", "position"]),
  formulaChecks: table("formula_checks", { formula: id, ...CHECK_COLUMNS }, ["formula", "position"]),
  products: table(
    "products",
    {
      id,
      position,
      name: label,
      formula: id,
      fill: mass,
      fillNumber: decimal,
      fillUnit: unit,
      overfill: orNull(mass),
      overfillNumber: orNull(decimal),
      overfillUnit: orNull(unit),
      processLoss: share,
      heel: orNull(mass),
      heelNumber: orNull(decimal),
      heelUnit: orNull(unit),
      usualRun: units,
      labourMinutesPerRun: decimal,
      labourMinutesPerUnit: decimal,
      priceToShops: orNull(money),
      priceToCustomers: orNull(money),
      madeInto: orNull(id),
    },
    ["position"],
  ),
  packagingItems: table("packaging_items", { product: id, position, material: id, ...amount, spoilage: share }, [
    "product",
    "position",
  ]),
  perRunItems: table("per_run_items", { product: id, position, material: id, ...amount }, ["product", "position"]),
  runs: table("runs", runColumns, ["position"]),
  finished: table("finished_lots", { id, position, product: id, made: day, bestBefore: orNull(day) }, ["position"], {
    lots: "finished",
    column: "product",
    items: "products",
  }),
  sales: table("sales", { position, product: id, date: day, units }, ["position"]),
  ...LABEL_TABLES,
};

/** A table of ids that are retired, each the id of a record in its list. */
const retired = (name: string) => table(name, { id, position }, ["position"]);

/** What only the app keeps, and what of it is carried by a file as its past. */
const DESK_TABLES = {
  retiredSuppliers: retired("retired_suppliers"),
  retiredMaterials: retired("retired_materials"),
  retiredOffers: retired("retired_offers"),
  retiredFormulas: retired("retired_formulas"),
  retiredProducts: retired("retired_products"),
  drafts: table("drafts", formulaColumns, ["position"]),
  draftLines: table("draft_lines", { draft: id, ...LINE_COLUMNS }, ["draft", "position"]),
  draftPhases: table("draft_phases", { draft: id, ...PHASE_COLUMNS }, ["draft", "position"]),
  draftSteps: table("draft_steps", { draft: id, ...STEP_COLUMNS }, ["draft", "position"]),
  draftChecks: table("draft_checks", { draft: id, ...CHECK_COLUMNS }, ["draft", "position"]),
  benchWeek: table(
    "bench_week",
    {
      id: small,
      monday: small,
      tuesday: small,
      wednesday: small,
      thursday: small,
      friday: small,
      saturday: small,
      sunday: small,
    },
    ["id"],
  ),
  closedRuns: table("closed_runs", { ...runColumns, madeOn: day, unitsMade: units }, ["position"]),
  ...VERSION_TABLES,
  ...BENCH_TABLES,
  countRhythms: table("count_rhythms", { id, position, days: orNull(small), draws: orNull(small) }, ["position"]),
};

export const TABLES = { ...WORKSHOP_TABLES, ...DESK_TABLES };

export type TableName = keyof typeof TABLES;
export const TABLE_NAMES = Object.keys(TABLES) as readonly TableName[];

type RowsOf<T> = T extends Table<infer Row> ? readonly Row[] : never;

/** Every row of a store, table by table. */
export type Rows = { readonly [Name in TableName]: RowsOf<(typeof TABLES)[Name]> };
export type Row<Name extends TableName> = Rows[Name][number];
export type WorkshopRows = Pick<Rows, keyof typeof WORKSHOP_TABLES>;
export type DeskRows = Pick<Rows, keyof typeof DESK_TABLES>;

/** How each list of the workshop, or of the desk, lies in the tables that it fills. */
export type RowsOfLists<Owner> = { readonly [List in keyof Owner]: (records: Owner[List]) => Partial<Rows> };
