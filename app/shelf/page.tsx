import type { Metadata } from "next";
import Link from "next/link";
import { redirect } from "next/navigation";
import type { ReactNode } from "react";
import { Opening } from "@/app/_ui/finding";
import { FirstDeed } from "@/app/_ui/first-deed";
import { RowKeys } from "@/app/_ui/row-keys";
import { countsDue } from "@/app/counts-due-for-page";
import { planForPage } from "@/app/plan-for-page";
import { RibbonAxis, RibbonInks, RibbonKey } from "@/app/_ui/ribbon";
import { byId, grouped } from "@/lib/domain/index-by-id";
import type { MaterialOutlook } from "@/lib/domain/plan-figures";
import { runsInstead } from "@/lib/domain/run-instead";
import { quantity, type Stock } from "@/lib/domain/quantity";
import { countShown, dayShown } from "@/lib/edge/figures";
import { NO_BREAK } from "@/lib/edge/shown-digits";
import { ribbonAxis } from "@/lib/edge/ribbon-axis";
import { readStock } from "@/lib/store/ledger/ledger-answers";
import { MaterialRow } from "./_parts/material-row";
import type { Shelf } from "./_parts/shelf";
import { ShelfFinding } from "./_parts/shelf-finding";
import { askedFrom, type Asked, type Group, groupOf, GROUPS, listed } from "./_parts/shelf-list";
import { ShelfTools } from "./_parts/shelf-tools";
import "./shelf.css";

export const metadata: Metadata = { title: "The shelf" };

type Search = Promise<Readonly<Record<string, string | readonly string[] | undefined>>>;

/** What is on the shelf, how long it lasts, what to order by when, what goes out of date. */
export default async function ShelfPage({ searchParams }: { readonly searchParams: Search }): Promise<ReactNode> {
  const [found, parameters] = await Promise.all([planForPage(), searchParams]);
  if (!found) redirect("/");
  const { workshop, today, plan, materialsBefore } = found;
  const asked = askedFrom(parameters);
  const [counts, stock] = await Promise.all([countsDue(found, today), readStock()]);
  const due = counts.filter(({ isDue }) => isDue);
  const held = stock.filter(({ lot, place }) => place.kind === "hold" && lot.of === "material");
  const shelf: Shelf = {
    workshop,
    today,
    lastDay: plan.lastDay,
    axis: ribbonAxis(today, plan.lastDay),
    productOf: byId("product", workshop.products),
    supplierOf: byId("supplier", workshop.suppliers),
    offersOf: offersByMaterial(workshop.offers),
    held: new Map(held.map(({ lot, quantity: amount }) => [lot.id, quantity<Stock>(amount)])),
    countDue: new Set(due.map(({ rhythm }) => rhythm.material)),
    instead: runsInstead(workshop, plan.materials, today),
    before: materialsBefore,
  };
  const materials = listed(plan.materials, asked, materialsBefore);
  return (
    <>
      <RibbonInks />
      <Opening title="The shelf" beside={plan.materials.length > 0 && <StockLinks />}>
        <ShelfFinding outlooks={plan.materials} shelf={shelf} />
      </Opening>
      {plan.materials.length === 0 ? (
        <FirstDeed href="/book/materials/new">Add a material</FirstDeed>
      ) : (
        <>
          <ShelfTools asked={asked} outlooks={plan.materials} changed={materialsBefore} />
          <div className="shelf">
            {materials.length === 0 ? <NothingFound asked={asked} /> : <ShelfHead shelf={shelf} />}
            <RowKeys ribbons>
              <Bands materials={materials} asked={asked} shelf={shelf} />
            </RowKeys>
          </div>
          {materials.length > 0 && (
            <div className="shelf-foot">
              <RibbonKey />
            </div>
          )}
        </>
      )}
    </>
  );
}

/** What is done with the shelf as a whole. */
const StockLinks = (): ReactNode => (
  <p className="lot-deeds">
    <Link className="button" href="/shelf/receive" prefetch={false}>
      Receive a delivery
    </Link>
    <Link className="button" href="/shelf/count" prefetch={false}>
      Count the shelf
    </Link>
    <Link className="button" href="/shelf/finished" prefetch={false}>
      Finished stock
    </Link>
  </p>
);

function offersByMaterial(offers: Shelf["workshop"]["offers"]): Shelf["offersOf"] {
  const groups = grouped(offers, (offer) => offer.material);
  return (material) => groups.get(material.id) ?? [];
}

/** Names the columns once; each row says them again for who cannot see them. */
const ShelfHead = ({ shelf }: { readonly shelf: Shelf }): ReactNode => (
  <div className="shelf-line shelf-head" aria-hidden="true">
    <div className="shelf-words">Material</div>
    <div className="shelf-words number">On the shelf</div>
    <div className="shelf-words number">Lasts</div>
    <div className="shelf-words">Order by</div>
    <div className="shelf-ribbon">
      <RibbonAxis axis={shelf.axis} />
    </div>
  </div>
);

const NothingFound = ({ asked }: { readonly asked: Asked }): ReactNode => (
  <p className="shelf-nothing">
    Nothing {asked.find === "" ? "of that kind is on the shelf" : `called “${asked.find}”`}.{" "}
    <Link href="/shelf">Show every material</Link>
  </p>
);

interface Listing {
  readonly materials: readonly MaterialOutlook[];
  readonly asked: Asked;
  readonly shelf: Shelf;
}

/** By order day the rows stand in groups, the most pressing first; by anything else in one list. */
function Bands({ materials, asked, shelf }: Listing): ReactNode {
  const rows = (outlooks: readonly MaterialOutlook[]): ReactNode =>
    outlooks.map((outlook) => (
      <MaterialRow
        key={outlook.material.id}
        outlook={outlook}
        shelf={shelf}
        group={groupOf(outlook, shelf)}
        asked={asked}
        listed={materials.length}
      />
    ));
  if (asked.by !== "day") return <section aria-label="Materials">{rows(materials)}</section>;
  return GROUPS.map((group) => {
    const inGroup = materials.filter((outlook) => groupOf(outlook, shelf) === group);
    if (inGroup.length === 0) return null;
    return (
      <section key={group}>
        <h2 className="shelf-band">
          {groupTitle(group, shelf)} <small>{materialCount(inGroup.length)}</small>
        </h2>
        {rows(inGroup)}
      </section>
    );
  });
}

const materialCount = (count: number): string =>
  `${countShown(count)}${NO_BREAK}${count === 1 ? "material" : "materials"}`;

function groupTitle(group: Group, { today, lastDay }: Shelf): string {
  const until = dayShown(lastDay, today, { weekday: false });
  switch (group) {
    case "this week":
      return "Order this week";
    case "to make":
      return "To be made, not bought";
    case "no offer":
      return "To be bought, and nobody offers it";
    case "nothing to buy":
      return "Below safety stock, with nothing to buy now";
    case "out of date":
      return "Going out of date before use, with nothing to order this week";
    case "later":
      return `Order later, by ${until}`;
    case "covered":
      return `Covered to ${until}`;
  }
}
