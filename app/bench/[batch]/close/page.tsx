import type { Metadata } from "next";
import Link from "next/link";
import { redirect } from "next/navigation";
import type { ReactNode } from "react";
import { AskingForm, type AskedField } from "@/app/_ui/asking-form";
import { Opening } from "@/app/_ui/finding";
import { newId } from "@/app/_ui/new-id";
import { Sign } from "@/app/_ui/sign";
import { stateOf } from "@/lib/domain/bench/batch";
import { type LineWeighed, linesWeighed, massIn } from "@/lib/domain/bench/weights";
import { daysAfter, isoDate } from "@/lib/domain/calendar";
import { byId } from "@/lib/domain/index-by-id";
import { plannedMinutes } from "@/lib/domain/ledger/planned-loss";
import { byDrawOrder, isUsable } from "@/lib/domain/lots";
import { roundedUpFor, usesOf } from "@/lib/domain/needs";
import { smaller } from "@/lib/domain/quantity";
import { batchAddress, recordAddress } from "@/lib/edge/bench-address";
import { weightShown } from "@/lib/edge/bench-weights";
import { massInFull, minutesShown, stockShown } from "@/lib/edge/figures";
import { unitsInWords } from "@/lib/edge/forms/posting-forms";
import { measureField, takesField } from "@/lib/edge/forms/posting-forms";
import { stockAsTyped } from "@/lib/edge/forms/typed-stock";
import { closeABatch, writeANote } from "../../actions";
import { OpenChecks, reasonForNoCheck } from "../../_parts/open-checks";
import { WaitingNotes } from "../../_parts/waiting-notes";
import { batchForPage, type BatchOnPage } from "../../batch-for-page";
import { decimalsOf } from "../../bench-on-page";
import "../../bench.css";

interface Page {
  readonly params: Promise<{ readonly batch: string }>;
}

export async function generateMetadata({ params }: Page): Promise<Metadata> {
  return { title: `Closing batch ${(await batchForPage((await params).batch)).code}` };
}

/** What came out of a batch, what it took besides what was weighed, and whether it waits for a second look. */
export default async function ClosePage({ params }: Page): Promise<ReactNode> {
  const found = await batchForPage((await params).batch);
  const { batch, as, code } = found;
  if (stateOf(batch) !== "open") redirect(recordAddress(batch.run.id));
  const open = linesWeighed(batch).filter(({ state }) => state !== "done");
  const draws = packagingOf(found);
  const fields = [...aboutTheBatch(found), ...draws.map((draw) => drawField(draw)), ...REASONS];
  return (
    <>
      <Opening crumb={<Link href={batchAddress(batch.run.id)}>Batch {code}</Link>} title={`Closing ${as.product}`}>
        <b>{massInFull(massIn(batch))} was weighed</b> for {unitsInWords(batch.run.units)}. After this the record is
        only added to.
      </Opening>
      {open.length > 0 && <NotWeighed lines={open} decimals={decimalsOf(as.step)} />}
      <WaitingNotes batch={batch.run.id} known={batch.notes.map(({ key }) => key)} />
      <OpenChecks found={found} />
      <AskingForm
        act={closeABatch}
        carried={{
          batch: batch.run.id,
          ...Object.fromEntries(draws.map(({ lot, material }) => [measureField(lot.id), material.measure])),
        }}
        kept={{ key: newId() }}
        takesFocus
        className="asking-grouped"
        fields={fields}
        button="Close the batch"
        isFirst
      />
      <section className="paper-checks only-printed" aria-label="To be filled in">
        {fields
          .filter(({ group }) => group?.isFolded !== true)
          .map(({ name, label }) => (
            <p key={name}>
              {label} <u className="paper-blank" />
            </p>
          ))}
      </section>
      <p className="label">
        Whether a batch may be sold is decided by its record, by local rules and by whoever is qualified to judge it.
      </p>
      <AnotherCode found={found} />
    </>
  );
}

/** What is missing of each line, as a matter of care: nothing is closed by oversight. @rule BENCH-7 */
const NotWeighed = ({
  lines,
  decimals,
}: {
  readonly lines: readonly LineWeighed[];
  readonly decimals: number;
}): ReactNode => (
  <section className="take-care not-weighed" aria-labelledby="not-weighed">
    <h2 id="not-weighed">
      <Sign sign="triangle" tone="wrong">
        Not weighed to the end
      </Sign>
    </h2>
    {lines.map(({ line, total }) => (
      <p key={line.key}>
        {line.called}: <b>{weightShown(line.target > total ? line.target - total : 0n, decimals)} missing</b>
        {total > 0n && ` of ${weightShown(line.target, decimals)}`}.
      </p>
    ))}
  </section>
);

