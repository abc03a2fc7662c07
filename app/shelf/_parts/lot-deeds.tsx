import Link from "next/link";
import type { ReactNode } from "react";
import type { FormAnswer } from "@/app/_ui/form-answer";
import { RecordForm } from "@/app/_ui/record-form";
import { isoDate } from "@/lib/domain/calendar";
import { type Measure, quantity, type Stock } from "@/lib/domain/quantity";
import { currencySign } from "@/lib/edge/figures";
import { LOT_FORMS, type LotDeed } from "@/lib/edge/forms/lot-forms";
import { stockText } from "@/lib/edge/written-figures";
import { lotAddress } from "@/lib/edge/ledger-address";
import type { LotView } from "./lot-view";

const DEED_WORDS: Readonly<Record<LotDeed, string>> = {
  hold: "Put it on hold",
  release: "Release it",
  off: "Write it off",
  cost: "Add a cost that came later",
};

/** What can be done with what is there. */
const canBe = (deed: LotDeed, { onShelf, onHold }: LotView): boolean => {
  switch (deed) {
    case "hold":
      return onShelf.quantity > 0n;
    case "release":
      return onHold.quantity > 0n;
    case "off":
      return onShelf.quantity > 0n || onHold.quantity > 0n;
    case "cost":
      return true;
  }
};

interface Deeds {
  readonly view: LotView;
  readonly measure: Measure;
  /** The one that stands open. */
  readonly open: LotDeed | null;
  readonly newId: string;
  readonly act: (deed: LotDeed) => (before: FormAnswer, form: FormData) => Promise<FormAnswer>;
}

/** What can be done with a lot, and the form of the one that was chosen. */
export function LotDeeds({ view, measure, open, newId, act }: Deeds): ReactNode {
  const { lot, currency } = view;
  return (
    <section className="shelf-form" aria-label="What can be done with this lot">
      <p className="lot-deeds">
        {(["hold", "release", "off", "cost"] as const)
          .filter((deed) => canBe(deed, view))
          .map((deed) => (
            <Link
              key={deed}
              className="button"
              href={`${lotAddress(lot.id, { do: deed })}#do`}
              aria-current={deed === open ? "true" : undefined}
              prefetch={false}
            >
              {DEED_WORDS[deed]}
            </Link>
          ))}
      </p>
      {open !== null && (
        <div id="do">
          <h2>{DEED_WORDS[open]}</h2>
          <RecordForm
            key={open}
            fields={LOT_FORMS[open]}
            values={{ id: newId, ...given(open, view, measure) }}
            choices={{}}
            money={currencySign(currency)}
            seen=""
            send={act(open)}
            buttons={[{ deed: "post", label: DEED_WORDS[open] }]}
          />
        </div>
      )}
    </section>
  );
}

/** What is most often meant: today, and all that is there. */
function given(deed: LotDeed, { onShelf, onHold, today }: LotView, measure: Measure): Readonly<Record<string, string>> {
  const fromHold = deed === "release" || (deed === "off" && onShelf.quantity === 0n);
  const there = quantity<Stock>(fromHold ? onHold.quantity : onShelf.quantity);
  return {
    day: isoDate(today),
    amount: deed === "cost" ? "" : stockText(there, measure),
    from: fromHold ? "hold" : "stock",
    ...(deed === "cost" && { why: "adds" }),
  };
}
