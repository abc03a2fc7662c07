import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { cache, type ReactNode } from "react";
import { type Day, isoDate } from "@/lib/domain/calendar";
import { costOfBatches } from "@/lib/domain/formula-book/cost-of-batches";
import { checksOf } from "@/lib/domain/formula-book/checks";
import type { Batch } from "@/lib/domain/formula-book/scaling";
import { potsOn, weighUpFromPots } from "@/lib/domain/formula-book/weigh-up-premixes";
import { compositions } from "@/lib/domain/formula";
import { type Fraction, ratio, roundedUp, times } from "@/lib/domain/fraction";
import { type Micrograms, quantity } from "@/lib/domain/quantity";
import type { Formula, Product, Workshop } from "@/lib/domain/workshop";
import { counted, inARow } from "@/lib/edge/counted";
import { countShown, massInFull, minutesShown, moneyShown } from "@/lib/edge/figures";
import { type BatchReading, readBatch, type SizedBatch, usualBatch } from "@/lib/edge/forms/batch-size";
import { AskingForm } from "@/app/_ui/asking-form";
import { newId } from "@/app/_ui/new-id";
import { Opening } from "@/app/_ui/finding";
import { costPath, idOf, type Query, recordPath, textIn } from "@/app/book/_parts/addresses";
import { BatchForm } from "@/app/book/_parts/batch-form";
import { countedFindings, FindingsList, WhoDecides } from "@/app/_ui/findings-list";
import { nameOfLine } from "@/app/_ui/name-of-line";
import { WeighUpTables } from "@/app/book/_parts/weigh-up-tables";
import { planTheBatches } from "./actions";
import { booksForPage } from "../../../books-for-page";

interface Address {
  readonly params: Promise<{ readonly id: string }>;
  readonly searchParams: Promise<Query>;
}

const formulaAt = cache(async (step: string) => {
  const id = idOf(step);
  const open = await booksForPage();
  const formula = open.books.workshop.formulas.find((one) => one.id === id);
  return formula === undefined ? notFound() : { ...open, formula };
});

export async function generateMetadata({ params }: Pick<Address, "params">): Promise<Metadata> {
  return { title: `A batch of ${(await formulaAt((await params).id)).formula.name}` };
}

/** One batch of a formula: its size, what to weigh for it, and what would go wrong. */
export default async function BatchPage({ params, searchParams }: Address): Promise<ReactNode> {
  const [{ books, today, formula }, query] = [await formulaAt((await params).id), await searchParams];
  const { workshop } = books;
  const products = workshop.products.filter((product) => product.formula === formula.id);
  const product = products.find(({ id }) => id === textIn(query, "product")) ?? products[0] ?? null;
  const composition = compositions(workshop.formulas)(formula.id);
  const typed = askedIn(query);
  const reading = readBatch(typed, product, composition, usualBatch(product));
  const batches = reading.kind === "sized" ? reading.sized.batches : [];
  const materials = workshop.materials.filter(({ id }) => composition.has(id));
  const findings = checksOf(formula, { ...workshop, today, step: stepOf(workshop), batch: smallestOf(batches) });
  return (
    <>
      <Opening
        crumb={<Link href={recordPath("formulas", formula.id)}>{formula.name}</Link>}
        title={`A batch of ${formula.name}`}
      >
        <SizeFinding reading={reading} filled={product?.name ?? null} step={stepOf(workshop)} />
      </Opening>
      <BatchForm
        formula={formula.id}
        products={products}
        materials={materials}
        asked={{ ...typed, product: product?.id ?? "" }}
        fault={reading.kind === "refused" ? reading : null}
      />
      <section className="matters" aria-labelledby="checks">
        <h2 id="checks">
          Checks <small>{countedFindings(findings)}</small>
        </h2>
        <div>
          <FindingsList
            findings={findings}
            about={{ today, nameOf: nameOfLine(workshop), batch: smallestOf(batches) }}
          />
          <WhoDecides />
        </div>
      </section>
      {product !== null && batches.length > 0 && (
        <PlanThem product={product} batches={batches} workshop={workshop} today={today} />
      )}
      {batches.length > 0 && <WeighUps batches={batches} formula={formula} workshop={workshop} today={today} />}
    </>
  );
}

const stepOf = ({ settings }: Workshop): Micrograms => settings.balanceStep.quantity;

const askedIn = (query: Query) => ({
  size: textIn(query, "size"),
  of: textIn(query, "of"),
  left: textIn(query, "left"),
  most: textIn(query, "most"),
  least: textIn(query, "least"),
});

