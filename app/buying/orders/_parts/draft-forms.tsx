import type { ReactNode } from "react";
import { AskingForm } from "@/app/_ui/asking-form";
import { Press } from "@/app/_ui/press";
import { arrivalOf, deliveryFrom } from "@/lib/domain/arrivals";
import { isoDate } from "@/lib/domain/calendar";
import { byId } from "@/lib/domain/index-by-id";
import { amountShown } from "@/lib/edge/figures";
import { countsCarried, packsField } from "@/lib/edge/forms/order-deeds";
import { changePacksOfDraft, orderTheDraft, throwAway } from "../[order]/actions";
import type { OrderView } from "./order-view";

/** A draft is changed, ordered or thrown away. */
export function DraftForms({ view: { order, supplier, workshop, today } }: { readonly view: OrderView }): ReactNode {
  const counts = order.lines.map(({ packs }) => packs ?? 0n);
  const materialOf = byId("material", workshop.materials);
  const due = arrivalOf(deliveryFrom(supplier, workshop.settings.closedDays), today);
  return (
    <>
      <section className="form-slip" aria-labelledby="ordered">
        <h2 id="ordered">Have you ordered it?</h2>
        <p className="small soft">
          Stillroom sends nothing: order it at {supplier.name} as you always do, then say so here. Only then does the
          plan expect it.
        </p>
        <AskingForm
          act={orderTheDraft}
          carried={{ order: order.id, today: isoDate(today) }}
          fields={[{ name: "due", label: "It is due on", type: "date", value: isoDate(due) }]}
          button="I have ordered it"
        />
      </section>
      <section className="form-slip" aria-labelledby="packs">
        <h2 id="packs">Other packs?</h2>
        <p className="small soft">0 takes a line out. Prices are those that the offers ask today for so many.</p>
        <AskingForm
          key={countsCarried(counts)}
          act={changePacksOfDraft}
          carried={{ order: order.id, from: countsCarried(counts) }}
          className="asking-in-a-row"
          fields={order.lines.map((line, at) => {
            const offer = workshop.offers.find(({ id }) => id === line.offer);
            const of = offer ? `, ${amountShown(offer.pack.typed)}` : "";
            return {
              name: packsField(at),
              label: `Packs of ${materialOf(line.material).name}${of}`,
              type: "text",
              value: (line.packs ?? 0n).toString(),
            };
          })}
          button="Keep these packs"
        />
        <Press act={throwAway} carried={{ order: order.id }}>
          Throw the draft away
        </Press>
      </section>
    </>
  );
}
