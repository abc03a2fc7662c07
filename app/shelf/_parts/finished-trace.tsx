import Link from "next/link";
import type { ReactNode } from "react";
import { Ledger } from "@/app/_ui/ledger";
import type { Day } from "@/lib/domain/calendar";
import { finishedLot, type LotName, wholeValue } from "@/lib/domain/ledger/posting";
import type { Source, TraceBack } from "@/lib/domain/ledger/trace";
import type { CurrencyCode } from "@/lib/domain/money";
import { inARow } from "@/lib/edge/counted";
import { dayShown, moneyShown, stockShown } from "@/lib/edge/figures";
import { unitsInWords } from "@/lib/edge/forms/posting-forms";
import { lotPageAddress, makingAddress, postingAddress, recallAddress } from "@/lib/edge/ledger-address";
import type { LotWords } from "@/lib/edge/lot-words";
import { POSTING_WORDS, WHERE_WORDS } from "@/lib/edge/posting-words";

interface Traced {
  readonly trace: TraceBack;
  readonly words: (lot: LotName) => LotWords;
  readonly currency: CurrencyCode;
  readonly today: Day;
}

/** What the lot came from, lot by lot, back to the posting with which each came; and where its units are. */
export function FinishedTrace({ trace, words, currency, today }: Traced): ReactNode {
  const { from, units, runs } = trace;
  const mass = from.filter(({ lot }) => words(lot).measure === "mass").reduce((sum, { taken }) => sum + taken, 0n);
  const places = units.map(({ place, quantity }) => `${unitsInWords(quantity)} ${WHERE_WORDS[place]}`);
  return (
    <section className="finished-section">
      <h2>Where it came from</h2>
      <p className="small soft">
        {places.length > 0 && `${inARow(places)}. `}
        {from.length === 0
          ? "It was entered as finished: what went into it is not written down."
          : `Its batch took ${stockShown(mass, "mass", "nearest")} by weight from the lots below.`}{" "}
        {runs.map((run) => (
          <Link key={run} href={makingAddress(run)}>
            The run that made it
          </Link>
        ))}
      </p>
      {from.length > 0 && (
        <Ledger
          caption="Lots that went into it"
          columns={[
            { name: "Material and lot" },
            { name: "Taken", kind: "number" },
            { name: "Worth", kind: "number" },
            { name: "Came with" },
          ]}
        >
          {from.map((source) => (
            <SourceRow key={`${source.run} ${source.lot.id}`} {...{ source, words, currency, today }} />
          ))}
        </Ledger>
      )}
      <p className="screen-only">
        <Link className="more" href={recallAddress(finishedLot(trace.lot))} prefetch={false}>
          Recall drill: where all of it is
        </Link>
      </p>
    </section>
  );
}

function SourceRow({
  source: { lot, taken, value, cameWith },
  words,
  currency,
  today,
}: Omit<Traced, "trace"> & { readonly source: Source }): ReactNode {
  const { name, rounded } = words(lot);
  return (
    <tr>
      <th scope="row">
        <Link href={lotPageAddress(lot)} prefetch={false}>
          {name}
        </Link>
        <small>Lot {lot.id}</small>
      </th>
      <td className="number end">{rounded(taken)}</td>
      <td className="number not-on-phone">{moneyShown(wholeValue(value), currency)}</td>
      <td className="second-line">
        {cameWith && (
          <Link href={postingAddress(cameWith.id)}>
            {POSTING_WORDS[cameWith.kind]} {dayShown(cameWith.day, today)}
          </Link>
        )}
      </td>
    </tr>
  );
}
