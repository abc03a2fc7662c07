import Link from "next/link";
import type { ReactNode } from "react";
import { Ledger } from "@/app/_ui/ledger";
import { TakeItBack } from "@/app/_ui/take-it-back";
import { type Day, isoDate } from "@/lib/domain/calendar";
import type { ClosedRun } from "@/lib/domain/desk";
import { ratio } from "@/lib/domain/fraction";
import type { Making } from "@/lib/domain/ledger/making";
import { type Posted, wholeValue } from "@/lib/domain/ledger/posting";
import { type MaterialUse, roundedUpFor } from "@/lib/domain/needs";
import { quantity, type Units } from "@/lib/domain/quantity";
import type { Product, Workshop } from "@/lib/domain/workshop";
import { inARow } from "@/lib/edge/counted";
import { moneyShown, stockShown } from "@/lib/edge/figures";
import { lotPageAddress, postingAddress } from "@/lib/edge/ledger-address";
import { takeMakingBack } from "../make/making-actions";
import { unitsShown } from "./run-words";

interface MadeView {
  readonly closed: ClosedRun;
  readonly product: Product;
  /** Null where the books hold no posting of it: it was closed before they were kept. */
  readonly posting: Posted | null;
  readonly making: Making | null;
  readonly workshop: Workshop;
  readonly today: Day;
  readonly uses: readonly MaterialUse[];
  /** Whether the needs depend on what the shelf had made ahead. */
  readonly isAtMost: boolean;
}

/** What came out against what was planned, and what it cost. */
export function MadeFinding({ view: { closed, making, workshop } }: { readonly view: MadeView }): ReactNode {
  const { run, unitsMade } = closed;
  const money = (micros: bigint): string => moneyShown(micros, workshop.settings.currency);
  if (making === null)
    return `${unitsShown(unitsMade)} of ${unitsShown(run.units)} planned. What it cost was not kept.`;
  const lost = money(wholeValue(making.lost));
  if (unitsMade === 0n)
    return `The batch failed: none of ${unitsShown(run.units)} planned came out, and ${lost} was lost with it.`;
  const each = moneyShown(ratio(wholeValue(making.finished), unitsMade), workshop.settings.currency);
  const cost = `They cost ${money(wholeValue(making.finished))}, ${each} each.`;
  if (unitsMade === run.units) return `${unitsShown(unitsMade)} came out, as planned. ${cost}`;
  if (unitsMade > run.units)
    return `${unitsShown(unitsMade)} came out, ${unitsShown(unitsMade - run.units)} more than planned. ${cost}`;
  const missing = quantity<Units>(run.units - unitsMade);
  return `${unitsShown(unitsMade)} of ${unitsShown(run.units)} planned came out. ${cost} ${unitsShown(missing)} missing from the plan: ${lost} was lost with ${missing === 1n ? "it" : "them"}.`;
}

/** What the run drew beside what the plan needed, what the batch cost, and the way to take it back. */
export function MadeRun({ view, newKey }: { readonly view: MadeView; readonly newKey: string }): ReactNode {
  const { posting, making, closed, workshop, today } = view;
  if (posting === null || making === null) return null;
  const { currency } = workshop.settings;
  return (
    <>
      <Drawn view={view} making={making} />
      <Costs making={making} currency={currency} />
      <p className="week-more">
        {posting.reason !== null && <>Note: {posting.reason}. </>}
        <WhatCameOut lot={making.lot} workshop={workshop} />{" "}
        <Link href={postingAddress(posting.id)}>The posting with its entries</Link>
      </p>
      <TakeItBack
        act={takeMakingBack}
        title="Was it entered by mistake?"
        says="A second posting says the opposite: what was drawn goes back to its lots, the finished units go, and the run is planned again. Both stay in the history."
        carried={{ posting: posting.id, run: closed.run.id }}
        newKey={newKey}
        day={isoDate(today)}
        button="Take it back"
      />
    </>
  );
}

/** The lot that came out, as long as it is on a list: finished units, or a material that the run makes. */
function WhatCameOut({ lot, workshop }: Pick<MadeView, "workshop"> & { readonly lot: Making["lot"] }): ReactNode {
  const listed = lot?.of === "material" ? workshop.lots : workshop.finished;
  if (lot === null || !listed.some(({ id }) => id === lot.id)) return null;
  const name = lot.of === "material" ? `Lot ${lot.id} on the shelf` : "The finished lot";
  return <Link href={lotPageAddress(lot)}>{name}</Link>;
}

