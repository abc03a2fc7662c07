/** A JSON tree as a workshop: every list in turn, each held against those it refers to. @rule FILE-1, FILE-2 */
import { z } from "zod";
import type { Day } from "@/lib/domain/calendar";
import type { Workshop } from "@/lib/domain/workshop";
import type { FaultList } from "@/lib/edge/fault-list";
import { wanted } from "@/lib/edge/fields";
import type { Json, JsonObject } from "@/lib/edge/json-tree";
import { type Fields, readEntry, records } from "@/lib/edge/record-reading";
import { shown } from "@/lib/edge/shown-value";
import { readFormulas } from "./formulas";
import { checkLotsAgainstOrders, readLots, readOrders } from "./lots-and-orders";
import { readMaterials } from "./materials";
import { readOffers } from "./offers";
import { readProducts } from "./products";
import { readFinished, readRuns, readSales } from "./runs-and-sales";
import { readSettings } from "./settings";
import { readSuppliers } from "./suppliers";

export const FORMAT = "stillroom-workshop";
export const VERSION = 1;

const DOCUMENT = {
  format: z.literal(FORMAT, { error: wanted(`"${FORMAT}"`) }),
  version: z.literal(VERSION, { error: wanted(`the whole number ${String(VERSION)}`) }),
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
};

/** @returns the workshop, or undefined where a fault has been told */
export function readTree(tree: Json, realToday: Day, faults: FaultList): Workshop | undefined {
  if (isOfAnotherKind(tree, faults)) return undefined;
  const entry = readEntry(tree, DOCUMENT, "", faults);
  if (entry === undefined) return undefined;
  const workshop = readLists(entry.fields, realToday, faults);
  return faults.count() === 0 ? workshop : undefined;
}

/** A file of another format or version is not read at all: every fault in it would be a false one. */
function isOfAnotherKind(tree: Json, faults: FaultList): boolean {
  if (!(tree instanceof Map)) return false;
  const document: JsonObject = tree;
  const [format, version] = [document.get("format"), document.get("version")];
  const [otherFormat, otherVersion] = [
    typeof format === "string" && format !== FORMAT,
    typeof version === "number" && version !== VERSION,
  ];
  if (otherFormat) faults.tell("format", `${shown(format)} is not a format this program knows; it reads "${FORMAT}"`);
  if (otherVersion) {
    faults.tell("version", `${shown(version)} is not a version this program knows; it reads ${String(VERSION)}`);
  }
  return otherFormat || otherVersion;
}

function readLists(lists: Fields<typeof DOCUMENT>, realToday: Day, faults: FaultList): Workshop | undefined {
  const { settings, today } = readSettings(lists.workshop, faults);
  const suppliers = readSuppliers(lists.suppliers, faults);
  const materials = readMaterials(lists.materials, faults);
  const offers = readOffers(lists.offers, suppliers.index, materials.index, faults);
  const lots = readLots(lists.lots, materials.index, today === null ? realToday : today, faults);
  const orders = readOrders(lists.orders, suppliers.index, materials.index, faults);
  checkLotsAgainstOrders(lots.index, orders.index, faults);
  const formulas = readFormulas(lists.formulas, materials.index, faults);
  const products = readProducts(lists.products, formulas.index, materials.index, faults);
  const runs = readRuns(lists.runs, products.index, faults);
  const finished = readFinished(lists.finished, products.index, faults);
  const sales = readSales(lists.sales, products.index, faults);
  if (settings === undefined) return undefined;
  return {
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
  };
}
