/**
 * One workshop as plain data: what the planner works from. Lists keep the order of the file they came from.
 * Everything here has been checked at the edge; inside, nobody checks again.
 */
import type { Day } from "./calendar";
import type { FormulaFacts, MaterialFacts } from "./formula-book/facts";
import type { Label } from "./label/label";
import type { LabelPaper } from "./label/paper";
import type { CurrencyCode, MicroUnits } from "./money";
import type {
  DecimalText,
  Density,
  Measure,
  Measured,
  Micrograms,
  Packs,
  PartsPerMillion,
  Pieces,
  Stock,
  Units,
} from "./quantity";

export interface Workshop {
  readonly settings: Settings;
  readonly suppliers: readonly Supplier[];
  readonly materials: readonly Material[];
  readonly offers: readonly Offer[];
  readonly lots: readonly Lot[];
  readonly orders: readonly Order[];
  readonly formulas: readonly Formula[];
  readonly products: readonly Product[];
  readonly runs: readonly Run[];
  readonly finished: readonly FinishedLot[];
  readonly sales: readonly Sale[];
  readonly labels: readonly Label[];
  /** The sheets that labels are printed on. */
  readonly papers: readonly LabelPaper[];
}

export interface Settings {
  readonly name: string;
  readonly currency: CurrencyCode;
  /** The day the workshop is set to, or null where the real date counts. */
  readonly today: Day | null;
  readonly horizonDays: number;
  /** Null where purchases are to cover the whole horizon. */
  readonly coverDays: number | null;
  /** Gross of nothing: what an hour at the bench costs the workshop, without reclaimable tax. */
  readonly labourPerHour: MicroUnits;
  readonly overheadPerHour: MicroUnits;
  readonly balanceStep: Measured<Micrograms>;
  /** Days on which nobody is in the workshop; weekends are not among them unless they are closed for deliveries too. */
  readonly closedDays: readonly Day[];
  /** Sales tax on the price to customers. */
  readonly tax: PartsPerMillion;
  /** The payment fee as a share of what the customer pays, and its fixed part. */
  readonly paymentFee: PartsPerMillion;
  readonly paymentFeeFixed: MicroUnits;
}

export interface Supplier {
  readonly id: string;
  readonly name: string;
  readonly leadDays: number;
  readonly leadCounts: "working" | "calendar";
  readonly closedDays: readonly Day[];
  /** Shipping of one order, without reclaimable tax. */
  readonly shipping: MicroUnits;
  readonly shippingFreeFrom: MicroUnits | null;
  readonly minimumOrder: MicroUnits | null;
}

export type MaterialKind = "ingredient" | "packaging" | "consumable";

export interface Material extends MaterialFacts {
  readonly id: string;
  readonly name: string;
  /** Groups lists; changes no figure. */
  readonly kind: MaterialKind;
  readonly measure: Measure;
  /** At 20 °C; null where none was entered. Never assumed. */
  readonly density: Density | null;
  /** Null for none. */
  readonly safetyStock: Measured<Stock> | null;
  readonly safetyDays: number;
  readonly useMin: PartsPerMillion | null;
  readonly useMax: PartsPerMillion | null;
  /** To be added below this temperature, °C. */
  readonly addBelow: DecimalText | null;
}

export interface Offer {
  readonly id: string;
  readonly material: string;
  readonly supplier: string;
  readonly pack: Measured<Stock>;
  /** Of one pack, without reclaimable tax and without freight. */
  readonly price: MicroUnits;
  readonly breaks: readonly PriceBreak[];
  readonly minPacks: Packs;
  readonly preferred: boolean;
  /** How many days it keeps after the day on which it comes; null where nobody has said. @rule OFFER-1 */
  readonly shelfLifeDays: number | null;
  /** The day on which the supplier last asked this price; null where that was not written down. @rule OFFER-2 */
  readonly confirmedOn: Day | null;
}

/** From so many packs on, every pack of the order costs this. */
export interface PriceBreak {
  readonly packs: Packs;
  readonly price: MicroUnits;
}

export interface Lot {
  readonly id: string;
  readonly material: string;
  readonly received: Day;
  /** The last day of use, or null for none. */
  readonly expires: Day | null;
  readonly remaining: Stock;
  /** What the remaining quantity cost, without reclaimable tax. */
  readonly value: MicroUnits;
}

/** What the maker has done with an order; how much of it has come stands with its lines. @rule ORDER-1 */
export type OrderState = "drafted" | "ordered" | "given up";

export interface Order {
  readonly id: string;
  readonly supplier: string;
  /** The day on which it was ordered; of a draft, on which it was drafted. */
  readonly placed: Day;
  readonly due: Day;
  readonly state: OrderState;
  readonly lines: readonly OrderLine[];
}

export interface OrderLine {
  readonly material: string;
  readonly quantity: Stock;
  /** Of the whole line, without reclaimable tax. */
  readonly cost: MicroUnits;
  readonly expires: Day | null;
  /** The offer that it was ordered by, which may be gone since; null where only a quantity was written down. */
  readonly offer: string | null;
  /** How many packs make up the quantity, where that is known. */
  readonly packs: Packs | null;
  /** What has come of it so far; more than was ordered, perhaps. @rule ORDER-2 */
  readonly received: Stock;
}

export interface Formula extends FormulaFacts {
  readonly id: string;
  readonly name: string;
  /** Of the finished product at 20 °C; reads a fill, overfill or heel typed as a volume. */
  readonly density: Density | null;
  readonly lines: readonly FormulaLine[];
}

export interface FormulaLine {
  readonly of: { readonly kind: "material" | "formula"; readonly id: string };
  /** `qs` takes what is left to 100 %. */
  readonly percent: PartsPerMillion | "qs";
  readonly phase: string | null;
}

export interface Product {
  readonly id: string;
  readonly name: string;
  readonly formula: string;
  readonly fill: Measured<Micrograms>;
  readonly overfill: Measured<Micrograms> | null;
  /** Share lost in proportion to the batch. */
  readonly processLoss: PartsPerMillion;
  /** What stays in the vessel whatever the batch size. */
  readonly heel: Measured<Micrograms> | null;
  readonly usualRun: Units;
  readonly packaging: readonly PackagingItem[];
  readonly perRun: readonly PerRunItem[];
  readonly labourMinutesPerRun: DecimalText;
  readonly labourMinutesPerUnit: DecimalText;
  /** Without tax. */
  readonly priceToShops: MicroUnits | null;
  /** With tax. */
  readonly priceToCustomers: MicroUnits | null;
  /** The material that a run of it makes, measured by mass, where its formula is a premix made ahead. @rule AHEAD-1 */
  readonly madeInto: string | null;
}

export interface PackagingItem {
  readonly material: string;
  readonly amount: Measured<Micrograms | Pieces>;
  /** Share of the pieces handled that is spoilt. */
  readonly spoilage: PartsPerMillion;
}

export interface PerRunItem {
  readonly material: string;
  readonly amount: Measured<Micrograms | Pieces>;
}

export interface Run {
  readonly id: string;
  readonly product: string;
  readonly date: Day;
  readonly sequence: number;
  readonly units: Units;
}

export interface FinishedLot {
  readonly id: string;
  readonly product: string;
  readonly made: Day;
  readonly bestBefore: Day | null;
  readonly units: Units;
}

export interface Sale {
  readonly product: string;
  readonly date: Day;
  readonly units: Units;
}
