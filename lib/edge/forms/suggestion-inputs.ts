/** What a suggestion is reckoned from, as an address carries it: what was typed, else what the plan says. @rule BUY-13, BUY-14 */
import type { DemandAndLead } from "@/lib/domain/buying/reorder-suggestions";
import { type Fraction, times, whole } from "@/lib/domain/fraction";
import type { CurrencyCode, MicroUnits } from "@/lib/domain/money";
import { type DecimalText, decimalValue, type Measure, type PartsPerMillion } from "@/lib/domain/quantity";
import type { Outcome } from "@/lib/edge/fields";
import { money, percent } from "@/lib/edge/figure-fields";
import { inFormWords } from "./faults-in-words";
import { readTypedMoney, readTypedPercent } from "./typed-amount";
import { readTypedNumber, withoutEnds } from "./typed-number";

export const SUGGESTION_FIELDS = ["use", "spread", "lead", "leadspread", "service", "order", "keeping"] as const;
export type SuggestionField = (typeof SUGGESTION_FIELDS)[number];

export type SuggestionTyped = Readonly<Record<SuggestionField, string>>;

export interface SuggestionInputs {
  readonly demand: DemandAndLead;
  readonly orderCost: MicroUnits;
  readonly keeping: PartsPerMillion;
}

type Parameters = Readonly<Record<string, string | readonly string[] | undefined>>;

const MOST_TYPED = 60;

/** What stands in the form: as the address has it, else as it begins. */
export const suggestionTyped = (parameters: Parameters, begins: SuggestionTyped): SuggestionTyped =>
  Object.fromEntries(
    SUGGESTION_FIELDS.map((field) => {
      const value = [parameters[field] ?? []].flat()[0];
      return [field, value === undefined ? begins[field] : value.slice(0, MOST_TYPED)];
    }),
  ) as SuggestionTyped;

export type SuggestionReading =
  { readonly inputs: SuggestionInputs } | { readonly faults: Readonly<Partial<Record<SuggestionField, string>>> };

/** Use and its spread are in grams or pieces a day, the lead in days, service and keeping in percent. */
export function readSuggestion(typed: SuggestionTyped, measure: Measure, currency: CurrencyCode): SuggestionReading {
  const size = whole(measure === "mass" ? 1_000_000n : 1n);
  const read = {
    use: numberIn(typed.use, size),
    spread: numberIn(typed.spread, size),
    lead: numberIn(typed.lead, whole(1n)),
    leadspread: numberIn(typed.leadspread, whole(1n)),
    service: serviceIn(typed.service),
    order: judged(money, readTypedMoney(typed.order, currency)),
    keeping: judged(percent, readTypedPercent(typed.keeping)),
  };
  const faults = Object.entries(read).flatMap(([field, outcome]) =>
    "fault" in outcome ? [[field, outcome.fault] as const] : [],
  );
  const { use, spread, lead, leadspread, service, order, keeping } = read;
  if (
    "fault" in use ||
    "fault" in spread ||
    "fault" in lead ||
    "fault" in leadspread ||
    "fault" in service ||
    "fault" in order ||
    "fault" in keeping
  )
    return { faults: Object.fromEntries(faults) };
  return {
    inputs: {
      demand: {
        useOfDay: use.value,
        useDeviation: spread.value,
        lead: lead.value,
        leadDeviation: leadspread.value,
        service: service.value,
      },
      orderCost: order.value,
      keeping: keeping.value,
    },
  };
}

const MOST = 1_000_000_000n;

function numberIn(typed: string, size: Fraction): Outcome<Fraction> {
  if (withoutEnds(typed) === "") return { fault: "is needed; write a number, as 12.5" };
  const number = readTypedNumber(typed);
  if ("fault" in number) return number;
  const value = decimalValue(number.value as DecimalText);
  if (value.over > MOST * value.under) return { fault: "is too large; write less" };
  return { value: times(value, size) };
}

function serviceIn(typed: string): Outcome<PartsPerMillion> {
  const share = judged(percent, readTypedPercent(typed));
  if ("fault" in share) return share;
  if (share.value <= 0n || share.value >= 1_000_000n)
    return { fault: "must be above 0 and below 100; no stock keeps every order from running short" };
  return share;
}

interface Schema<T> {
  readonly safeParse: (value: unknown) => {
    readonly success: boolean;
    readonly data?: T;
    readonly error?: { readonly issues: readonly { readonly message: string }[] } | undefined;
  };
}

function judged<T>(schema: Schema<T>, typed: Outcome<string>): Outcome<T> {
  if ("fault" in typed) return typed;
  const read = schema.safeParse(typed.value);
  return read.success && read.data !== undefined
    ? { value: read.data }
    : { fault: inFormWords(read.error?.issues[0]?.message ?? "cannot be read") };
}
