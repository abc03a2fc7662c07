import type { CurrencyCode } from "@/lib/domain/money";
import { type DecimalText, quantity } from "@/lib/domain/quantity";
import type { Workshop } from "@/lib/domain/workshop";
import { type Opened, openWorkshop } from "./open-workshop";

/** Opens a workshop with nothing in it yet. */
export const openEmpty = (name: string, currency: CurrencyCode): Promise<Opened> =>
  openWorkshop(emptyWorkshop(name, currency));

/** Eight weeks ahead, a balance that reads tenths of a gram, and rates of zero until the maker enters them. */
export const emptyWorkshop = (name: string, currency: CurrencyCode): Workshop => ({
  settings: {
    name,
    currency,
    today: null,
    horizonDays: 56,
    coverDays: null,
    labourPerHour: quantity(0n),
    overheadPerHour: quantity(0n),
    balanceStep: { typed: { number: "0.1" as DecimalText, unit: "g" }, quantity: quantity(100_000n) },
    closedDays: [],
    tax: quantity(0n),
    paymentFee: quantity(0n),
    paymentFeeFixed: quantity(0n),
  },
  suppliers: [],
  materials: [],
  offers: [],
  lots: [],
  orders: [],
  formulas: [],
  products: [],
  runs: [],
  finished: [],
  sales: [],
});
