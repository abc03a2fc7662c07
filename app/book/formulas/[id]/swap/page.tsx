import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import type { ReactNode } from "react";
import { previewSwap, type SwapPreview } from "@/lib/domain/formula-book/swap";
import { type Fraction, roundedUp } from "@/lib/domain/fraction";
import type { CurrencyCode } from "@/lib/domain/money";
import { type Micrograms, quantity } from "@/lib/domain/quantity";
import { usualBatch } from "@/lib/edge/forms/batch-size";
import { madeBySwap } from "@/lib/edge/forms/next-version";
import { moneyShown } from "@/lib/edge/figures";
import { readSwap, type TypedSwap } from "@/lib/edge/forms/swap-form";
import { AskingForm } from "@/app/_ui/asking-form";
import { Opening } from "@/app/_ui/finding";
import { newId } from "@/app/_ui/new-id";
import { idOf, type Query, recordPath, textIn } from "@/app/book/_parts/addresses";
import { DeedForm } from "@/app/book/_parts/deed-form";
import { countedFindings } from "@/app/_ui/findings-list";
import { nameOfLine } from "@/app/_ui/name-of-line";
import { SwapForm } from "@/app/book/_parts/swap-form";
import { SwapPreviewed } from "@/app/book/_parts/swap-preview";
import { booksForPage } from "../../../books-for-page";
import { keepSwap, swapAsNextVersion } from "./actions";

export const metadata: Metadata = { title: "Swap a material" };

interface Address {
  readonly params: Promise<{ readonly id: string }>;
  readonly searchParams: Promise<Query>;
}

/** One material of a formula put in the place of another: looked at first, then kept as a draft. */
export default async function SwapPage({ params, searchParams }: Address): Promise<ReactNode> {
  const [{ id }, query, { books, today }] = await Promise.all([params, searchParams, booksForPage()]);
  const { workshop } = books;
  const formula = workshop.formulas.find((one) => one.id === idOf(id));
  if (formula === undefined) notFound();
  const typed = {
    from: textIn(query, "from"),
    to: textIn(query, "to"),
    percent: textIn(query, "percent"),
    phase: textIn(query, "phase"),
  };
  const reading = readSwap(workshop, formula.id, typed);
  const product = workshop.products.find((one) => one.formula === formula.id) ?? null;
  const batch = product && quantity<Micrograms>(roundedUp(usualBatch(product).bulk));
  const preview = reading.kind === "asked" ? previewSwap(workshop, today, "replacement", reading.asked, batch) : null;
  const nameOf = nameOfLine(workshop);
  const { currency } = workshop.settings;
  const held = new Set(formula.lines.flatMap(({ of }) => (of.kind === "material" ? [of.id] : [])));
  const weighed = workshop.materials.filter(({ measure, kind }) => measure === "mass" && kind === "ingredient");
  return (
    <>
      <Opening
        crumb={<Link href={recordPath("formulas", formula.id)}>{formula.name}</Link>}
        title={`Swap a material of ${formula.name}`}
      >
        {preview === null ? (
          <>Choose what to take out and what to put in; nothing is changed by looking.</>
        ) : (
          <>
            <b>{nameOf({ kind: "material", id: typed.to })}</b> in the place of{" "}
            <b>{nameOf({ kind: "material", id: typed.from })}</b>
            <WhatItBrings preview={preview} currency={currency} />
          </>
        )}
      </Opening>
      <SwapForm
        formula={formula.id}
        held={workshop.materials.filter((material) => held.has(material.id))}
        materials={weighed}
        typed={typed}
        fault={reading.kind === "refused" ? reading : null}
      />
      {preview !== null && reading.kind === "asked" && (
        <>
          <SwapPreviewed
            preview={preview}
            before={formula}
            asked={reading.asked}
            about={{ today, nameOf }}
            currency={currency}
          />
          <KeepIt formula={formula.id} typed={typed} made={madeBySwap(workshop, formula.id, typed)} />
        </>
      )}
    </>
  );
}

/** What one of each product then costs more or less, and what the checks find that they did not before. */
const WhatItBrings = ({
  preview: { costs, breaks },
  currency,
}: {
  readonly preview: SwapPreview;
  readonly currency: CurrencyCode;
}): ReactNode => (
  <>
    {costs.flatMap(({ product: { id, name }, compared }) =>
      compared.kind === "compared" && compared.dearerBy !== null
        ? [
            <span key={id}>
              ; one {name} then costs <CostsSo dearerBy={compared.dearerBy} currency={currency} />
            </span>,
          ]
        : [],
    )}
    .{breaks.length > 0 && <> It brings {countedFindings(breaks)} with it.</>}
  </>
);

const CostsSo = ({
  dearerBy,
  currency,
}: {
  readonly dearerBy: Fraction;
  readonly currency: CurrencyCode;
}): ReactNode => {
  if (dearerBy.over === 0n) return <>the same</>;
  const size = dearerBy.over < 0n ? { ...dearerBy, over: -dearerBy.over } : dearerBy;
  return (
    <b>
      {moneyShown(size, currency)} {dearerBy.over < 0n ? "less" : "more"}
    </b>
  );
};

/** The swap as the next version of the formula, or as a draft beside it. */
const KeepIt = ({
  formula,
  typed,
  made,
}: {
  readonly formula: string;
  readonly typed: TypedSwap;
  readonly made: string;
}): ReactNode => (
  <section className="matters" aria-labelledby="keep">
    <h2 id="keep">
      Keep it{" "}
      <small>the version that stands is kept as it is; a draft beside it leaves the formula alone altogether</small>
    </h2>
    <div>
      <AskingForm
        key={Object.values(typed).join(" ")}
        act={swapAsNextVersion.bind(null, formula, typed, made)}
        carried={{}}
        className="asking-in-a-row"
        fields={[{ name: "why", label: "Why it is swapped", type: "text", value: "" }]}
        button="Make it the next version"
      />
      <DeedForm act={keepSwap.bind(null, formula, typed, newId())} label="Keep it as a draft" />
    </div>
  </section>
);
