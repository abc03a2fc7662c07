/** A workshop for tests from its parts; what is not given is empty. */
import type { Workshop } from "@/lib/domain/workshop";
import { settings, supplier } from "./notation";

export type Parts = Partial<Omit<Workshop, "settings">> & { readonly settings?: Partial<Workshop["settings"]> };

export const workshopOf = (parts: Parts): Workshop => ({
  suppliers: [supplier("s")],
  materials: [],
  offers: [],
  lots: [],
  orders: [],
  formulas: [],
  products: [],
  runs: [],
  finished: [],
  sales: [],
  labels: [],
  papers: [],
  ...parts,
  settings: settings(parts.settings),
});
