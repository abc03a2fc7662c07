import Link from "next/link";
import type { ReactNode } from "react";
import { HowItComes } from "@/app/_ui/how-it-comes";
import { Sign } from "@/app/_ui/sign";
import type { WorkingLine } from "@/app/_ui/working";
import { type Day, daysBetween } from "@/lib/domain/calendar";
import { ratio, times, whole } from "@/lib/domain/fraction";
import { isUsable } from "@/lib/domain/lots";
import type { LadderLot } from "@/lib/domain/plan-figures";
import { quantity, type Stock, sum } from "@/lib/domain/quantity";
import type { Lot, Material } from "@/lib/domain/workshop";
import { counted, inWords, inWordsFirst } from "@/lib/edge/counted";
import { dayShown, moneyShown, pricePerGramShown, stockShown } from "@/lib/edge/figures";
import { figuresThatAdd } from "@/lib/edge/figures-that-add";
import { lotAddress } from "@/lib/edge/ledger-address";
import { LotsUsed } from "./lots-used";
import type { MaterialPart } from "./shelf";

/** The lots of a material as they will be drawn: what will be used, what will be lost, what comes in. */
export function LotLadder({ outlook, shelf }: MaterialPart): ReactNode {
  const { today, workshop } = shelf;
  const { material, ladder, onHand } = outlook;
  const here = ladder.filter((lot) => lot.order === null && isUsable(lot, today));
  const gone = ladder.filter((lot) => lot.order === null && !isUsable(lot, today));
  const coming = ladder.filter((lot) => lot.order !== null);
  const held = workshop.lots.filter(({ id, material: of }) => of === material.id && shelf.held.has(id));
  if (ladder.length === 0 && held.length === 0) return <h3>No lots here and none on the way</h3>;
  const used = here.reduce((all, lot) => sum(all, lot.used), quantity<Stock>(0n));
  return (
    <>
      <h3>{ladderTitle(here.length, coming.length)}</h3>
      <table className="ledger shelf-lots">
        <thead>
          <tr>
            <th scope="col">Lot</th>
            <th scope="col">Last day of use</th>
            <th scope="col" className="number">
              On the shelf
            </th>
            <th scope="col" className="number">
              Will be used
            </th>
            <th scope="col" className="number">
              Paid
            </th>
          </tr>
        </thead>
        <tbody>
          {here.map((lot) => (
            <LotRows key={lot.lot} lot={lot} outlook={outlook} shelf={shelf} />
          ))}
          {here.length > 1 && (
            <tr className="sum">
              <th scope="row">{here.length === 2 ? "Both" : `All ${String(here.length)}`}</th>
              <td className="not-on-phone" />
              <td className="number end">{stockShown(onHand, material.measure, "there")}</td>
              <td className="number not-on-phone">{stockShown(used, material.measure, "nearest")}</td>
              <td className="not-on-phone" />
            </tr>
          )}
          {coming.map((lot) => (
            <LotRows key={lot.lot} lot={lot} outlook={outlook} shelf={shelf} />
          ))}
          {gone.map((lot) => (
            <LotRows key={lot.lot} lot={lot} outlook={outlook} shelf={shelf} />
          ))}
          {held.map((lot) => (
            <HeldRow key={lot.id} lot={lot} outlook={outlook} shelf={shelf} />
          ))}
        </tbody>
      </table>
      <LotsUsed outlook={outlook} shelf={shelf} />
    </>
  );
}

function ladderTitle(here: number, coming: number): string {
  const onTheWay = coming === 0 ? "" : `, ${inWords(coming)} on the way`;
  if (here === 0) return `No usable lot on the shelf${onTheWay}`;
  return here === 1 ? `One lot${onTheWay}` : `${inWordsFirst(here)} lots${onTheWay}: first expired, first out`;
}

/** A lot, and under it what becomes of it where that is not simply use. */
function LotRows({ lot, outlook: { material }, shelf }: MaterialPart & { readonly lot: LadderLot }): ReactNode {
  const { today, workshop } = shelf;
  const held = stockShown(lot.quantity, material.measure, "there");
  // To the nearest, as what is lost: together they come to what is there.
  const used = lot.used === lot.quantity ? held : stockShown(lot.used, material.measure, "nearest");
  const bestBefore = lot.expires === null ? "none" : dayShown(lot.expires, today, { weekday: false, year: true });
  const paid = paidFor(lot);
  const isHere = lot.order === null && isUsable(lot, today);
  return (
    <>
      <tr className={lot.lost > 0n || !isHere ? "with-note" : undefined}>
        <th scope="row">
          {lot.order === null ? (
            <Link href={lotAddress(lot.lot)} prefetch={false}>
              {lot.lot}
            </Link>
          ) : (
            `order ${lot.order}`
          )}
        </th>
        <td className="second-line">
          <span className="phone-only">{lot.used === lot.quantity ? "All" : used} will be used. Last day of use </span>
          {bestBefore}
        </td>
        <td className="number end">{lot.order === null ? held : "–"}</td>
        <td className="number not-on-phone">{used}</td>
        <td className="number not-on-phone">
          {paid === null
            ? "–"
            : `${pricePerGramShown(paid, material.measure, workshop.settings.currency)} ${material.measure === "mass" ? "a gram" : "each"}`}
        </td>
      </tr>
      {(lot.lost > 0n || !isHere) && (
        <tr className="lot-note">
          <td colSpan={5}>
            {lot.order !== null && <OnTheWay lot={lot} order={lot.order} held={held} shelf={shelf} />}
            {lot.lost > 0n && <Loss lot={lot} material={material} shelf={shelf} />}
            {lot.lost > 0n && <HowItComes lines={lossLines({ lot, material, shelf })} />}
          </td>
        </tr>
      )}
    </>
  );
}