/** The way on where another lot has the code: both codes stay in the record. @rule BENCH-10 */
const AnotherCode = ({ found: { batch, code } }: { readonly found: BatchOnPage }): ReactNode => (
  <details className="bench-list screen-only">
    <summary>Give the batch another code</summary>
    <p className="label">It is called {code}. What stands on jars already must be put right by hand.</p>
    <AskingForm
      act={writeANote}
      carried={{ batch: batch.run.id, kind: "recoded", who: batch.startedBy }}
      kept={{ key: newId() }}
      fields={[
        { name: "code", label: "Its code from now on", type: "text", value: "" },
        { name: "why", label: "Why", type: "text", value: "", hint: "It is kept in the record." },
      ]}
      button="Give it this code"
    />
  </details>
);

/** Packaging and what each run takes, as the plan would draw it: what the sheet weighs is in the batch already. */
function packagingOf({ workshop, batch, product, today }: BatchOnPage) {
  const materialOf = byId("material", workshop.materials);
  return usesOf(product, new Map(), materialOf).flatMap(({ material, need }) => {
    const lots = workshop.lots
      .filter((lot) => lot.material === material.id && lot.remaining > 0n && isUsable(lot, today))
      .toSorted(byDrawOrder);
    let open: bigint = roundedUpFor(need, batch.run.units);
    return lots.map((lot) => {
      const quantity = smaller<bigint>(open, lot.remaining);
      open -= quantity;
      return { lot, quantity, material };
    });
  });
}

function aboutTheBatch(found: BatchOnPage): readonly AskedField[] {
  const { workshop, batch, product, today } = found;
  const { keepsDays } = byId("formula", workshop.formulas)(product.formula);
  const out = { title: "What came out", says: "" };
  const time = { title: "Time and dates", says: "" };
  return [
    {
      name: "units",
      label: "Units filled",
      type: "text",
      value: "",
      hint: `${unitsInWords(batch.run.units)} planned.`,
      group: out,
    },
    { name: "leftOver", label: "Left over, g (optional)", type: "text", value: "", group: out },
    {
      name: "held",
      label: "Second look",
      type: "choice",
      value: "yes",
      options: [
        { value: "yes", label: "Hold for a second look" },
        { value: "no", label: "Release it now" },
      ],
      group: out,
    },
    {
      name: "why",
      label: "What was unusual (optional)",
      type: "text",
      value: "",
      hint: "A reason is needed where nothing came out.",
      group: out,
    },
    ...sureToBeAsked(found).map((field) => ({ ...field, group: out })),
    { name: "who", label: "Closed by", type: "text", value: batch.startedBy, group: time },
    {
      name: "minutes",
      label: "Minutes at the bench",
      type: "text",
      value: "",
      hint: `Left empty, what is planned: ${minutesShown(plannedMinutes(product, batch.run.units))}.`,
      group: time,
    },
    {
      name: "bestBefore",
      label: "Best before (optional)",
      type: "text",
      value: keepsDays === null ? "" : isoDate(daysAfter(today, keepsDays)),
      hint: `Year, month and day, as ${isoDate(daysAfter(today, keepsDays ?? 365))}.`,
      group: time,
    },
  ];
}

const askedWhy = (name: string, label: string): AskedField => ({ name, label, type: "text", value: "" });

/** What is sure to be asked stands open. @rule BENCH-7 */
const sureToBeAsked = (found: BatchOnPage): readonly AskedField[] => [
  ...(linesWeighed(found.batch).some(({ state }) => state !== "done")
    ? [askedWhy("whyNotWeighed", "Why lines were not weighed to the end")]
    : []),
  ...reasonForNoCheck(found),
];

const MAY_BE_ASKED = { title: "Reasons", says: "for what else may be asked about", isFolded: true };

/** One for each thing that may be asked about besides. @rule BENCH-7 */
const REASONS: readonly AskedField[] = [
  { ...askedWhy("whyMoreFilled", "Why more was filled than was weighed"), group: MAY_BE_ASKED },
  { ...askedWhy("whyOutOfDate", "Why a lot that is out of date was used"), group: MAY_BE_ASKED },
];

const drawField = ({ lot, quantity, material }: ReturnType<typeof packagingOf>[number]): AskedField => ({
  name: takesField(lot.id),
  label: `${material.name}, from lot ${lot.id}, ${material.measure === "mass" ? "g" : "pieces"}`,
  type: "text",
  value: stockAsTyped(quantity, material.measure),
  hint: `${stockShown(lot.remaining, material.measure, "there")} there`,
  group: { title: "Packaging", says: "used for this batch, spoilt ones among it" },
});
