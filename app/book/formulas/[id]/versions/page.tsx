import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import type { ReactNode } from "react";
import { versionChanges } from "@/lib/domain/formula-book/version-changes";
import { type VersionOfFormula, versionsOf } from "@/lib/domain/formula-book/versions";
import type { Day } from "@/lib/domain/calendar";
import { counted } from "@/lib/edge/counted";
import { dayShown } from "@/lib/edge/figures";
import { versionChangeInWords } from "@/lib/edge/version-words";
import { Opening } from "@/app/_ui/finding";
import { asSentence } from "@/app/_ui/sentence";
import { idOf, type Query, recordPath, textIn } from "@/app/book/_parts/addresses";
import { nameOfLine } from "@/app/_ui/name-of-line";
import { CompareVersions, VersionsCompared } from "@/app/book/_parts/versions-compared";
import { booksForPage } from "../../../books-for-page";

export const metadata: Metadata = { title: "Versions of a formula" };

interface Address {
  readonly params: Promise<{ readonly id: string }>;
  readonly searchParams: Promise<Query>;
}

/** How a formula came to be as it is: every version, and two of them side by side. */
export default async function VersionsPage({ params, searchParams }: Address): Promise<ReactNode> {
  const [{ id }, query, { books, today }] = await Promise.all([params, searchParams, booksForPage()]);
  const formula = books.workshop.formulas.find((one) => one.id === idOf(id));
  if (formula === undefined) notFound();
  const versions = versionsOf(books.desk, formula);
  const products = books.workshop.products.filter((product) => product.formula === formula.id);
  const numbered = (number: string) => versions.find((version) => String(version.number) === number);
  const first = numbered(textIn(query, "first")) ?? versions.at(-2);
  const second = numbered(textIn(query, "second")) ?? versions.at(-1);
  const product = products.find((one) => one.id === textIn(query, "product")) ?? products[0] ?? null;
  return (
    <>
      <Opening
        crumb={<Link href={recordPath("formulas", formula.id)}>{formula.name}</Link>}
        title={`Versions of ${formula.name}`}
      >
        {versions.length === 1 ? (
          <>It has only had one version so far.</>
        ) : (
          <>
            <b>{asSentence(counted(versions.length, "version", "versions"))}</b>; number {versions.at(-1)?.number}{" "}
            stands.
          </>
        )}
      </Opening>
      <ol className="versions" reversed>
        {versions.toReversed().map((version, at) => (
          <li key={version.number} value={version.number}>
            <VersionSaid
              version={version}
              before={versions[versions.length - 2 - at]}
              today={today}
              nameOf={nameOfLine(books.workshop)}
            />
          </li>
        ))}
      </ol>
      {first !== undefined && second !== undefined && versions.length > 1 && (
        <section className="matters" aria-labelledby="beside">
          <h2 id="beside">Two versions side by side</h2>
          <div>
            <CompareVersions
              formula={formula.id}
              numbers={versions.map(({ number }) => number)}
              products={products}
              asked={{ first: first.number, second: second.number, product: product?.id ?? "" }}
            />
            <VersionsCompared workshop={books.workshop} today={today} product={product} first={first} second={second} />
          </div>
        </section>
      )}
    </>
  );
}

interface Said {
  readonly version: VersionOfFormula;
  readonly before: VersionOfFormula | undefined;
  readonly today: Day;
  readonly nameOf: ReturnType<typeof nameOfLine>;
}

/** One version: since when and why, what is otherwise in it, what was made by it and what was accepted in it. */
function VersionSaid({ version, before, today, nameOf }: Said): ReactNode {
  const changes = before === undefined ? [] : versionChanges(before.as, version.as);
  const made = version.usedBy.length;
  return (
    <>
      <p>
        <b>Version {version.number}</b>
        {version.stands && " stands"}
        {version.since !== null && <>, since {dayShown(version.since, today, { year: true })}</>}
        {version.why !== null && <>: {version.why}</>}
        <span className="label version-made">
          {made === 0 ? "no batch was made by it" : `frozen: made ${counted(made, "batch", "batches")}`}
        </span>
      </p>
      {changes.length > 0 && (
        <ul className="version-changes">
          {changes.map((change, at) => (
            <li key={at}>{versionChangeInWords(change, nameOf)}</li>
          ))}
        </ul>
      )}
      {version.accepted.map((warning) => (
        <p key={warning.key} className="accepted-warning">
          <b>Accepted</b> on {dayShown(warning.on, today, { year: true })}: {warning.says}.{" "}
          <span className="label">Because: {warning.reason}</span>
        </p>
      ))}
    </>
  );
}
