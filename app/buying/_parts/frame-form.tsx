import Form from "next/form";
import Link from "next/link";
import type { ReactNode } from "react";
import { Field } from "@/app/_ui/field";
import { asSentence } from "@/app/_ui/sentence";
import type { Arrival } from "@/lib/domain/buying/buying-frame";
import type { CurrencyCode } from "@/lib/domain/money";
import type { Supplier } from "@/lib/domain/workshop";
import { daysShown } from "@/lib/edge/figures";
import { inARow } from "@/lib/edge/counted";
import { ARRIVALS, frameFields, type FrameReading } from "@/lib/edge/forms/buying-frame";
import { type Cover, COVERS } from "@/lib/edge/forms/buying-frame-typed";
import { FrameFurther, type Pinnable } from "./frame-further";
import { Ticks } from "./ticks";

interface FrameOf {
  readonly reading: FrameReading;
  readonly suppliers: readonly Supplier[];
  /** Materials that more than one offer could fill. */
  readonly pinnable: readonly Pinnable[];
  readonly horizonDays: number;
  readonly coverDays: number | null;
  readonly currency: CurrencyCode;
}

const ARRIVAL_WORDS: Readonly<Record<Arrival, string>> = {
  "by the rules": "In time where anyone can",
  "in time": "Everything must come in time",
  "any day": "Cheapest, even if late",
};

/** For how long to buy, from whom, by when, and what may be spent. It asks by address and needs no script. */
export function FrameForm({ reading, suppliers, pinnable, horizonDays, coverDays, currency }: FrameOf): ReactNode {
  const { asked, faults } = reading;
  const words = coverWords(coverDays, horizonDays);
  return (
    <details className="buying-frame" open={frameFields(asked).length > 0}>
      <summary>
        <h2 id="frame">Buy for how long, and from whom</h2>
        <span className="soft">{inShort(asked, words, suppliers)}</span>
      </summary>
      <Form action="/buying" scroll={false} prefetch={false} aria-labelledby="frame">
        {/* What is chosen goes with the address: another frame draws its fields anew, and the button keeps the focus. */}
        <div key={JSON.stringify(asked)}>
          <div className="buying-frame-fields">
            <div className="field">
              <label htmlFor="frame-cover">Cover</label>
              <select id="frame-cover" name="cover" defaultValue={asked.cover}>
                {COVERS.map((cover) => (
                  <option key={cover} value={cover}>
                    {words[cover]}
                  </option>
                ))}
              </select>
            </div>
            <Field
              label="Days to cover"
              name="days"
              inputMode="numeric"
              autoComplete="off"
              defaultValue={asked.days}
              fault={faults.days === null ? undefined : asSentence(faults.days)}
            />
            <div className="field">
              <label htmlFor="frame-arrival">It comes</label>
              <select id="frame-arrival" name="arrival" defaultValue={asked.arrival}>
                {ARRIVALS.map((arrival) => (
                  <option key={arrival} value={arrival}>
                    {ARRIVAL_WORDS[arrival]}
                  </option>
                ))}
              </select>
            </div>
            <Ticks legend="Leave out" name="out" all={suppliers} ticked={asked.leftOut} />
          </div>
          <FrameFurther reading={reading} suppliers={suppliers} pinnable={pinnable} currency={currency} />
        </div>
        <div className="buying-frame-buttons">
          <button className="button">Find the least cost</button>
          <Link className="button plain" href="/buying">
            As set in the Book
          </Link>
        </div>
      </Form>
    </details>
  );
}

const coverWords = (coverDays: number | null, horizonDays: number): Readonly<Record<Cover, string>> => ({
  "as set": `As set in the Book: ${coverDays === null ? "the whole horizon" : daysShown(coverDays)}`,
  week: "One week",
  "four weeks": "Four weeks",
  horizon: `The whole horizon, ${daysShown(horizonDays)}`,
  days: "The days written here",
});

/** What is asked for now, on the line that opens the form. */
const inShort = (
  { cover, days, arrival, leftOut }: FrameReading["asked"],
  words: Readonly<Record<Cover, string>>,
  suppliers: readonly Supplier[],
): string =>
  [
    cover === "days" ? `${days} days` : words[cover],
    ARRIVAL_WORDS[arrival].toLowerCase(),
    ...(leftOut.length === 0
      ? []
      : [`without ${inARow(suppliers.filter(({ id }) => leftOut.includes(id)).map(({ name }) => name))}`]),
  ].join("; ");
