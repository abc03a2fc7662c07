import type { ReactNode } from "react";
import { type AskedField, AskingForm } from "@/app/_ui/asking-form";
import { type Day, isoDate } from "@/lib/domain/calendar";
import { isUsable } from "@/lib/domain/lots";
import { dayShown } from "@/lib/edge/figures";
import { unitsInWords } from "@/lib/edge/forms/posting-forms";
import { WRITE_OFF_REASONS } from "@/lib/edge/forms/units-form";
import { sellOfLot, takeBackOfLot, writeOffOfLot } from "../finished/finished-actions";
import type { FinishedStock } from "./finished-stock";

interface Forms {
  readonly found: FinishedStock;
  readonly sold: bigint;
  readonly today: Day;
  readonly newKeys: { readonly sell: string; readonly back: string; readonly off: string };
}

/** What can be done with a finished lot: sold from it, put back, written off. */
export function LotForms({ found: { lot, there }, sold, today, newKeys }: Forms): ReactNode {
  const carried = { lot: lot.id };
  const outOfDate = lot.bestBefore !== null && !isUsable({ expires: lot.bestBefore }, today);
  return (
    <div className="finished-forms">
      {there > 0n && (
        <section className="form-slip" aria-labelledby="sell">
          <h2 id="sell">Sell from it</h2>
          {outOfDate && (
            <p className="fault">
              Its last day was {dayShown(lot.bestBefore, today, { year: true })}. Whether it may still be sold is a
              matter of local rules, which come first.
            </p>
          )}
          <AskingForm
            key={newKeys.sell}
            act={sellOfLot}
            carried={carried}
            kept={{ key: newKeys.sell }}
            className="asking-in-a-row"
            fields={[units(`${unitsInWords(there)} in stock`), onDay(today), note]}
            button="Sell"
            {...(outOfDate && { other: { deed: "out of date", label: "Sell all the same" } })}
          />
        </section>
      )}
      {sold > 0n && (
        <section className="form-slip" aria-labelledby="take-back">
          <h2 id="take-back">Returned by a customer</h2>
          <AskingForm
            key={newKeys.back}
            act={takeBackOfLot}
            carried={carried}
            kept={{ key: newKeys.back }}
            className="asking-in-a-row"
            fields={[units(`${unitsInWords(sold)} sold`), onDay(today), note]}
            button="Put back in stock"
          />
        </section>
      )}
      {there > 0n && (
        <section className="form-slip" aria-labelledby="write-off">
          <h2 id="write-off">Write off</h2>
          <AskingForm
            key={newKeys.off}
            act={writeOffOfLot}
            carried={carried}
            kept={{ key: newKeys.off }}
            className="asking-in-a-row"
            fields={[units(`${unitsInWords(there)} in stock`), why, onDay(today), note]}
            button="Write off"
          />
        </section>
      )}
    </div>
  );
}

const units = (hint: string): AskedField => ({ name: "units", label: "Units", type: "text", value: "", hint });
const onDay = (today: Day): AskedField => ({ name: "day", label: "Day", type: "date", value: isoDate(today) });
const note: AskedField = { name: "note", label: "Note (optional)", type: "text", value: "" };
const why: AskedField = {
  name: "why",
  label: "Why",
  type: "choice",
  value: "",
  options: WRITE_OFF_REASONS.map((reason) => ({
    value: reason,
    label: reason.charAt(0).toUpperCase() + reason.slice(1),
  })),
};
