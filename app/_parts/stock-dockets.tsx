import Link from "next/link";
import type { ReactNode } from "react";
import { putRun } from "@/app/week/actions";
import { Press } from "@/app/_ui/press";
import { HowItComes } from "@/app/_ui/how-it-comes";
import { Sign } from "@/app/_ui/sign";
import type { BroughtForward } from "@/lib/domain/bring-forward";
import type { CountMatter } from "@/lib/domain/matters";
import { daysAfter, isoDate } from "@/lib/domain/calendar";
import type { Expiry, MaterialOutlook } from "@/lib/domain/plan-figures";
import { counted } from "@/lib/edge/counted";
import { dayShown, moneyShown, stockShown } from "@/lib/edge/figures";
import { figuresThatAdd } from "@/lib/edge/figures-that-add";
import { calledLot } from "@/lib/edge/ladder-words";
import { lotAddress } from "@/lib/edge/ledger-address";
import { materialAddress } from "@/lib/edge/material-address";
import { Docket, Strip } from "./docket";
import type { Today } from "./today";

interface OfMaterial {
  readonly outlook: MaterialOutlook;
  readonly of: Today;
}

/** A material of which something goes out of date unused. */
export function ExpiryDocket({ outlook, of }: OfMaterial): ReactNode {
  const { material, expiring } = outlook;
  const [first, ...others] = expiring.toSorted((a, b) => a.on - b.on);
  if (first === undefined) return null;
  const shown = (amount: bigint): string => stockShown(amount, material.measure, "nearest");
  const isGone = first.on <= of.today;
  const forward = of.forward?.lot === first.lot ? of.forward : null;
  return (
    <Docket
      href={materialAddress(material.id)}
      name={`${material.name}, ${calledLot(outlook, first.lot)}`}
      sign={
        <Sign sign="hourglass" tone="wrong">
          {shown(first.quantity)} {isGone ? "out of date" : "will be lost"}
        </Sign>
      }
      strip={<Strip outlook={outlook} of={of} />}
      act={
        isGone ? (
          <Link className="button" href={lotAddress(first.lot, { do: "off" })} prefetch={false}>
            Write off {shown(first.quantity)}
          </Link>
        ) : forward ? (
          <Press
            act={putRun}
            carried={{ ...of.carriedOf(forward.outlook.run), to: isoDate(forward.day), before: "" }}
            name={`Move to ${dayShown(forward.day, of.today)}: ${forward.outlook.product.name}`}
          >
            Move to {dayShown(forward.day, of.today)}
          </Press>
        ) : (
          <Link className="button" href={materialAddress(material.id)} prefetch={false}>
            See its lots
          </Link>
        )
      }
      working={forward && <SavedWorking forward={forward} outlook={outlook} of={of} />}
    >
      Last day of use {dayShown(daysAfter(first.on, -1), of.today)}
      {comesTooLate(outlook, first) && ", before it comes"}
      <Worth expiry={first} of={of} />.{" "}
      {others.length > 0 && `${counted(others.length, "more lot follows", "more lots follow").replace(/^./, upper)}. `}
      {forward &&
        `${forward.outlook.product.name} of ${dayShown(forward.outlook.run.date, of.today)}, made by then, would use ${shown(forward.saved)}.`}
    </Docket>
  );
}

/** What is on the way can be out of date when it comes. */
const comesTooLate = ({ ladder }: MaterialOutlook, { lot, on }: Expiry): boolean =>
  ladder.some((each) => each.lot === lot && each.order !== null && each.received >= on);

/** How much of the lot a run would use that is made earlier: each figure is of a whole plan. @rule SUGGEST-5 */
function SavedWorking({ forward, outlook, of }: OfMaterial & { readonly forward: BroughtForward }): ReactNode {
  const { lot, saved, stillLost, day } = forward;
  const figure = figuresThatAdd([[saved + stillLost, -stillLost, saved]], outlook.material.measure);
  return (
    <HowItComes
      lines={[
        {
          figure: figure(saved + stillLost),
          reason: `of ${calledLot(outlook, lot)} goes out of date unused as the runs are planned`,
        },
        {
          operator: "−",
          figure: figure(stillLost),
          reason: `would with that run on ${dayShown(day, of.today)} and all the others as they are`,
        },
        { figure: figure(saved), reason: "used before it is lost", isResult: true },
      ]}
    />
  );
}

const upper = (letter: string): string => letter.toUpperCase();

/** What is lost of a lot, at what was paid for it. */
function Worth({
  expiry: { lot: id, quantity },
  of: { workshop },
}: {
  readonly expiry: Expiry;
  readonly of: Today;
}): ReactNode {
  const lot = workshop.lots.find((each) => each.id === id);
  if (lot === undefined || lot.remaining === 0n) return null;
  return (
    <>
      ; worth <b>{moneyShown({ over: lot.value * quantity, under: lot.remaining }, workshop.settings.currency)}</b>
    </>
  );
}

/** A material that the maker wanted counted by now. @rule LEDGER-25 */
export const CountDocket = ({
  matter: { outlook, due },
  of,
}: {
  readonly matter: CountMatter;
  readonly of: Today;
}): ReactNode => (
  <Docket
    href={materialAddress(outlook.material.id)}
    name={outlook.material.name}
    sign={
      <Sign sign="tally" tone="still">
        {due.countedOn === null ? "never counted" : `counted ${dayShown(due.countedOn, of.today)}`}
      </Sign>
    }
    strip={<Strip outlook={outlook} of={of} />}
    act={
      <Link className="button" href="/shelf/count?lots=due" prefetch={false}>
        Enter the count<span className="unseen"> of {outlook.material.name}</span>
      </Link>
    }
  >
    On the shelf, as written down: <b>{stockShown(outlook.onHand, outlook.material.measure, "there")}</b>.{" "}
    {counted(due.draws, "run has", "runs have").replace(/^./, upper)} drawn on it since.
  </Docket>
);