/** What is set aside of a lot: no run draws it until it is released on the lot's page. @rule LEDGER-14 */
function HeldRow({ lot: { id }, outlook: { material }, shelf }: MaterialPart & { readonly lot: Lot }): ReactNode {
  const amount = stockShown(shelf.held.get(id) ?? 0n, material.measure, "there");
  return (
    <tr className="lot-note">
      <td colSpan={5}>
        <span className="lot-loss">
          <Sign sign="dash" tone="still">
            {amount} of lot {id} on hold
          </Sign>
          {" · no run draws it; "}
          <Link href={lotAddress(id)} prefetch={false}>
            release it or write it off
          </Link>
        </span>
      </td>
    </tr>
  );
}

interface Lost extends Pick<MaterialPart, "shelf"> {
  readonly lot: LadderLot;
  readonly material: Material;
}

const paidFor = ({ value, quantity: held }: LadderLot) => (value === null || held === 0n ? null : ratio(value, held));

function Loss({ lot, material, shelf }: Lost): ReactNode {
  const { today, workshop } = shelf;
  const last = lot.expires ?? today;
  const paid = paidFor(lot);
  const isGone = last < today;
  const isTooLate = last < lot.received;
  const amount = stockShown(lot.lost, material.measure, "nearest");
  const goes = material.measure === "count" && lot.lost > 1n ? "go out of date" : "goes out of date";
  return (
    <span className="lot-loss">
      <Sign sign="hourglass" tone="wrong">
        {isTooLate
          ? `${amount} out of date before it comes: its last day of use is ${dayShown(last, today)}`
          : `${amount} ${isGone ? "out of date since" : goes} ${dayShown(last, today, { weekday: false })}`}
        {isGone && !isTooLate && ` (${ago(last, today)})`}
      </Sign>
      {paid && ` · worth ${moneyShown(times(whole(lot.lost), paid), workshop.settings.currency)}`}
    </span>
  );
}

/** What is there of it, less what runs use until its last day; and what the rest cost. @rule PLAN-9 */
function lossLines({ lot, material: { measure }, shelf: { today, workshop } }: Lost): readonly WorkingLine[] {
  const figure = figuresThatAdd([[lot.quantity, -lot.used, lot.lost]], measure);
  const called = lot.order === null ? `lot ${lot.lot}` : `order ${lot.order}`;
  const { currency } = workshop.settings;
  const paid = paidFor(lot);
  const last = dayShown(lot.expires ?? today, today, { weekday: false, year: true });
  return [
    { figure: figure(lot.quantity), reason: `of ${called}` },
    { operator: "−", figure: figure(lot.used), reason: `that runs use up to ${last}, its last day` },
    { figure: figure(lot.lost), reason: "goes out of date", isResult: true },
    ...(paid === null
      ? []
      : [
          {
            operator: "×" as const,
            figure: pricePerGramShown(paid, measure, currency),
            reason: `what ${measure === "mass" ? "one gram" : "one piece"} of the lot cost`,
          },
          { figure: moneyShown(times(whole(lot.lost), paid), currency, 2), reason: "worth", isResult: true },
        ]),
  ];
}

const ago = (day: Day, today: Day): string => `${counted(daysBetween(day, today), "day", "days")} ago`;

function OnTheWay({
  lot,
  order,
  held,
  shelf: { workshop, supplierOf, today },
}: Pick<MaterialPart, "shelf"> & {
  readonly lot: LadderLot;
  readonly order: string;
  readonly held: string;
}): ReactNode {
  const placed = workshop.orders.find(({ id }) => id === order);
  if (!placed) return null;
  const isLate = placed.due <= today && placed.due !== lot.received;
  return (
    <span className="lot-loss">
      <Sign sign="ring" tone="open">
        {held} on the way, {dayShown(lot.received, today)}
      </Sign>
      {` · ${supplierOf(placed.supplier).name}, order ${order}`}
      {isLate && `; it was due ${dayShown(placed.due, today)} and is expected on the next working day`}
    </span>
  );
}