/** The checks look at the batch for which the balance is coarsest. */
const smallestOf = (batches: readonly Batch[]): Micrograms | null => {
  const last = batches.at(-1);
  return last === undefined ? null : quantity<Micrograms>(roundedUp(last.bulk));
};

function SizeFinding({
  reading,
  filled,
  step,
}: {
  readonly reading: BatchReading;
  readonly filled: string | null;
  readonly step: Micrograms;
}): ReactNode {
  if (reading.kind === "refused") return <>Its size could not be worked out: see below.</>;
  const { batches, minutes } = reading.sized;
  const units = batches.reduce((all, batch) => all + (batch.units ?? 0n), 0n);
  return (
    <>
      <b>{batches.length === 1 ? "One batch" : `${countShown(batches.length)} batches`}</b> of{" "}
      {sizesShown(reading.sized, step)}
      {filled !== null && (
        <>
          , which {batches.length === 1 ? "fills" : "fill"} <b>{counted(Number(units), "unit", "units")}</b> of {filled}
        </>
      )}
      {minutes !== null && <>, in {minutesShown(minutes)} of work</>}.
    </>
  );
}

const sizesShown = ({ batches }: SizedBatch, step: Micrograms): string =>
  inARow([...new Set(batches.map(({ bulk }) => weighedShown(bulk, step)))]);

/** As it is weighed: rounded up to a step of the balance, with all its digits. @rule WEIGH-1 */
const weighedShown = (bulk: Fraction, step: Micrograms): string =>
  massInFull(roundedUp(times(bulk, ratio(1n, step))) * step);

/** What one unit costs in batches of these sizes, and the way to the week. @rule SCALE-5 */
function PlanThem({
  product,
  batches,
  workshop,
  today,
}: {
  readonly product: Product;
  readonly batches: readonly Batch[];
  readonly workshop: Workshop;
  readonly today: Day;
}): ReactNode {
  const sizes = batches.flatMap(({ units }) => (units === null || units === 0n ? [] : [units]));
  if (sizes.length === 0) return null;
  const costIn = (runs: typeof sizes) => costOfBatches(workshop, today, product, runs, "replacement");
  const [cost, usually] = [costIn(sizes), costIn([product.usualRun])];
  const { currency } = workshop.settings;
  const many = sizes.length === 1 ? "this batch" : `these ${String(sizes.length)} batches`;
  return (
    <section className="matters" aria-labelledby="plan-them">
      <h2 id="plan-them">
        Plan {many} <small>{sizes.length > 1 && "each is a run of its own"}</small>
      </h2>
      <div>
        <p>
          {cost === null ? (
            <>What one {product.name} costs so is not known: something in it has neither an offer nor a lot.</>
          ) : (
            <>
              Made so, one {product.name} costs <b>{moneyShown(cost, currency)}</b>
              {usually !== null && (
                <>
                  ; <Link href={costPath(product.id)}>{moneyShown(usually, currency)}</Link> in its usual run of{" "}
                  {counted(Number(product.usualRun), "unit", "units")}
                </>
              )}
              .
            </>
          )}
        </p>
        <AskingForm
          key={sizes.join(" ")}
          act={planTheBatches}
          carried={{ product: product.id, units: sizes.join(" ") }}
          kept={{ key: newId() }}
          className="asking-in-a-row"
          fields={[{ name: "day", label: "Day", type: "date", value: isoDate(today) }]}
          button={`Plan ${many}`}
        />
      </div>
    </section>
  );
}

/** One weigh-up for each size of batch; batches of one size are weighed alike. */
function WeighUps({
  batches,
  formula,
  workshop,
  today,
}: {
  readonly batches: readonly Batch[];
  readonly formula: Formula;
  readonly workshop: Workshop;
  readonly today: Day;
}): ReactNode {
  const pots = potsOn(workshop, today);
  const sizes = new Map(batches.map((batch) => [`${String(batch.units)} ${String(batch.bulk.over)}`, batch]));
  return [...sizes].map(([key, { bulk }], place) => (
    <section className="matters" key={key} aria-labelledby={`weigh-${String(place)}`}>
      <h2 id={`weigh-${String(place)}`}>
        What to weigh <small>for {weighedShown(bulk, stepOf(workshop))}, in steps of the balance</small>
      </h2>
      <div>
        <WeighUpTables
          ups={weighUpFromPots({ formulas: workshop.formulas, pots }, formula.id, bulk, stepOf(workshop))}
          nameOf={nameOfLine(workshop)}
        />
      </div>
    </section>
  ));
}
