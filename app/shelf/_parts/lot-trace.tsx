import Link from "next/link";
import { Fragment, type ReactNode } from "react";
import { Ledger } from "@/app/_ui/ledger";
import type { IntoBatch } from "@/lib/domain/ledger/trace";
import { countShown, dayShown } from "@/lib/edge/figures";
import { NO_BREAK } from "@/lib/edge/shown-digits";
import { DISAGREE, POSTING_WORDS, WHERE_WORDS } from "@/lib/edge/posting-words";
import { materialLot } from "@/lib/domain/ledger/posting";
import { makingAddress, postingAddress, recallAddress } from "@/lib/edge/ledger-address";
import { type LotView, muchOf } from "./lot-view";

/** Where a lot came from and where all of it has gone. */
export function LotTrace({ view }: { readonly view: LotView }): ReactNode {
  const { today, trace, lines } = view;
  const shown = (amount: bigint): string => muchOf(view, amount, "nearest");
  const first = lines.find(({ posting }) =>
    posting.entries.some(({ place, quantity }) => place.kind === "supplier" && quantity < 0n),
  );
  const makers = new Set(first?.posting.entries.flatMap(({ place }) => (place.kind === "batch" ? [place.run] : [])));
  return (
    <section className="lot-section" aria-labelledby="lot-trace">
      <h2 id="lot-trace">Where it came from, and where it has gone</h2>
      {first && (
        <p>
          <Link href={postingAddress(first.posting.id)} prefetch={false}>
            {POSTING_WORDS[first.posting.kind]}
          </Link>
          {first.posting.reason !== null && ` ${first.posting.reason}`}, {dayShown(first.posting.day, today)}.
          {[...makers].map((run) => (
            <Fragment key={run}>
              {" "}
              <Link href={makingAddress(run)} prefetch={false}>
                The run that made it
              </Link>
            </Fragment>
          ))}
        </p>
      )}
      <Ledger
        caption="All that came of it, and where it has gone"
        columns={[{ name: "Where" }, { name: "Holds of this lot", kind: "number" }]}
      >
        {trace.places.map(({ place, quantity }) => (
          <TraceRow key={place} name={capital(WHERE_WORDS[place])} figure={shown(quantity)} />
        ))}
        {trace.batches.map((batch) => (
          <BatchRows key={batch.run} batch={batch} shown={shown} runCalled={view.runCalled} />
        ))}
        <tr className="total">
          <th scope="row">All that came</th>
          <td className="number end">{shown(trace.came)}</td>
        </tr>
      </Ledger>
      <p className={trace.unaccounted === 0n ? "label" : "fault"}>
        {trace.unaccounted === 0n
          ? "All of it is accounted for. Amounts are rounded here; each posting has them in full."
          : `${shown(trace.unaccounted)} is not accounted for. ${DISAGREE}`}
      </p>
      <p className="screen-only">
        <Link className="more" href={recallAddress(materialLot(view.lot.id))} prefetch={false}>
          Recall drill: the finished lots, and where they went
        </Link>
      </p>
    </section>
  );
}

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);

function BatchRows({
  batch: { run, taken, lostWithinPlan, finished, through },
  shown,
  runCalled,
}: {
  readonly runCalled: LotView["runCalled"];
  readonly batch: IntoBatch;
  readonly shown: (amount: bigint) => string;
}): ReactNode {
  const inPlan = lostWithinPlan > 0n && (
    <TraceRow name={`Lost within plan, ${runCalled(run)}`} figure={shown(lostWithinPlan)} />
  );
  if (through)
    return (
      <>
        {through.places.map(({ place, holding }) => (
          <TraceRow
            key={place}
            name={`In lot ${through.lot} made of it, ${WHERE_WORDS[place]}`}
            figure={shown(holding)}
          />
        ))}
        {through.batches.map((batch) => (
          <BatchRows key={batch.run} batch={batch} shown={shown} runCalled={runCalled} />
        ))}
        {inPlan}
      </>
    );
  if (finished === null) return <TraceRow name={`In the batch of ${runCalled(run)}`} figure={shown(taken)} />;
  return (
    <>
      {finished.units.map(({ place, units, holding }) => (
        <TraceRow
          key={place}
          name={`Finished lot ${finished.lot}, ${countShown(units)}${NO_BREAK}${units === 1n ? "unit" : "units"} ${WHERE_WORDS[place]}`}
          figure={shown(holding)}
        />
      ))}
      {inPlan}
    </>
  );
}

const TraceRow = ({ name, figure }: { readonly name: string; readonly figure: string }): ReactNode => (
  <tr>
    <th scope="row">{name}</th>
    <td className="number end">{figure}</td>
  </tr>
);
