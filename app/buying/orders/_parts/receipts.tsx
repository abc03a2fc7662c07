import Link from "next/link";
import type { ReactNode } from "react";
import { Ledger } from "@/app/_ui/ledger";
import { Press } from "@/app/_ui/press";
import { dividedBy, whole } from "@/lib/domain/fraction";
import { byId } from "@/lib/domain/index-by-id";
import { landedEach, packPaid } from "@/lib/domain/landed";
import type { LotReceived } from "@/lib/domain/ledger/receipt";
import { packPriceAt } from "@/lib/domain/orders";
import { dayShown, moneyShown, priceShown, shareShown } from "@/lib/edge/figures";
import { priceFields } from "@/lib/edge/forms/price-pressed";
import { lotAddress, postingAddress } from "@/lib/edge/ledger-address";
import { largeUnitShown } from "@/lib/edge/landed-figures";
import { takeThePrice } from "../[order]/actions";
import type { OrderView } from "./order-view";

interface Came {
  readonly view: OrderView;
  readonly received: readonly LotReceived[];
}

const COLUMNS = [
  { name: "Lot" },
  { name: "Came", className: "not-on-phone" },
  { name: "A pack", kind: "number" },
  { name: "Delivery and duty", kind: "number", className: "not-on-phone" },
  { name: "Landed", kind: "number" },
] as const;

/** What came for the order, what was paid, what it cost in the house, and how that compares with its offers. */
export function Receipts({ view, received }: Came): ReactNode {
  if (received.length === 0) return null;
  const { workshop, today } = view;
  const { currency } = workshop.settings;
  const materialOf = byId("material", workshop.materials);
  const [paid, landed] = [total(received.map((each) => each.paid)), total(received.map((each) => each.landed))];
  return (
    <section className="block" aria-labelledby="came">
      <h2 id="came">What has come</h2>
      {paid > 0n && (
        <p className="small soft">
          {moneyShown(paid, currency)} was paid for goods; delivery and duty added {moneyShown(landed - paid, currency)}
          , {shareShown(dividedBy(whole(landed - paid), whole(paid)))} of them.
        </p>
      )}
      <Ledger caption="The lots that came for this order" columns={COLUMNS} className="order-lines">
        {received.map((each) => {
          const material = each.material === null ? null : materialOf(each.material);
          const each1 = packPaid(each);
          return (
            <tr key={each.lot}>
              <th scope="row">
                <Link href={lotAddress(each.lot)}>{each.lot}</Link>
                <small>{material?.name}</small>
              </th>
              <td className="not-on-phone">
                <Link href={postingAddress(each.posting)}>{dayShown(each.day, today)}</Link>
              </td>
              <td className="number second-line">
                {each1 === null ? moneyShown(each.paid, currency) : priceShown(each1, currency)}
                <Beside each={each} view={view} />
              </td>
              <td className="number not-on-phone">{moneyShown(each.landed - each.paid, currency)}</td>
              <td className="number end">
                {moneyShown(each.landed, currency)}
                {material && <small>{largeUnitShown(landedEach(each), material.measure, currency)}</small>}
              </td>
            </tr>
          );
        })}
      </Ledger>
    </section>
  );
}

const total = (amounts: readonly bigint[]): bigint => amounts.reduce((all, each) => all + each, 0n);

/** What the offer says beside what was paid, and the press that takes it over. @rule OFFER-3 */
function Beside({ each, view }: { readonly each: LotReceived; readonly view: OrderView }): ReactNode {
  const offer = view.workshop.offers.find(({ id }) => id === each.offer);
  const paid = packPaid(each);
  if (offer === undefined || paid === null) return null;
  const { currency } = view.workshop.settings;
  const says = packPriceAt(offer, each.packs);
  const confirmed = offer.confirmedOn !== null && offer.confirmedOn >= each.day;
  if (says === paid && confirmed) return <small>as the offer says</small>;
  const carried = priceFields({ offer: offer.id, packs: each.packs, from: says, to: paid, on: each.day });
  return (
    <>
      <small>{says === paid ? "as the offer says" : `the offer says ${priceShown(says, currency)}`}</small>
      {paid > 0n && (
        <Press
          act={takeThePrice}
          carried={{ ...carried, order: view.order.id }}
          name={`${pressed(says, paid)}, lot ${each.lot}`}
        >
          {pressed(says, paid)}
        </Press>
      )}
    </>
  );
}

const pressed = (says: bigint, paid: bigint): string =>
  says === paid ? "Confirm the price" : "Take it into the offer";
