import type { Metadata } from "next";
import Link from "next/link";
import { redirect } from "next/navigation";
import type { ReactNode } from "react";
import { Ledger } from "@/app/_ui/ledger";
import { Opening } from "@/app/_ui/finding";
import { RecordChoice } from "@/app/_ui/record-choice";
import type { LotName } from "@/lib/domain/ledger/posting";
import type { Recall, RecallLine } from "@/lib/domain/ledger/recall";
import { compare, ONE } from "@/lib/domain/fraction";
import { counted } from "@/lib/edge/counted";
import { longDayShown, shareShown } from "@/lib/edge/figures";
import { unitsInWords } from "@/lib/edge/forms/posting-forms";
import { makingAddress, lotPageAddress, recallCsvAddress } from "@/lib/edge/ledger-address";
import { DISAGREE } from "@/lib/edge/posting-words";
import { recallPlaceWords } from "@/lib/edge/recall-text";
import { runsCalled } from "@/lib/edge/run-called";
import { realToday } from "@/lib/edge/real-today";
import { ShelfCrumb } from "../_parts/shelf-crumb";
import { type RecallOnPage, recallForPage } from "./recall-for-page";
import "../shelf.css";

interface Addressed {
  readonly searchParams: Promise<Readonly<Record<string, string | readonly string[] | undefined>>>;
}

export const metadata: Metadata = { title: "Recall drill" };

/** Any lot, and where all of it is now: to practise a recall, and for the day of one. */
export default async function RecallPage({ searchParams }: Addressed): Promise<ReactNode> {
  const page = await recallForPage((await searchParams).lot);
  if (page === null) redirect("/");
  const { books, lot, recall, words } = page;
  const today = books.workshop.settings.today ?? realToday();
  return (
    <>
      <Opening
        crumb={<ShelfCrumb />}
        title={lot === null ? "Recall drill" : `Recall of ${words(lot).name}, lot ${lot.id}`}
      >
        {lot === null || recall === null ? (
          "Choose a lot, a supplier’s or a finished one, and see where all of it is now."
        ) : (
          <Finding lot={lot} recall={recall} words={words} />
        )}
      </Opening>
      <ChooseLot page={page} />
      {lot !== null && recall !== null && (
        <>
          <Lines lot={lot} recall={recall} words={words} runCalled={runsCalled(books)} />
          <p className="label recall-note">
            As it is written down on {longDayShown(today, today)}. Amounts are rounded; the CSV has every decimal. Who
            bought what is sold stands in your sales papers: the app knows units, not people. Samples are among what was
            written off. In a real recall local rules decide: tell the authority and take advice.
          </p>
          <p className="in-a-row screen-only">
            <a className="button" href={recallCsvAddress(lot)} download>
              Save as CSV
            </a>
            <Link className="more" href={lotPageAddress(lot)}>
              The lot’s own page
            </Link>
          </p>
        </>
      )}
    </>
  );
}

type Shown = Pick<RecallOnPage, "words"> & { readonly lot: LotName; readonly recall: Recall };

function Finding({ lot, recall: { came, lines, accounted, share }, words }: Shown): ReactNode {
  const finished = new Set(lines.flatMap(({ into }) => (into?.of === "finished" ? [into.id] : [])));
  const sold = lines.reduce((sum, { place, units }) => (place === "sold" ? sum + (units ?? 0n) : sum), 0n);
  const { rounded } = words(lot);
  return (
    <>
      <b>
        {compare(share, ONE) === 0 ? "All" : shareShown(share)} of {rounded(came)} is accounted for
      </b>
      {compare(share, ONE) === 0 ? ". " : ` (${rounded(accounted)}). ${DISAGREE} `}
      {lot.of === "material" && <>It went into {countOf(finished.size, "finished lot", "finished lots")}. </>}
      {sold > 0n ? <b>{countOf(sold, "unit was", "units were")} sold.</b> : "None of it is written down as sold."}
    </>
  );
}

const countOf = (count: bigint | number, one: string, many: string): string => counted(Number(count), one, many);

/** Chosen by address, so that it needs no script. */
function ChooseLot({ page: { lots, words, lot } }: { readonly page: RecallOnPage }): ReactNode {
  const options = lots.map((each) => ({
    value: `${each.of}:${each.id}`,
    label: `${words(each).name}, lot ${each.id}`,
  }));
  return (
    <form action="/shelf/recall" method="get" className="in-a-row screen-only">
      <div className="field">
        <label htmlFor="recall-lot">Lot</label>
        <RecordChoice
          id="recall-lot"
          name="lot"
          value={lot === null ? "" : `${lot.of}:${lot.id}`}
          none="Choose a lot"
          groups={[{ name: null, options }]}
        />
      </div>
      <button className="button first">Trace it</button>
    </form>
  );
}

const COLUMNS = [
  { name: "Went into" },
  { name: "Where it is" },
  { name: "Units", kind: "number" },
  { name: "Holds of the lot", kind: "number" },
] as const;

interface Runs {
  readonly runCalled: (run: string) => string;
}

function Lines({ lot, recall: { came, lines, accounted }, words, runCalled }: Shown & Runs): ReactNode {
  const { rounded } = words(lot);
  return (
    <Ledger caption="Where all of it is" columns={COLUMNS} className="recall-ledger">
      {lines.map((line, at) => (
        <tr key={at}>
          <th scope="row">
            <Into line={line} words={words} runCalled={runCalled} />
          </th>
          <td>{recallPlaceWords(line.place)}</td>
          <td className="number">{line.units === null ? "" : unitsInWords(line.units)}</td>
          <td className="number end">{rounded(line.holding)}</td>
        </tr>
      ))}
      <tr className="sum">
        <th scope="row">Accounted for</th>
        <td />
        <td />
        <td className="number end">{rounded(accounted)}</td>
      </tr>
      <tr className="total">
        <th scope="row">All that came</th>
        <td />
        <td />
        <td className="number end">{rounded(came)}</td>
      </tr>
    </Ledger>
  );
}

function Into({
  line: { into, run },
  words,
  runCalled,
}: { readonly line: RecallLine } & Pick<RecallOnPage, "words"> & Runs): ReactNode {
  if (into !== null)
    return (
      <Link href={lotPageAddress(into)} prefetch={false}>
        {words(into).name}, lot {into.id}
      </Link>
    );
  if (run === null) return "As it came";
  return (
    <Link href={makingAddress(run)} prefetch={false}>
      The batch of {runCalled(run)}
    </Link>
  );
}
