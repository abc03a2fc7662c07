"use client";

import { type ReactNode, useId, useRef } from "react";
import type { Fraction } from "@/lib/domain/fraction";
import { currencySign, priceShown } from "@/lib/edge/figures";
import { asSentence } from "@/app/_ui/sentence";
import { Sign } from "@/app/_ui/sign";
import { HowItComes } from "@/app/_ui/how-it-comes";
import { Slip } from "@/app/_ui/slip";
import { type PriceAnswer, pricesOf } from "./price-answer";
import { marginAndMarkup } from "./kept-working";
import { priceLines, withWas } from "./price-lines";
import { PRICE_FORM } from "./price-form-name";
import { keptOf, PRICE_NAME, PRICE_WORDS, type Prices, type SaleSettings, type Sold, SOLD } from "./sold";
import { priceBeingTyped } from "./typed-price";
import { type SendPrices, type TypingPrices, useTypedPrices } from "./typed-prices";

/** The prices of a product and its cost, as they are or as they were. */
export interface PricesAtCost {
  readonly prices: Prices;
  readonly perUnit: Fraction | null;
}

interface PriceFormProps {
  readonly now: PricesAtCost;
  /** As they were before the last change of either; null where nothing has changed. */
  readonly before: PricesAtCost | null;
  readonly settings: SaleSettings;
  readonly send: SendPrices;
}

/** The two prices and what is kept of each. With scripts the reckoning follows what is typed, and nothing is kept of it until it is sent. */
export function PriceForm({ now, before, settings, send }: PriceFormProps): ReactNode {
  const form = useRef<HTMLFormElement>(null);
  const typing = useTypedPrices(form, send, now.prices, settings.currency);
  return (
    <form id={PRICE_FORM} action={typing.action} onSubmit={typing.submit} ref={form} noValidate>
      <input type="hidden" name="seen" value={typing.seen} readOnly />
      <Told answer={typing.answer} settings={settings} />
      {typing.returned && !typing.untouched && (
        <p className="label" role="status">
          What you had typed here before is back.{" "}
          <button type="button" className="button plain" onClick={typing.beginAfresh}>
            Clear what I typed
          </button>
        </p>
      )}
      <div className="pair">
        {SOLD.map((sold) => (
          <OnePrice key={sold} sold={sold} now={now} before={before} settings={settings} typing={typing} />
        ))}
      </div>
      <Buttons typing={typing} settings={settings} />
    </form>
  );
}

function OnePrice({
  sold,
  now,
  before,
  settings,
  typing,
}: Omit<PriceFormProps, "send"> & { readonly sold: Sold; readonly typing: TypingPrices }): ReactNode {
  const id = useId();
  const name = PRICE_NAME[sold];
  const typed = typing.typed[name];
  const fault = typing.answer.kind === "refused" ? typing.answer.faults[name] : undefined;
  const kept = now.prices[name];
  const price = priceBeingTyped(typed, settings.currency);
  const worked = keptOf(sold, price, now.perUnit, settings);
  const linesOf = (at: PricesAtCost) => priceLines(sold, at.prices[name], at.perUnit, settings);
  // What is typed is compared with what is kept; what is kept, with what it was before the last change.
  const compared = price === kept ? before && linesOf(before) : linesOf(now);
  return (
    <div className={fault === undefined ? "field" : "field wrong"}>
      <label htmlFor={id}>{PRICE_WORDS[sold]}</label>
      <div className="money-field">
        <span aria-hidden="true">{currencySign(settings.currency)}</span>
        <input
          id={id}
          name={name}
          inputMode="decimal"
          autoComplete="off"
          value={typed}
          onChange={(event) => typing.type(name, event.target.value)}
          aria-invalid={fault === undefined ? undefined : true}
          aria-describedby={fault === undefined ? undefined : `${id}fault`}
        />
      </div>
      {fault !== undefined && (
        <p className="field-fault" id={`${id}fault`}>
          {asSentence(fault)}.
        </p>
      )}
      <Slip lines={withWas(priceLines(sold, price, now.perUnit, settings), compared)} />
      {worked && <HowItComes lines={marginAndMarkup(sold, worked, settings)} />}
    </div>
  );
}

/** What became of the form, where it is not that all is kept. */
function Told({ answer, settings }: { readonly answer: PriceAnswer; readonly settings: SaleSettings }): ReactNode {
  if (answer.kind === "changed meanwhile") {
    const { priceToShops, priceToCustomers } = pricesOf(answer.now);
    return (
      <div className="fault" role="alert">
        <h3>Changed meanwhile, in another tab or window</h3>
        <p>
          The price to shops is now {inWords(priceToShops, settings)}, and to customers{" "}
          {inWords(priceToCustomers, settings)}. Nothing was overwritten, and what you typed is still here. Set the
          prices again to put yours in their place.
        </p>
      </div>
    );
  }
  if (answer.kind !== "refused") return null;
  return (
    <div className="fault" role="alert">
      <p>{answer.says ?? "Not set yet. What you typed is still here; mend what is marked and set the prices again."}</p>
    </div>
  );
}

const inWords = (price: Prices["priceToShops"], { currency }: SaleSettings): string =>
  price === null ? "not set" : priceShown(price, currency);

/** The button stays; what was done, and the way to take it back, stand beside it until somebody types again. */
function Buttons({ typing, settings }: { readonly typing: TypingPrices; readonly settings: SaleSettings }): ReactNode {
  const { answer, untouched, waiting } = typing;
  return (
    <p className="price-buttons">
      <button className="button first" name="deed" value="set" aria-disabled={waiting ? true : undefined}>
        Set the prices
      </button>
      <span className="price-told" role="status">
        {untouched && answer.kind === "set" && (
          <Sign sign="tick" tone="open">
            {answer.takenBack ? "As it was before" : "Prices set"}
          </Sign>
        )}
        {untouched && answer.kind === "already so" && "These are the prices already."}
      </span>
      {untouched && answer.kind === "set" && !answer.takenBack && (
        <button className="button" name="deed" value={`back ${answer.was}`}>
          Take it back: {wasInWords(answer, settings)}
        </button>
      )}
    </p>
  );
}

/** The prices that taking back would set again. */
function wasInWords(answer: Extract<PriceAnswer, { kind: "set" }>, settings: SaleSettings): string {
  const [was, now] = [pricesOf(answer.was), pricesOf(answer.now)];
  return SOLD.filter((sold) => was[PRICE_NAME[sold]] !== now[PRICE_NAME[sold]])
    .map((sold) => `${inWords(was[PRICE_NAME[sold]], settings)} to ${sold}`)
    .join(", ");
}