function Drawn({ view, making }: { readonly view: MadeView; readonly making: Making }): ReactNode {
  const { workshop, uses, closed } = view;
  const materialOf = new Map(workshop.lots.map((lot) => [lot.id, lot.material]));
  const { currency } = workshop.settings;
  return (
    <section className="making-section">
      <h2>What it drew</h2>
      <Ledger
        caption="Draws of the run, lot by lot"
        columns={[
          { name: "Material" },
          { name: "Lot" },
          { name: "Drawn", kind: "number" },
          { name: "Worth", kind: "number" },
        ]}
      >
        {uses.flatMap(({ material: { id, name, measure }, need }) => {
          const draws = making.draws.filter(({ lot }) => materialOf.get(lot) === id);
          const most = stockShown(roundedUpFor(need, closed.run.units), measure, "lacking");
          const needed = view.isAtMost ? `${most} at most, by what was there made ahead` : `${most} planned`;
          if (draws.length === 0)
            return [
              <tr key={id}>
                <th scope="row">
                  {name}
                  <small>{needed}</small>
                </th>
                <td className="second-line">none</td>
                <td className="number end">nothing</td>
                <td className="number not-on-phone">{moneyShown(0n, currency)}</td>
              </tr>,
            ];
          return draws.map(({ lot, quantity, value }) => (
            <tr key={lot}>
              <th scope="row">
                {name}
                <small>{needed}</small>
              </th>
              <td className="second-line">{lot}</td>
              <td className="number end">{stockShown(quantity, measure, "nearest")}</td>
              <td className="number not-on-phone">{moneyShown(wholeValue(value), currency)}</td>
            </tr>
          ));
        })}
      </Ledger>
      <Spilt making={making} workshop={workshop} />
    </section>
  );
}

/** What was lost beside the batch: no part of what its units cost. */
function Spilt({ making: { spilt }, workshop }: { readonly making: Making; readonly workshop: Workshop }): ReactNode {
  if (spilt.length === 0) return null;
  const { lots, materials, settings } = workshop;
  const each = spilt.map(({ lot, quantity, value }) => {
    const material = materials.find(({ id }) => id === lots.find((one) => one.id === lot)?.material);
    const much = stockShown(quantity, material?.measure ?? "mass", "nearest");
    return `${much} of ${material?.name ?? "a lot that is on no list"}, lot ${lot}, worth ${moneyShown(wholeValue(value), settings.currency)}`;
  });
  return <p className="week-more">Spilt or broken beside the batch, and lost: {inARow(each)}.</p>;
}

const PARTS = [
  ["materials", "Materials"],
  ["labour", "Labour"],
  ["overhead", "Overhead"],
] as const;

function Costs({
  making: { cost, finished, lost },
  currency,
}: {
  readonly making: Making;
  readonly currency: Workshop["settings"]["currency"];
}): ReactNode {
  const money = (micros: bigint): string => moneyShown(micros, currency);
  return (
    <section className="making-section">
      <h2>What it cost</h2>
      <Ledger
        caption="What the batch cost, and where that went"
        columns={[
          { name: "Part" },
          { name: "The batch", kind: "number" },
          { name: "In the finished units", kind: "number", className: "not-on-phone" },
          { name: "Lost", kind: "number", className: "not-on-phone" },
        ]}
      >
        {PARTS.map(([part, name]) => (
          <tr key={part}>
            <th scope="row">{name}</th>
            <td className="number end">{money(cost[part])}</td>
            <td className="number not-on-phone">{money(finished[part])}</td>
            <td className="number not-on-phone">{money(lost[part])}</td>
          </tr>
        ))}
        <tr className="total">
          <th scope="row">Together</th>
          <td className="number end">{money(wholeValue(cost))}</td>
          <td className="number not-on-phone">{money(wholeValue(finished))}</td>
          <td className="number not-on-phone">{money(wholeValue(lost))}</td>
        </tr>
      </Ledger>
    </section>
  );
}
