/** Invented workshops for the tests of forms, and forms as a browser would send them. */
import type { Workshop } from "@/lib/domain/workshop";
import type { TypedRecord } from "@/lib/edge/forms/form-reading";
import { readWorkshopFile } from "@/lib/edge/workshop-file";
import { day } from "../../helpers/notation";

export const TODAY = day("2026-11-25");

export function workshopOfFile(file: unknown): Workshop {
  const reading = readWorkshopFile(new TextEncoder().encode(JSON.stringify(file)), TODAY);
  if (reading.kind === "refused") throw new Error(reading.faults.join("\n"));
  return reading.workshop;
}

export function sent(values: Readonly<Record<string, string>>): FormData {
  const form = new FormData();
  for (const [name, value] of Object.entries(values)) form.append(name, value);
  return form;
}

export const benchFile = {
  format: "stillroom-workshop",
  version: 1,
  workshop: {
    name: "An invented bench",
    currency: "GBP",
    labourPerHour: "14.00",
    overheadPerHour: "3.20",
    balanceStep: "0.1 g",
  },
  suppliers: [{ id: "s1", name: "Osel Supplies", leadDays: 5, leadCounts: "working" }],
  materials: [
    { id: "m-water", name: "Water", kind: "ingredient", measure: "mass", density: "0.9982" },
    { id: "m-oil", name: "Castor oil", kind: "ingredient", measure: "mass", density: "0.96" },
    { id: "m-jar", name: "Jar", kind: "packaging", measure: "count" },
    { id: "m-spare", name: "Spare wax", kind: "ingredient", measure: "mass" },
  ],
  offers: [
    { id: "o1", material: "m-oil", supplier: "s1", pack: "1 L", price: "8.40", preferred: true },
    { id: "o2", material: "m-oil", supplier: "s1", pack: "5 kg", price: "30.00" },
  ],
  lots: [
    { id: "L1", material: "m-oil", received: "2026-10-01", remaining: "640 g", value: "5.60" },
    { id: "L2", material: "m-jar", received: "2026-10-01", remaining: "40 each", value: "12.00" },
  ],
  orders: [
    {
      id: "po1",
      supplier: "s1",
      placed: "2026-11-20",
      due: "2026-11-27",
      lines: [{ material: "m-water", quantity: "1 kg", cost: "1.00" }],
    },
  ],
  formulas: [
    {
      id: "f-base",
      name: "Base",
      lines: [
        { material: "m-oil", percent: "60" },
        { material: "m-water", percent: "qs" },
      ],
    },
    {
      id: "f-cream",
      name: "Hand cream",
      density: "0.98",
      lines: [
        { formula: "f-base", percent: "40", phase: "A" },
        { material: "m-water", percent: "60", phase: "B" },
      ],
    },
  ],
  products: [
    {
      id: "p1",
      name: "Hand cream, 200 mL",
      formula: "f-cream",
      fill: "200 mL",
      usualRun: 24,
      packaging: [{ material: "m-jar", amount: "1 each", spoilage: "2" }],
    },
  ],
  runs: [{ id: "r1", product: "p1", date: "2026-11-30", units: 24 }],
  finished: [],
  sales: [{ product: "p1", date: "2026-11-03", units: 3 }],
};

export const without = (record: TypedRecord, ...keys: readonly string[]): TypedRecord =>
  Object.fromEntries(Object.entries(record).filter(([key]) => !keys.includes(key)));
