/**
 * A workshop as the document that its file holds: keys in one order, those that stand at their default left out,
 * amounts as they were typed, other figures in their shortest exact form. @rule FILE-4
 */
import { isoDate } from "@/lib/domain/calendar";
import type { Past } from "@/lib/domain/ledger/past";
import { type MicroUnits, moneyTextInFull } from "@/lib/domain/money";
import type { Measured, PartsPerMillion, Stock } from "@/lib/domain/quantity";
import type {
  FinishedLot,
  Formula,
  Lot,
  Material,
  Offer,
  Order,
  Product,
  Run,
  Sale,
  Settings,
  Supplier,
  Workshop,
} from "@/lib/domain/workshop";
import { amountText, densityText, percentText, stockText } from "@/lib/edge/written-figures";
import { labelWritten, paperWritten } from "./label-writing";
import { contentWritten, materialFactsWritten } from "./facts-writing";
import { ONE_PACK } from "./offers";
import { NO_TIME } from "./products";
import { pastWritten } from "./past-writing";
import { FORMAT } from "./reading";
import { HORIZON_DAYS } from "./settings";
import { leastVersionOf } from "./versions";

// JSON.stringify leaves out a key whose value is undefined, and keeps the others in the order they are written here.
type Written = string | number | boolean | undefined | readonly unknown[];
type WrittenRecord = Readonly<Record<string, Written>>;

/** The document of a workshop, ready for JSON.stringify, in the lowest version that can say all of it. @rule FILE-5 */
export function workshopDocument(workshop: Workshop, past: Past | null = null): Readonly<Record<string, unknown>> {
  const money = (amount: MicroUnits) => moneyTextInFull(amount, workshop.settings.currency);
  const measureById = new Map(workshop.materials.map(({ id, measure }) => [id, measure]));
  const stock = (quantity: Stock, material: string) => stockText(quantity, measureById.get(material) ?? "mass");
  const contents = {
    workshop: settingsWritten(workshop.settings, money),
    suppliers: workshop.suppliers.map((supplier) => supplierWritten(supplier, money)),
    materials: workshop.materials.map(materialWritten),
    offers: workshop.offers.map((offer) => offerWritten(offer, money)),
    lots: workshop.lots.map((lot) => lotWritten(lot, money, stock)),
    orders: workshop.orders.map((order) => orderWritten(order, money, stock)),
    formulas: workshop.formulas.map(formulaWritten),
    products: workshop.products.map((product) => productWritten(product, money)),
    runs: workshop.runs.map(runWritten),
    finished: workshop.finished.map(finishedWritten),
    sales: workshop.sales.map(saleWritten),
    labels: listOrNone(workshop.labels, labelWritten),
    papers: listOrNone(workshop.papers, paperWritten),
    ...(past && pastWritten(past)),
  };
  return { format: FORMAT, version: leastVersionOf(contents), ...contents };
}

type MoneyText = (amount: MicroUnits) => string;
type StockOfMaterial = (quantity: Stock, material: string) => string;

const unless = <T, W>(value: T, byDefault: T, write: (value: T) => W): W | undefined =>
  value === byDefault ? undefined : write(value);
const orNone = <T, W>(value: T | null, write: (value: T) => W): W | undefined =>
  value === null ? undefined : write(value);
const listOrNone = <T, W>(list: readonly T[], write: (value: T) => W): readonly W[] | undefined =>
  list.length === 0 ? undefined : list.map(write);
const moneyUnlessNone = (amount: MicroUnits, money: MoneyText) => (amount === 0n ? undefined : money(amount));
const shareUnlessNone = (share: PartsPerMillion) => (share === 0n ? undefined : percentText(share));
const same = <T>(value: T): T => value;
const typed = (measured: Measured<Stock>): string => amountText(measured.typed);

const settingsWritten = (settings: Settings, money: MoneyText): WrittenRecord => ({
  name: settings.name,
  currency: settings.currency,
  today: orNone(settings.today, isoDate),
  horizonDays: unless(settings.horizonDays, HORIZON_DAYS, same),
  coverDays: orNone(settings.coverDays, same),
  labourPerHour: money(settings.labourPerHour),
  overheadPerHour: money(settings.overheadPerHour),
  balanceStep: typed(settings.balanceStep),
  closedDays: listOrNone(settings.closedDays, isoDate),
  taxPercent: shareUnlessNone(settings.tax),
  paymentFeePercent: shareUnlessNone(settings.paymentFee),
  paymentFeeFixed: moneyUnlessNone(settings.paymentFeeFixed, money),
});

