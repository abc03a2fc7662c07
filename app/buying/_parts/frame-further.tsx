import type { ReactNode } from "react";
import { Field } from "@/app/_ui/field";
import { asSentence } from "@/app/_ui/sentence";
import type { CurrencyCode } from "@/lib/domain/money";
import type { Material, Offer, Supplier } from "@/lib/domain/workshop";
import { amountShown, currencySign } from "@/lib/edge/figures";
import type { FrameReading } from "@/lib/edge/forms/buying-frame";
import { Ticks } from "./ticks";

/** A material that is to be bought, with the offers that could fill it. */
export interface Pinnable {
  readonly material: Material;
  readonly offers: readonly Offer[];
}

interface FurtherOf {
  readonly reading: FrameReading;
  readonly suppliers: readonly Supplier[];
  readonly pinnable: readonly Pinnable[];
  readonly currency: CurrencyCode;
}

const inWords = (fault: string | null) => (fault === null ? undefined : asSentence(fault));

/** What is set less often. It stands open where any of it is set or was not understood. */
export function FrameFurther({ reading: { asked, faults }, suppliers, pinnable, currency }: FurtherOf): ReactNode {
  const { by, cap, left, mustKeep, heldTo, pinned } = asked;
  const isSet = mustKeep || heldTo.length + pinned.length > 0 || [by, cap, left].some((typed) => typed !== "");
  return (
    <details className="buying-further" open={isSet}>
      <summary>Order day, spending, leftovers, and whom to buy from</summary>
      <div className="buying-frame-fields">
        <Field
          label="Only what must be ordered by"
          name="by"
          autoComplete="off"
          placeholder="2026-12-04"
          defaultValue={by}
          hint="A day. The same suppliers’ other goods ride along. Empty for everything."
          fault={inWords(faults.by)}
        />
        <Field
          label={`May be spent, ${currencySign(currency)}`}
          name="cap"
          inputMode="decimal"
          autoComplete="off"
          defaultValue={cap}
          hint="With delivery. Empty for no limit."
          fault={inWords(faults.cap)}
        />
        <div>
          <Field
            label="Useful leftovers count, % of their price"
            name="left"
            inputMode="decimal"
            autoComplete="off"
            defaultValue={left}
            hint="0 to 100. Empty for nothing."
            fault={inWords(faults.left)}
          />
          <fieldset className="buying-ticks">
            <legend className="unseen">Out of date</legend>
            <label>
              <input type="checkbox" name="keep" value="yes" defaultChecked={mustKeep} />
              Nothing that goes out of date before it is used
            </label>
          </fieldset>
        </div>
        <Ticks
          legend="Buy from, wherever they offer"
          name="only"
          all={suppliers.map(({ id, name }) => ({ id, name: `Buy from ${name}` }))}
          ticked={heldTo}
        />
      </div>
      {pinnable.length > 0 && <Pins pinnable={pinnable} suppliers={suppliers} pinned={pinned} />}
    </details>
  );
}

const offerWords = ({ supplier, pack }: Offer, suppliers: readonly Supplier[]): string =>
  `${suppliers.find(({ id }) => id === supplier)?.name ?? ""}, ${amountShown(pack.typed)}`;

interface PinsOf extends Pick<FurtherOf, "pinnable" | "suppliers"> {
  readonly pinned: readonly string[];
}

/** One offer for a material, or whichever costs least. */
const Pins = ({ pinnable, suppliers, pinned }: PinsOf): ReactNode => (
  <fieldset className="buying-pins">
    <legend>One offer alone</legend>
    {pinnable.map(({ material, offers }) => (
      <div className="field" key={material.id}>
        <label htmlFor={`pin-${material.id}`}>{material.name}</label>
        <select
          id={`pin-${material.id}`}
          name="pin"
          defaultValue={offers.find(({ id }) => pinned.includes(id))?.id ?? ""}
        >
          <option value="">Whichever costs least</option>
          {offers.map((offer) => (
            <option key={offer.id} value={offer.id}>
              {offerWords(offer, suppliers)}
            </option>
          ))}
        </select>
      </div>
    ))}
  </fieldset>
);
