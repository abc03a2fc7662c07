/** A small invented workshop in which nothing is wrong, and ways to put one thing wrong in it. */
import { type Day, dayOf } from "@/lib/domain/calendar";
import type { Workshop } from "@/lib/domain/workshop";
import { type FileReading, readWorkshopFile } from "@/lib/edge/workshop-file";

const BENCH = {
  format: "stillroom-workshop",
  version: 1,
  workshop: {
    name: "Bench",
    currency: "GBP",
    today: "2026-11-25",
    labourPerHour: "14.00",
    overheadPerHour: "3.20",
    balanceStep: "0.1 g",
    closedDays: ["2026-12-25"],
  },
  suppliers: [{ id: "s1", name: "Tarn Mill", leadDays: 3, leadCounts: "working", closedDays: [], shipping: "4.95" }],
  materials: [
    { id: "oil", name: "Quill oil", kind: "ingredient", measure: "mass", density: "0.91", safetyStock: "100 mL" },
    { id: "wax", name: "Osel wax", kind: "ingredient", measure: "mass" },
    { id: "jar", name: "Jar 60", kind: "packaging", measure: "count" },
    { id: "glove", name: "Gloves", kind: "consumable", measure: "count" },
  ],
  offers: [
    { id: "o1", material: "oil", supplier: "s1", pack: "1 L", price: "8.40", breaks: [{ packs: 5, price: "7.90" }] },
    { id: "o2", material: "wax", supplier: "s1", pack: "500 g", price: "6.10" },
    { id: "o3", material: "jar", supplier: "s1", pack: "12 each", price: "5.40" },
  ],
  lots: [{ id: "L1", material: "oil", received: "2026-10-01", expires: null, remaining: "640 g", value: "5.60" }],
  orders: [
    {
      id: "po1",
      supplier: "s1",
      placed: "2026-11-20",
      due: "2026-11-27",
      lines: [{ material: "wax", quantity: "500 g", cost: "6.10", expires: null }],
    },
  ],
  formulas: [
    {
      id: "balm",
      name: "Balm",
      density: "0.93",
      lines: [
        { material: "wax", percent: "20", phase: "A" },
        { formula: "base", percent: "30", phase: "A" },
        { material: "oil", percent: "qs", phase: "B" },
      ],
    },
    {
      id: "base",
      name: "Base",
      lines: [
        { material: "oil", percent: "75" },
        { material: "wax", percent: "25" },
      ],
    },
  ],
  products: [
    {
      id: "balm60",
      name: "Balm 60",
      formula: "balm",
      fill: "60 mL",
      heel: "12 g",
      usualRun: 24,
      packaging: [{ material: "jar", amount: "1 each", spoilage: "2" }],
      perRun: [{ material: "glove", amount: "4 each" }],
    },
  ],
  runs: [{ id: "r1", product: "balm60", date: "2026-11-30", sequence: 1, units: 24 }],
  finished: [{ id: "F1", product: "balm60", made: "2026-10-02", bestBefore: "2027-10-01", units: 11 }],
  sales: [{ product: "balm60", date: "2026-11-03", units: 3 }],
};

/** Takes a key away. */
export const LEFT_OUT = Symbol("left out");

/** A value that stands in the file exactly as it is given here: a number with a point, for one. */
export const asWritten = (text: string): string => `⟦${text}⟧`;

/** New values by path (`offers[0].price`); a number after the last of a list adds to it. */
export type Changes = Readonly<Record<string, unknown>>;

/** One way in which the bench's file is faulty, and every line that it is refused with. */
export interface BadFile {
  readonly rule: string;
  readonly says: string;
  readonly changes: Changes;
  readonly faults: readonly string[];
}

type Node = Record<string, unknown>;

/** The text of the bench's file with these changes. */
export function changedFile(changes: Changes): string {
  const file = structuredClone(BENCH) as Node;
  for (const [path, value] of Object.entries(changes)) {
    const steps = path.replace(/\[(\d+)\]/g, ".$1").split(".");
    const key = steps.pop() ?? "";
    const parent = steps.reduce((node, step) => node[step] as Node, file);
    if (value === LEFT_OUT) Reflect.deleteProperty(parent, key);
    else Object.defineProperty(parent, key, { value, enumerable: true, configurable: true, writable: true });
  }
  return JSON.stringify(file).replace(/"⟦(.*?)⟧"/g, (_, text: string) => text.replaceAll('\\"', '"'));
}

/** A day of the calendar by its date. */
export function dayCalled(date: string): Day {
  const day = dayOf(date);
  if (day === null) throw new Error(`no such day ${date}`);
  return day;
}

export const read = (file: string | Uint8Array): FileReading =>
  readWorkshopFile(typeof file === "string" ? new TextEncoder().encode(file) : file, dayCalled("2026-11-25"));

/** The lines that the file is refused with; none where it is read. */
export function faultsOf(file: string | Uint8Array): readonly string[] {
  const reading = read(file);
  return reading.kind === "refused" ? reading.faults : [];
}

export function workshopOf(file: string | Uint8Array): Workshop {
  const reading = read(file);
  if (reading.kind === "refused") throw new Error(reading.faults.join("\n"));
  return reading.workshop;
}
