import type { Metadata } from "next";
import Link from "next/link";
import { notFound, redirect } from "next/navigation";
import type { ReactNode } from "react";
import { Opening } from "@/app/_ui/finding";
import { HowItComes } from "@/app/_ui/how-it-comes";
import { newId } from "@/app/_ui/new-id";
import { Sign } from "@/app/_ui/sign";
import { WaitsAtBenchLink } from "@/app/_ui/waits-at-bench";
import { planForPage } from "@/app/plan-for-page";
import { ratio } from "@/lib/domain/fraction";
import { materialLot, wholeValue } from "@/lib/domain/ledger/posting";
import { NOTHING } from "@/lib/domain/ledger/standing";
import { isUsable } from "@/lib/domain/lots";
import { dayShown, moneyShown, pricePerGramShown } from "@/lib/edge/figures";
import { lotDeedIn } from "@/lib/edge/forms/lot-forms";
import { materialAddress } from "@/lib/edge/material-address";
import { runsCalled } from "@/lib/edge/run-called";
import { POSTING_WORDS } from "@/lib/edge/posting-words";
import { readHistoryOfLot, readStruckOff, readTraceForward } from "@/lib/store/ledger/ledger-answers";
import { idOfSegment, postingAddress } from "@/lib/edge/ledger-address";
import { LotDeeds } from "../../_parts/lot-deeds";
import { LotHistory } from "../../_parts/lot-history";
import { LotTrace } from "../../_parts/lot-trace";
import { inPlaces, type LotView, muchOf } from "../../_parts/lot-view";
import { ShelfCrumb } from "../../_parts/shelf-crumb";
import { actOnLot } from "./actions";
import "../../shelf.css";

interface Addressed {
  readonly params: Promise<{ readonly lot: string }>;
  readonly searchParams: Promise<Readonly<Record<string, string | readonly string[] | undefined>>>;
}

export async function generateMetadata({ params }: Addressed): Promise<Metadata> {
  return { title: `Lot ${idOfSegment((await params).lot) ?? ""}` };
}

async function viewOf(step: string): Promise<LotView | null> {
  const found = await planForPage();
  if (found === null) redirect("/");
  const { workshop, today } = found;
  const id = idOfSegment(step);
  const listed = workshop.lots.find((each) => each.id === id);
  const lot = listed ? { ...listed, item: listed.material } : id === null ? null : await struckOff(id);
  if (lot === null) return null;
  const name = materialLot(lot.id);
  const [all, trace] = await Promise.all([readHistoryOfLot(name), readTraceForward(lot.id)]);
  return {
    lot,
    material: workshop.materials.find((each) => each.id === lot.item) ?? null,
    isListed: listed !== undefined,
    today,
    currency: workshop.settings.currency,
    onShelf: inPlaces(all, name, ["shelf"]).at(-1)?.balance ?? NOTHING,
    onHold: inPlaces(all, name, ["hold"]).at(-1)?.balance ?? NOTHING,
    lines: inPlaces(all, name, ["shelf", "hold"]),
    trace,
    runCalled: runsCalled(found),
  };
}

/** A lot that the ledger names and the Book has no more. */
async function struckOff(id: string) {
  const off = (await readStruckOff()).find(({ lot }) => lot.of === "material" && lot.id === id);
  return off ? { id, received: off.since, expires: off.expires, item: off.item } : null;
}

