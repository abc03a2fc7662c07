"use client";

import type { KeyboardEvent, ReactNode } from "react";
import { asSentence } from "@/app/_ui/sentence";
import { Sign } from "@/app/_ui/sign";
import { weightShown } from "@/lib/edge/bench-weights";
import type { LineAtHand } from "./line-at-hand";

interface Choosing {
  readonly line: LineAtHand;
  /** What is still to be weighed of it, µg. */
  readonly rest: bigint;
  readonly decimals: number;
  readonly lot: string;
  readonly choose: (lot: string) => void;
  readonly scan: (text: string) => void;
  readonly fault: string | undefined;
  readonly typed: string | undefined;
}

/** By tap or by scan, and never chosen beforehand: who weighs has to look at the label. */
export function Lots({ line, rest, decimals, lot, choose, scan, fault, typed }: Choosing): ReactNode {
  return (
    <fieldset className="weigh-lots" aria-describedby={fault === undefined ? undefined : "weigh-lot-fault"}>
      <legend>Lot</legend>
      {line.lots.map(({ id, says, remaining, isOutOfDate }) => (
        <label key={id} className={isOutOfDate ? "weigh-lot out" : "weigh-lot"}>
          <input
            type="radio"
            name="lot"
            value={id}
            checked={lot === id}
            onChange={(event) => {
              forgetScan(event.currentTarget.form);
              choose(id);
            }}
          />
          <span>
            <b>{id}</b> {says} {remaining < rest && <Short by={rest - remaining} rest={rest} decimals={decimals} />}
          </span>
        </label>
      ))}
      {line.lots.length === 0 && <p>No lot of it is on the shelf: receive it first, or add it as it came.</p>}
      <div className="field weigh-scan">
        <label htmlFor="weigh-scanned">Or scan the label</label>
        <input
          id="weigh-scanned"
          name="scanned"
          defaultValue={typed}
          autoComplete="off"
          onChange={(event) => {
            scan(event.currentTarget.value);
          }}
          onKeyDown={(event) => {
            if (event.key === "Enter") goOnToWeight(event);
          }}
        />
      </div>
      {fault !== undefined && (
        <p className="field-fault" id="weigh-lot-fault">
          {asSentence(`lot ${fault}`)}
        </p>
      )}
    </fieldset>
  );
}

/** What a lot lacks of the rest: all of it where what waits here has emptied it. */
const Short = ({
  by,
  rest,
  decimals,
}: {
  readonly by: bigint;
  readonly rest: bigint;
  readonly decimals: number;
}): ReactNode => (
  <Sign sign="box" tone="wrong">
    {weightShown(by < rest ? by : rest, decimals)} short
  </Sign>
);

/** A scanner ends with Enter: that has chosen the lot, and goes on to the weight. */
function goOnToWeight(event: KeyboardEvent<HTMLInputElement>): void {
  event.preventDefault();
  event.currentTarget.form?.querySelector<HTMLElement>("[name=weight]")?.focus();
}

/** What was scanned before is another jar: the last one counts. */
function forgetScan(form: HTMLFormElement | null): void {
  const scanned = form?.elements.namedItem("scanned");
  if (scanned instanceof HTMLInputElement) scanned.value = "";
}