const supplierWritten = (supplier: Supplier, money: MoneyText): WrittenRecord => ({
  id: supplier.id,
  name: supplier.name,
  leadDays: supplier.leadDays,
  leadCounts: supplier.leadCounts,
  closedDays: listOrNone(supplier.closedDays, isoDate),
  shipping: moneyUnlessNone(supplier.shipping, money),
  shippingFreeFrom: orNone(supplier.shippingFreeFrom, money),
  minimumOrder: orNone(supplier.minimumOrder, money),
});

const materialWritten = (material: Material): WrittenRecord => ({
  id: material.id,
  name: material.name,
  kind: material.kind,
  measure: material.measure,
  density: orNone(material.density, densityText),
  safetyStock: orNone(material.safetyStock, typed),
  safetyDays: unless(material.safetyDays, 0, same),
  useMin: orNone(material.useMin, percentText),
  useMax: orNone(material.useMax, percentText),
  addBelow: orNone(material.addBelow, same),
  ...materialFactsWritten(material),
});

const offerWritten = (offer: Offer, money: MoneyText): WrittenRecord => ({
  id: offer.id,
  material: offer.material,
  supplier: offer.supplier,
  pack: typed(offer.pack),
  price: money(offer.price),
  breaks: listOrNone(offer.breaks, ({ packs, price }) => ({ packs: Number(packs), price: money(price) })),
  minPacks: unless(offer.minPacks, ONE_PACK, Number),
  preferred: unless(offer.preferred, false, same),
  shelfLifeDays: orNone(offer.shelfLifeDays, same),
  confirmedOn: orNone(offer.confirmedOn, isoDate),
});

const lotWritten = (lot: Lot, money: MoneyText, stock: StockOfMaterial): WrittenRecord => ({
  id: lot.id,
  material: lot.material,
  received: isoDate(lot.received),
  expires: orNone(lot.expires, isoDate),
  remaining: stock(lot.remaining, lot.material),
  value: money(lot.value),
});

const orderWritten = (order: Order, money: MoneyText, stock: StockOfMaterial): WrittenRecord => ({
  id: order.id,
  supplier: order.supplier,
  placed: isoDate(order.placed),
  due: isoDate(order.due),
  state: unless(order.state, "ordered", same),
  lines: order.lines.map((line) => ({
    material: line.material,
    quantity: stock(line.quantity, line.material),
    cost: money(line.cost),
    expires: orNone(line.expires, isoDate),
    offer: orNone(line.offer, same),
    packs: orNone(line.packs, Number),
    received: line.received === 0n ? undefined : stock(line.received, line.material),
  })),
});

const formulaWritten = (formula: Formula): WrittenRecord => ({ id: formula.id, ...contentWritten(formula) });

const productWritten = (product: Product, money: MoneyText): WrittenRecord => ({
  id: product.id,
  name: product.name,
  formula: product.formula,
  fill: typed(product.fill),
  overfill: orNone(product.overfill, typed),
  processLoss: shareUnlessNone(product.processLoss),
  heel: orNone(product.heel, typed),
  usualRun: Number(product.usualRun),
  packaging: listOrNone(product.packaging, ({ material, amount, spoilage }) => ({
    material,
    amount: typed(amount),
    spoilage: shareUnlessNone(spoilage),
  })),
  perRun: listOrNone(product.perRun, ({ material, amount }) => ({ material, amount: typed(amount) })),
  labourMinutesPerRun: unless(product.labourMinutesPerRun, NO_TIME, same),
  labourMinutesPerUnit: unless(product.labourMinutesPerUnit, NO_TIME, same),
  priceToShops: orNone(product.priceToShops, money),
  priceToCustomers: orNone(product.priceToCustomers, money),
  madeInto: orNone(product.madeInto, same),
});

const runWritten = (run: Run): WrittenRecord => ({
  id: run.id,
  product: run.product,
  date: isoDate(run.date),
  sequence: unless(run.sequence, 0, same),
  units: Number(run.units),
});

const finishedWritten = (lot: FinishedLot): WrittenRecord => ({
  id: lot.id,
  product: lot.product,
  made: isoDate(lot.made),
  bestBefore: orNone(lot.bestBefore, isoDate),
  units: Number(lot.units),
});

const saleWritten = (sale: Sale): WrittenRecord => ({
  product: sale.product,
  date: isoDate(sale.date),
  units: Number(sale.units),
});
