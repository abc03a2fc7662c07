/** A JSON tree as a workshop: every list in turn, each held against those it refers to. @rule FILE-1, FILE-2 */
import { z } from "zod";
import type { Day } from "@/lib/domain/calendar";
import type { Past } from "@/lib/domain/ledger/past";
import type { Workshop } from "@/lib/domain/workshop";
import type { FaultList } from "@/lib/edge/fault-list";
import { orElse, wanted } from "@/lib/edge/fields";
import type { Json, JsonObject } from "@/lib/edge/json-tree";
import { type Fields, readEntry, records } from "@/lib/edge/record-reading";
import { shown } from "@/lib/edge/shown-value";
import { readFormulas } from "./formulas";
import { readLabels, readPapers } from "./labels";
import { checkLotsAgainstOrders, readLots, readOrders } from "./lots-and-orders";
import { checkAheadCycles, checkMadeInto } from "./made-ahead-checks";
import { readMaterials } from "./materials";
import { readOffers } from "./offers";
import { checkPast, PAST_KEYS, PAST_LISTS, type PastIndexes, readPast } from "./past-reading";
import { readProducts } from "./products";
import { readFinished, readRuns, readSales } from "./runs-and-sales";
import { readSettings } from "./settings";
import { readSuppliers } from "./suppliers";
import { isKnownVersion, tellKeysOfLaterVersions, VERSION_WITH_PAST, versionsIn } from "./versions";

export const FORMAT = "stillroom-workshop";

const DOCUMENT = {
  format: z.literal(FORMAT, { error: wanted(`"${FORMAT}"`) }),
  version: z.custom<number>(isKnownVersion, { error: wanted(`the whole number ${versionsIn("or")}`) }),
  // Read, and missed, by its own reader.
  workshop: z.custom<Json | undefined>(() => true).optional(),
  suppliers: records,
  materials: records,
  offers: records,
  lots: records,
  orders: records,
  formulas: records,
  products: records,
  runs: records,
  finished: records,
  sales: records,
  labels: orElse(records, []),
  papers: orElse(records, []),
};

const DOCUMENT_WITH_PAST = { ...DOCUMENT, ...PAST_KEYS };

export interface TreeReading {
  readonly workshop: Workshop;
  /** Null where the file says nothing of it. */
  readonly past: Past | null;
}

/** @returns the workshop, or undefined where a fault has been told */
export const readTree = (tree: Json, realToday: Day, faults: FaultList): Workshop | undefined =>
  readTreeWithPast(tree, realToday, faults)?.workshop;

/** @returns the workshop with its past, or undefined where a fault has been told */
export function readTreeWithPast(tree: Json, realToday: Day, faults: FaultList): TreeReading | undefined {
  if (isOfAnotherKind(tree, faults)) return undefined;
  const withPast = holdsPast(tree) ? readEntry(tree, DOCUMENT_WITH_PAST, "", faults) : undefined;
  const entry = withPast ?? readEntry(tree, DOCUMENT, "", faults);
  if (entry === undefined) return undefined;
  const { workshop, ...indexes } = readLists(entry.fields, realToday, faults);
  const past = withPast ? readPast(withPast.fields, indexes, faults) : null;
  if (faults.count() === 0 && workshop && past) checkPast(workshop, past, faults);
  return faults.count() === 0 && workshop ? { workshop, past } : undefined;
}

/** The past is there whole or not at all: where one of its lists stands, the others are missed. */
const holdsPast = (tree: Json): boolean =>
  tree instanceof Map && Object.keys(PAST_KEYS).some((key) => (tree as JsonObject).has(key));

/** A file of another format or version is not read at all: every fault in it would be a false one. @rule FILE-5 */
function isOfAnotherKind(tree: Json, faults: FaultList): boolean {
  if (!(tree instanceof Map)) return false;
  const document: JsonObject = tree;
  const [format, version] = [document.get("format"), document.get("version")];
  const otherFormat = typeof format === "string" && format !== FORMAT;
  if (otherFormat) faults.tell("format", `${shown(format)} is not a format this program knows; it reads "${FORMAT}"`);
  if (typeof version !== "number") return otherFormat;
  if (!isKnownVersion(version)) {
    const known = versionsIn("and");
    faults.tell("version", `${shown(version)} is not a version this program knows; it reads ${known}`);
    return true;
  }
  const without = version === VERSION_WITH_PAST && !holdsPast(tree);
  if (without) {
    const lists = PAST_LISTS.join(", ");
    faults.tell("version", `${String(version)} is not the version of this file, which has no ${lists}; write 1`);
  }
  tellKeysOfLaterVersions(tree, version, faults);
  return otherFormat || without;
}

function readLists(
  lists: Omit<Fields<typeof DOCUMENT>, "version">,
  realToday: Day,
  faults: FaultList,
): PastIndexes & { readonly workshop: Workshop | undefined } {
  const { settings, today } = readSettings(lists.workshop, faults);
  const suppliers = readSuppliers(lists.suppliers, faults);
  const materials = readMaterials(lists.materials, faults);
  const offers = readOffers(lists.offers, suppliers.index, materials.index, faults);
  const lots = readLots(lists.lots, materials.index, today === null ? realToday : today, faults);
  const orders = readOrders(lists.orders, suppliers.index, materials.index, faults);
  checkLotsAgainstOrders(lots.index, orders, faults);
  const formulas = readFormulas(lists.formulas, materials.index, faults);
  const products = readProducts(lists.products, formulas.index, materials.index, faults);
  checkMadeInto(products.index, materials.index, faults);
  const index = { formulas: formulas.index, products: products.index, materials: materials.index };
  checkAheadCycles(formulas.formulas, products.products, index, faults);
  const runs = readRuns(lists.runs, products.index, faults);
  const finished = readFinished(lists.finished, products.index, faults);
  const sales = readSales(lists.sales, products.index, faults);
  const labels = readLabels(lists.labels, products.index, faults);
  const papers = readPapers(lists.papers, faults);
  const workshop = settings && {
    settings,
    suppliers: suppliers.suppliers,
    materials: materials.materials,
    offers,
    lots: lots.lots,
    orders: orders.orders,
    formulas: formulas.formulas,
    products: products.products,
    runs,
    finished,
    sales,
    labels,
    papers,
  };
  return { workshop, products: products.index, materials: materials.index, formulas: formulas.index };
}
