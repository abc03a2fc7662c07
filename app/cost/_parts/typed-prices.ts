"use client";

import {
  type RefObject,
  startTransition,
  type SubmitEvent,
  useActionState,
  useEffect,
  useEffectEvent,
  useState,
} from "react";
import type { CurrencyCode } from "@/lib/domain/money";
import { type FormValues, valuesOfForm } from "@/app/_ui/form-values";
import { useTypingKept } from "@/app/_ui/typing-kept";
import { NOT_SENT, type PriceAnswer, pricesCarried, pricesOf, type TypedPrices } from "./price-answer";
import { type PriceName, PRICE_NAME, type Prices, SOLD } from "./sold";
import { pricesText } from "./typed-price";

export type SendPrices = (before: PriceAnswer, form: FormData) => Promise<PriceAnswer>;

interface Fields {
  readonly typed: TypedPrices;
  /** The prices that the fields were drawn from. */
  readonly seen: string;
}

export interface TypingPrices extends Fields {
  readonly answer: PriceAnswer;
  readonly waiting: boolean;
  /** Whether what stands in the fields is what is kept. */
  readonly untouched: boolean;
  /** What was typed before a reload stands in the fields again. */
  readonly returned: boolean;
  readonly action: (form: FormData) => void;
  readonly type: (name: PriceName, text: string) => void;
  readonly beginAfresh: () => void;
  readonly submit: (event: SubmitEvent<HTMLFormElement>) => void;
}

const NAMES = SOLD.map((sold) => PRICE_NAME[sold]);
const same = (one: TypedPrices, other: TypedPrices): boolean => NAMES.every((name) => one[name] === other[name]);

const drawnAt = (answer: PriceAnswer, prices: Prices, currency: CurrencyCode): Fields =>
  answer.kind === "not sent"
    ? { typed: pricesText(prices, currency), seen: pricesCarried(prices) }
    : after(answer, answer, currency);

/** The fields after an answer: a price that was set stands as it is kept, unless somebody has typed on meanwhile. */
function after(answer: PriceAnswer, { typed, seen }: Fields, currency: CurrencyCode): Fields {
  if (answer.kind === "not sent") return { typed, seen };
  if (answer.kind !== "set") return { typed, seen: answer.seen };
  const [now, was] = [pricesOf(answer.now), pricesOf(answer.was)];
  const kept = pricesText(now, currency);
  const shown = NAMES.map((name) => {
    const asKept = now[name] !== was[name] && typed[name] === answer.typed[name];
    return [name, asKept ? kept[name] : typed[name]];
  });
  return { typed: Object.fromEntries(shown) as TypedPrices, seen: answer.seen };
}

/** What is typed as the two prices, and what becomes of it. Where no script runs, the form is sent as it stands. */
export function useTypedPrices(
  form: RefObject<HTMLFormElement | null>,
  send: SendPrices,
  prices: Prices,
  currency: CurrencyCode,
): TypingPrices {
  const [answer, dispatch, waiting] = useActionState(send, NOT_SENT);
  const [taken, setTaken] = useState(answer);
  const [fields, setFields] = useState(() => drawnAt(answer, prices, currency));
  const [followed, setFollowed] = useState(prices);
  const kept = pricesText(prices, currency);
  if (answer !== taken) {
    setTaken(answer);
    setFollowed(prices);
    setFields(after(answer, fields, currency));
  } else if (pricesCarried(followed) !== pricesCarried(prices)) {
    setFollowed(prices);
    // Where nobody has typed, the fields follow what was changed elsewhere. Otherwise it is told when they are sent.
    if (same(fields.typed, pricesText(followed, currency))) setFields(drawnAt(NOT_SENT, prices, currency));
  }
  // With the prices that it was typed against: where they have changed since, it is told when the form is sent.
  const bringBack = (values: FormValues): void =>
    setFields((now) => ({ typed: typedIn(values, now.typed), seen: values.seen ?? now.seen }));
  const typing = useTypingKept(form, kept, bringBack);
  useTypedBeforeScripts(form, fields.typed, bringBack);
  const answered = useEffectEvent(() => {
    if (answer.kind === "refused" || answer.kind === "changed meanwhile") typing.refused();
    // The page stays where it is: what is kept in the books by now need not be kept in this tab.
    else if (answer.kind !== "not sent" && same(fields.typed, kept)) typing.forget();
  });
  useEffect(() => answered(), [answer]);
  return {
    ...fields,
    answer,
    waiting,
    untouched: same(fields.typed, kept),
    returned: typing.returned,
    action: dispatch,
    type: (name, text) => setFields((now) => ({ ...now, typed: { ...now.typed, [name]: text } })),
    beginAfresh: () => setFields(drawnAt(NOT_SENT, prices, currency)),
    submit: (event) => {
      event.preventDefault();
      if (waiting) return;
      const sent = new FormData(event.currentTarget, event.nativeEvent.submitter);
      typing.sent();
      startTransition(() => dispatch(sent));
    },
  };
}

const typedIn = (values: FormValues, before: TypedPrices): TypedPrices => ({
  priceToShops: values.priceToShops ?? before.priceToShops,
  priceToCustomers: values.priceToCustomers ?? before.priceToCustomers,
});

/** What was typed before the scripts were there stands in the fields, and is not drawn over. */
function useTypedBeforeScripts(
  form: RefObject<HTMLFormElement | null>,
  drawn: TypedPrices,
  bringIn: (values: FormValues) => void,
): void {
  const look = useEffectEvent(() => {
    if (form.current === null) return;
    const values = valuesOfForm(new FormData(form.current));
    if (!same(typedIn(values, drawn), drawn)) bringIn(values);
  });
  useEffect(() => {
    const frame = requestAnimationFrame(look);
    return () => cancelAnimationFrame(frame);
  }, []);
}