/** One lot: what is there and what it is worth, what happened to it, where it has gone, and what can be done with it. */
export default async function LotPage({ params, searchParams }: Addressed): Promise<ReactNode> {
  const [view, asked, found] = await Promise.all([viewOf((await params).lot), searchParams, planForPage()]);
  if (view === null || found === null) notFound();
  const { lot, material, isListed } = view;
  const called = material?.name ?? "A material that was taken out of the Book";
  return (
    <>
      <Opening
        crumb={
          <>
            <ShelfCrumb />
            {material && (
              <>
                {" "}
                · <Link href={materialAddress(material.id)}>{material.name}</Link>
              </>
            )}
          </>
        }
        title={`${called}, lot ${lot.id}`}
      >
        <LotFinding view={view} />
      </Opening>
      <OneGram view={view} />
      <Done view={view} posting={asked.done} />
      <WaitsAtBenchLink books={found} lot={materialLot(lot.id)} />
      <Cautions view={view} />
      {isListed && material && (
        <LotDeeds
          view={view}
          measure={material.measure}
          open={lotDeedIn(asked.do)}
          newId={newId()}
          act={(deed) => actOnLot.bind(null, lot.id, deed)}
        />
      )}
      <LotHistory view={view} />
      <LotTrace view={view} />
    </>
  );
}

/** What is there, where, worth how much. */
function LotFinding({ view }: { readonly view: LotView }): ReactNode {
  const { lot, isListed, today, currency, onShelf, onHold } = view;
  const held = (amount: bigint): string => muchOf(view, amount, "there");
  const worth = wholeValue(onShelf.value) + wholeValue(onHold.value);
  return (
    <>
      {onShelf.quantity === 0n && onHold.quantity === 0n ? (
        <b>Nothing of it is left.</b>
      ) : (
        <>
          <b>{held(onShelf.quantity)} on the shelf</b>
          {onHold.quantity > 0n && (
            <>
              {" "}
              and <b>{held(onHold.quantity)} on hold</b>
            </>
          )}
          , worth {moneyShown(worth, currency)}.
        </>
      )}{" "}
      Came in {dayShown(lot.received, today)}
      {lot.expires === null
        ? "; it has no last day of use."
        : `, last day of use ${dayShown(lot.expires, today, { year: true })}.`}
      {!isListed &&
        " It was taken out of the Book: what happened to it stays here, and nothing more can be done with it."}
    </>
  );
}

/** What one gram or piece of it is worth. What is there, and what it is worth, come about in the history below. */
function OneGram({ view }: { readonly view: LotView }): ReactNode {
  const { material, currency, onShelf, onHold } = view;
  const held = onShelf.quantity + onHold.quantity;
  if (material === null || held === 0n) return null;
  const worth = wholeValue(onShelf.value) + wholeValue(onHold.value);
  const each = pricePerGramShown(ratio(worth, held), material.measure, currency);
  const one = material.measure === "mass" ? "one gram" : "one piece";
  return (
    <HowItComes
      says={`${each} ${material.measure === "mass" ? "a gram" : "a piece"}: how it comes about`}
      lines={[
        { figure: moneyShown(worth, currency, 2), reason: "worth, as the last line of its history below has it" },
        { operator: "÷", figure: muchOf(view, held, "in full"), reason: "there" },
        {
          figure: each,
          reason: `for ${one}`,
          isResult: true,
        },
      ]}
    />
  );
}

/** What was done last, and the way to take it back. */
function Done({ view, posting: id }: { readonly view: LotView; readonly posting: unknown }): ReactNode {
  const line = view.lines.find(({ posting }) => posting.id === id);
  return (
    <div role="status">
      {line && (
        <p className="done">
          {POSTING_WORDS[line.posting.kind]}: {line.posting.reason}.{" "}
          <Link href={postingAddress(line.posting.id)}>See it, or take it back</Link>
        </p>
      )}
    </div>
  );
}

/** What is on hold because of a recall, or out of date, can do harm. */
function Cautions({ view: { lot, today, onShelf, onHold } }: { readonly view: LotView }): ReactNode {
  const isGone = !isUsable(lot, today) && onShelf.quantity + onHold.quantity > 0n;
  if (!isGone && onHold.quantity === 0n) return null;
  return (
    <p className="lot-caution">
      <Sign sign="triangle" tone="wrong">
        {isGone
          ? `Out of date${lot.expires === null ? "" : ` since ${dayShown(lot.expires, today, { weekday: false, year: true })}`}: do not use it.`
          : "On hold: no plan draws on it."}
      </Sign>{" "}
      Local rules, what the supplier says and licensed waste practice come first.
    </p>
  );
}
