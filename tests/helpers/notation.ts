/** Short ways to write domain values in tests, and to read them back in the trade's notation. */
import { type Day, dayOf } from "@/lib/domain/calendar";
import { type LegalLimit, NO_FORMULA_FACTS, NO_MATERIAL_FACTS } from "@/lib/domain/formula-book/facts";
import type { Label } from "@/lib/domain/label/label";
import type { LabelPaper } from "@/lib/domain/label/paper";
import type { MicroUnits } from "@/lib/domain/money";
import { type DecimalText, type Micrograms, type PartsPerMillion, quantity, type Stock } from "@/lib/domain/quantity";
import type {
  Formula,
  FormulaLine,
  Lot,
  Material,
  Offer,
  Order,
  OrderLine,
  Product,
  Run,
  Settings,
  Supplier,
} from "@/lib/domain/workshop";

export const day = (iso: string): Day => {
  const found = dayOf(iso);
  if (found === null) throw new Error(`no such day ${iso}`);
  return found;
};
export const decimal = (text: string): DecimalText => text as DecimalText;
/** A decimal as millionths: grams as µg, pounds as micro-units, a ratio as parts per million. */
const millionths = (text: string): bigint => {
  const [wholePart = "0", decimals = ""] = text.split(".");
  return BigInt(wholePart + decimals.padEnd(6, "0"));
};
export const g = (text: string): Micrograms => quantity<Micrograms>(millionths(text));
export const money = (text: string): MicroUnits => quantity<MicroUnits>(millionths(text));
export const percent = (text: string): PartsPerMillion => quantity<PartsPerMillion>(millionths(text) / 100n);
export const stock = (value: bigint): Stock => quantity<Stock>(value);

/** Grams without trailing zeros. */
export const inGrams = (value: bigint): string => {
  const sign = value < 0n ? "-" : "";
  const size = value < 0n ? -value : value;
  const decimals = (size % 1_000_000n).toString().padStart(6, "0").replace(/0+$/, "");
  return `${sign}${(size / 1_000_000n).toString()}${decimals && `.${decimals}`}`;
};

const typed = (grams: string) => ({ typed: { number: decimal(grams), unit: "g" as const }, quantity: g(grams) });
export const grams = typed;
export const pieces = (count: number) => ({
  typed: { number: decimal(String(count)), unit: "each" as const },
  quantity: stock(BigInt(count)),
});

export const settings = (given: Partial<Settings> = {}): Settings => ({
  name: "Test bench",
  currency: "GBP" as Settings["currency"],
  today: day("2026-11-25"),
  horizonDays: 56,
  coverDays: null,
  labourPerHour: money("0"),
  overheadPerHour: money("0"),
  balanceStep: grams("0.1"),
  closedDays: [],
  tax: percent("0"),
  paymentFee: percent("0"),
  paymentFeeFixed: money("0"),
  ...given,
});

export const supplier = (id: string, given: Partial<Supplier> = {}): Supplier => ({
  id,
  name: `Supplier ${id}`,
  leadDays: 1,
  leadCounts: "working",
  closedDays: [],
  shipping: money("0"),
  shippingFreeFrom: null,
  minimumOrder: null,
  ...given,
});

export const material = (id: string, given: Partial<Material> = {}): Material => ({
  id,
  name: `Material ${id}`,
  kind: "ingredient",
  measure: "mass",
  density: null,
  safetyStock: null,
  safetyDays: 0,
  useMin: null,
  useMax: null,
  addBelow: null,
  ...NO_MATERIAL_FACTS,
  ...given,
});

/** A legal maximum of 0.5 %. */
export const limit = (market: LegalLimit["market"], given: Partial<LegalLimit> = {}): LegalLimit => ({
  market,
  use: null,
  substance: "Substance",
  maximum: percent("0.5"),
  countsAs: decimal("1"),
  source: "Invented for a test",
  copied: day("2026-01-01"),
  ...given,
});

export const offer = (id: string, of: string, packGrams: string, price: string, given: Partial<Offer> = {}): Offer => ({
  id,
  material: of,
  supplier: "s",
  pack: grams(packGrams),
  price: money(price),
  breaks: [],
  minPacks: quantity(1n),
  preferred: false,
  shelfLifeDays: null,
  confirmedOn: null,
  ...given,
});

/** A lot from `id 100 g for 1.00 till 2026-12-01`-like parts. */
export const lot = (id: string, of: string, remaining: string, value: string, given: Partial<Lot> = {}): Lot => ({
  id,
  material: of,
  received: day("2026-10-01"),
  expires: null,
  remaining: g(remaining),
  value: money(value),
  ...given,
});

/** What a test says of a line on order; only a quantity was written down, and nothing of it has come. */
type LineGiven = Pick<OrderLine, "material" | "quantity" | "cost" | "expires"> & Partial<OrderLine>;

export const orderLine = (given: LineGiven): OrderLine => ({
  offer: null,
  packs: null,
  received: quantity<Stock>(0n),
  ...given,
});

export const order = (id: string, due: string, lines: readonly LineGiven[], given: Partial<Order> = {}): Order => ({
  id,
  supplier: "s",
  placed: day("2026-11-01"),
  due: day(due),
  state: "ordered",
  lines: lines.map(orderLine),
  ...given,
});

/** A formula from `{ A: "60", B: "qs", "=premix": "10" }`: a premix carries an equals sign. */
export const formula = (id: string, percents: Readonly<Record<string, string>>): Formula => ({
  id,
  name: `Formula ${id}`,
  density: null,
  ...NO_FORMULA_FACTS,
  lines: Object.entries(percents).map(([key, share]): FormulaLine => ({
    of: key.startsWith("=") ? { kind: "formula", id: key.slice(1) } : { kind: "material", id: key },
    percent: share === "qs" ? "qs" : percent(share),
    phase: null,
  })),
});

export const product = (id: string, of: string, given: Partial<Product> = {}): Product => ({
  id,
  name: `Product ${id}`,
  formula: of,
  fill: grams("100"),
  overfill: null,
  processLoss: percent("0"),
  heel: null,
  usualRun: quantity(10n),
  packaging: [],
  perRun: [],
  labourMinutesPerRun: decimal("0"),
  labourMinutesPerUnit: decimal("0"),
  priceToShops: null,
  priceToCustomers: null,
  madeInto: null,
  ...given,
});

export const run = (id: string, of: string, date: string, units: number, given: Partial<Run> = {}): Run => ({
  id,
  product: of,
  date: day(date),
  sequence: 0,
  units: quantity(BigInt(units)),
  ...given,
});

export const label = (id: string, of: string, given: Partial<Label> = {}): Label => ({
  id,
  product: of,
  market: "EU",
  title: null,
  function: null,
  cautions: null,
  responsible: null,
  address: null,
  contact: null,
  madeIn: null,
  monthsOpen: null,
  gtin: null,
  code: null,
  showsPh: false,
  showsMade: false,
  ...given,
});

/** 21 labels of 63.5 × 38.1 mm on A4. */
export const paper = (id: string, given: Partial<LabelPaper> = {}): LabelPaper => ({
  id,
  name: `Paper ${id}`,
  page: "A4",
  columns: 3,
  rows: 7,
  labelWidth: decimal("63.5"),
  labelHeight: decimal("38.1"),
  top: decimal("15.15"),
  left: decimal("7.25"),
  gapAcross: decimal("2.5"),
  gapDown: decimal("0"),
  ...given,
});
