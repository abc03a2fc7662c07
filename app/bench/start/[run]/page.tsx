import type { Metadata } from "next";
import Link from "next/link";
import { notFound, redirect } from "next/navigation";
import type { ReactNode } from "react";
import { FindingsList, WhoDecides } from "@/app/_ui/findings-list";
import { nameOfLine } from "@/app/_ui/name-of-line";
import { AskingForm, type AskedField } from "@/app/_ui/asking-form";
import { Opening } from "@/app/_ui/finding";
import { type Planned, planForPage } from "@/app/plan-for-page";
import { checksOfDay } from "@/lib/domain/bench/checks-of-day";
import { isoDate } from "@/lib/domain/calendar";
import { byId } from "@/lib/domain/index-by-id";
import type { Run } from "@/lib/domain/workshop";
import { batchAddress } from "@/lib/edge/bench-address";
import { counted } from "@/lib/edge/counted";
import { dayShown } from "@/lib/edge/figures";
import type { WordsAbout } from "@/lib/edge/finding-words";
import { unitsInWords } from "@/lib/edge/forms/posting-forms";
import { idOfSegment } from "@/lib/edge/ledger-address";
import { TakeCare } from "../../_parts/bench-aside";
import { Drawn } from "../../_parts/drawn-at-start";
import { startABatch } from "../../actions";
import { cautionsOf } from "../../bench-on-page";
import { nextCodeForPage } from "../../next-code";
import "../../bench.css";

export const metadata: Metadata = { title: "Starting a batch" };

/** What the checks of the day say of a planned run, and the form that starts it as a batch. */
export default async function StartPage({
  params,
}: {
  readonly params: Promise<{ readonly run: string }>;
}): Promise<ReactNode> {
  const found = await planForPage();
  if (!found) redirect("/");
  const id = idOfSegment((await params).run);
  if (found.desk.batches.some(({ run }) => run.id === id)) redirect(batchAddress(id ?? ""));
  const run = found.workshop.runs.find((each) => each.id === id);
  if (run === undefined) notFound();
  return <Starting found={found} run={run} next={await nextCodeForPage()} />;
}

function Starting({
  found,
  run,
  next,
}: {
  readonly found: Planned;
  readonly run: Run;
  readonly next: string | null;
}): ReactNode {
  const { workshop, desk, today, plan } = found;
  const checks = checksOfDay({ workshop, desk }, run, today);
  const { errors, warnings } = checks;
  const product = byId("product", workshop.products)(run.product);
  const outlook = plan.runs.find((each) => each.run === run);
  const formula = byId("formula", workshop.formulas)(product.formula);
  const cautions = cautionsOf(
    workshop,
    (outlook?.draws ?? []).map(({ material }) => material.id),
    formula,
  );
  const about = { today, nameOf: nameOfLine(workshop) };
  return (
    <>
      <Opening crumb={<Link href="/bench">The bench</Link>} title={`Starting ${product.name}`}>
        {unitsInWords(run.units)}, planned for {dayShown(run.date, today)}.{" "}
        {outlook?.makeable === false
          ? "The shelf, as it is written down, does not hold all of it: what is there can be weighed, and the rest once it is."
          : "The shelf holds what it needs."}
      </Opening>
      <div className="two-columns bench-starting">
        <div>
          {outlook !== undefined && <Drawn outlook={outlook} workshop={workshop} />}
          <ChecksOfDay checks={checks} about={about} />
        </div>
        <div>
          <TakeCare cautions={cautions} />
          {errors.length === 0 && (
            <AskingForm
              key={run.id}
              act={startABatch}
              carried={{ run: run.id, product: run.product, from: isoDate(run.date), units: run.units.toString() }}
              takesFocus
              fields={fieldsOf(found, next, warnings.length > 0)}
              button="Start the batch"
              isFirst
            />
          )}
        </div>
      </div>
      <WhoDecides />
    </>
  );
}

function ChecksOfDay({
  checks: { errors, warnings, accepted },
  about,
}: {
  readonly checks: ReturnType<typeof checksOfDay>;
  readonly about: WordsAbout;
}): ReactNode {
  return (
    <section className="bench-list" aria-labelledby="checks">
      <h2 id="checks">Checks of the day</h2>
      {errors.length + warnings.length === 0 && <p>These checks found nothing to stop it.</p>}
      <FindingsList findings={[...errors, ...warnings]} about={about} />
      {accepted.length > 0 && (
        <p className="label">{counted(accepted.length, "warning was", "warnings were")} accepted with this version.</p>
      )}
    </section>
  );
}

function fieldsOf({ desk }: Planned, next: string | null, warned: boolean): readonly AskedField[] {
  return [
    { name: "who", label: "Made by", type: "text", value: desk.batches.at(-1)?.startedBy ?? "" },
    {
      name: "code",
      label: "Batch code",
      type: "text",
      value: next ?? "",
      hint: next === null ? "You have not said yet how your codes are made; write this one." : "By your own scheme.",
    },
    ...(warned
      ? [
          {
            name: "despite",
            label: "Why it may start although the checks warn",
            type: "text" as const,
            value: "",
            hint: "It is kept in the record.",
          },
        ]
      : []),
  ];
}
