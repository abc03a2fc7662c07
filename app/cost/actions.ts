"use server";

import { revalidatePath } from "next/cache";
import { price } from "@/lib/edge/figure-fields";
import { readTypedMoney } from "@/lib/edge/forms/typed-amount";
import { decimalText } from "@/lib/edge/written-figures";
import { PAGE_OUT_OF_DATE } from "@/lib/edge/page-out-of-date";
import { setPrice } from "@/lib/operations/set-price";
import { type PriceAnswer, pricesCarried, type TypedPrices } from "./_parts/price-answer";
import type { PriceName, Prices } from "./_parts/sold";

type Currency = Parameters<typeof readTypedMoney>[1];
type Read = { readonly prices: Prices } | { readonly faults: Partial<TypedPrices> };

const NAMES = ["priceToShops", "priceToCustomers"] as const satisfies readonly PriceName[];
const textOf = (entry: FormDataEntryValue | null): string => (typeof entry === "string" ? entry : "");

/**
 * Sets the prices that were typed; or, by the button that was pressed, one price of those that were offered, or the
 * prices as they were before.
 */
export async function setPrices(
  product: string,
  currency: Currency,
  _before: PriceAnswer,
  form: FormData,
): Promise<PriceAnswer> {
  const [priceToShops = "", priceToCustomers = ""] = NAMES.map((name) => textOf(form.get(name)));
  const sent = { typed: { priceToShops, priceToCustomers }, seen: textOf(form.get("seen")) };
  const [deed = "", ...about] = textOf(form.get("deed")).split(" ");
  const from = carried(sent.seen);
  if (from === null) return refused(sent, PAGE_OUT_OF_DATE);
  const read =
    deed === "use" ? used(from, about) : deed === "back" ? went(about.join(" ")) : readPrices(sent.typed, currency);
  if ("faults" in read) return { kind: "refused", ...sent, faults: read.faults, says: null };
  const told = await setPrice({ product, from, to: read.prices });
  switch (told.kind) {
    case "no workshop":
      return refused(sent, "No workshop is open any more. Open one on the first page.");
    case "no such product":
      return refused(sent, "The product is not in the workshop any more; it was removed meanwhile.");
    case "already so":
      return { kind: "already so", ...sent, ...nowAre(told.product) };
    case "stale":
      revalidatePath("/", "layout");
      return { kind: "changed meanwhile", ...sent, ...nowAre(told.now) };
    case "set":
      revalidatePath("/", "layout");
      return {
        kind: "set",
        ...sent,
        was: pricesCarried(told.was),
        takenBack: deed === "back",
        ...nowAre(told.product),
      };
  }
}

const nowAre = (prices: Prices) => ({ now: pricesCarried(prices), seen: pricesCarried(prices) });

const refused = (sent: { readonly typed: TypedPrices; readonly seen: string }, says: string): PriceAnswer => ({
  kind: "refused",
  ...sent,
  faults: {},
  says,
});

/** A price that is left empty is none. */
function readPrices(typed: TypedPrices, currency: Currency): Read {
  const readings = NAMES.map((name) => ({ name, ...readPrice(typed[name], currency) }));
  const faults = readings.flatMap(({ name, fault }) => (fault === undefined ? [] : [[name, fault]]));
  if (faults.length > 0) return { faults: Object.fromEntries(faults) as Partial<TypedPrices> };
  const [shops = null, customers = null] = readings.map(({ value }) => value ?? null);
  return { prices: { priceToShops: shops, priceToCustomers: customers } };
}

interface PriceRead {
  readonly value?: Prices[PriceName];
  readonly fault?: string;
}

function readPrice(typed: string, currency: Currency): PriceRead {
  if (typed.trim() === "") return { value: null };
  const decimal = readTypedMoney(typed, currency);
  return "fault" in decimal ? { fault: decimal.fault } : priceFrom(decimal.value);
}

function priceFrom(decimal: string): PriceRead {
  const read = price.safeParse(decimal);
  return read.success ? { value: read.data } : { fault: read.error.issues[0]?.message ?? "must be a price" };
}

/** Prices that a form carries in millionths; null where it carries none. */
function carried(text: string): Prices | null {
  const parts = /^(none|\d{1,16}) (none|\d{1,16})$/.exec(text)?.slice(1).map(carriedPrice);
  if (parts === undefined || parts.some(({ fault }) => fault !== undefined)) return null;
  return { priceToShops: parts[0]?.value ?? null, priceToCustomers: parts[1]?.value ?? null };
}

const carriedPrice = (text: string): PriceRead =>
  text === "none" ? { value: null } : priceFrom(decimalText(BigInt(text), 6));

const NOT_CARRIED: Read = { faults: { priceToShops: "the button did not say which price; write it here" } };

/** One of the prices that were worked out, in place of the one there is. */
function used(from: Prices, [name, text = ""]: readonly string[]): Read {
  const field = NAMES.find((each) => each === name);
  const read = /^\d{1,16}$/.test(text) ? carriedPrice(text) : {};
  return field && read.value ? { prices: { ...from, [field]: read.value } } : NOT_CARRIED;
}

function went(text: string): Read {
  const prices = carried(text);
  return prices === null ? NOT_CARRIED : { prices };
}
