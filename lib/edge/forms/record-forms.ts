/** The form of each kind of record. */
import type { FormField } from "./form-fields";
import { LOT_FORM, MATERIAL_FORM, OFFER_FORM, ORDER_FORM, SUPPLIER_FORM } from "./forms-of-buying";
import { LABEL_FORM, PAPER_FORM } from "./forms-of-labels";
import { FORMULA_FORM, PRODUCT_FORM, RUN_FORM, SETTINGS_FORM } from "./forms-of-making";

/** The settings, and the lists of the file that have a form. */
export type FormKind =
  | "settings"
  | "suppliers"
  | "materials"
  | "offers"
  | "lots"
  | "orders"
  | "formulas"
  | "products"
  | "runs"
  | "labels"
  | "papers";

/** Fields in the order in which they are asked. */
export const RECORD_FORMS: Readonly<Record<FormKind, readonly FormField[]>> = {
  settings: SETTINGS_FORM,
  suppliers: SUPPLIER_FORM,
  materials: MATERIAL_FORM,
  offers: OFFER_FORM,
  lots: LOT_FORM,
  orders: ORDER_FORM,
  formulas: FORMULA_FORM,
  products: PRODUCT_FORM,
  runs: RUN_FORM,
  labels: LABEL_FORM,
  papers: PAPER_FORM,
};
