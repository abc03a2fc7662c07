import type { Settings } from "@/lib/domain/workshop";
import type { MicroUnits } from "@/lib/domain/money";
import { type Amount, type Measured, type Micrograms, type PartsPerMillion, UNITS } from "@/lib/domain/quantity";
import type { FaultList } from "@/lib/edge/fault-list";
import { currency, day, dayCount, days, name, orElse } from "@/lib/edge/fields";
import { lossPercent, money, percent, weight } from "@/lib/edge/figure-fields";
import type { Json } from "@/lib/edge/json-tree";
import { complete, readEntry } from "@/lib/edge/record-reading";
import { amountText } from "@/lib/edge/written-figures";
import { measured } from "./amounts";

export const NO_MONEY = 0n as MicroUnits;
export const NO_SHARE = 0n as PartsPerMillion;
export const HORIZON_DAYS = 56;

const SETTINGS = {
  name,
  currency,
  today: orElse(day, null),
  horizonDays: orElse(dayCount, HORIZON_DAYS),
  coverDays: orElse(dayCount, null),
  labourPerHour: money,
  overheadPerHour: money,
  balanceStep: weight,
  closedDays: orElse(days, []),
  taxPercent: orElse(percent, NO_SHARE),
  paymentFeePercent: orElse(lossPercent, NO_SHARE),
  paymentFeeFixed: orElse(money, NO_MONEY),
};

export interface SettingsReading {
  /** Undefined where anything in them is faulty. */
  readonly settings: Settings | undefined;
  /** The day the workshop is set to, null for the real one, undefined where it could not be read. */
  readonly today: Settings["today"] | undefined;
}

/** The settings of the workshop, told field by field. @rule FILE-1 */
export function readSettings(value: Json | undefined, faults: FaultList): SettingsReading {
  const entry = readEntry(value, SETTINGS, "workshop", faults);
  if (entry === undefined) return { settings: undefined, today: undefined };
  const { taxPercent, paymentFeePercent, balanceStep, ...fields } = entry.fields;
  const step = readBalanceStep(balanceStep, faults);
  const settings = complete({ ...fields, balanceStep: step, tax: taxPercent, paymentFee: paymentFeePercent });
  return { settings, today: fields.today };
}

/** The smallest step of the scale: a weight, which no density can give. */
function readBalanceStep(typed: Amount | undefined, faults: FaultList): Measured<Micrograms> | undefined {
  const path = "workshop.balanceStep";
  if (typed === undefined || UNITS[typed.unit].kind === "mass") {
    return measured<Micrograms>(typed, { measure: "mass", density: null, called: "a balance step" }, 1n, path, faults);
  }
  faults.tell(path, `must be a weight, as 0.1 g, not ${amountText(typed)}`);
  return undefined;
}
