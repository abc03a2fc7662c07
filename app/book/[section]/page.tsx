import type { Metadata } from "next";
import { notFound } from "next/navigation";
import type { ReactNode } from "react";
import { RETIRABLE } from "@/lib/domain/desk";
import { formulaTotal } from "@/lib/domain/formula-total";
import { totalInWords } from "@/lib/edge/forms/total-in-words";
import { Opening } from "@/app/_ui/finding";
import { type Query, textIn } from "@/app/book/_parts/addresses";
import { Crumb } from "@/app/book/_parts/crumb";
import { DraftList } from "@/app/book/_parts/draft-list";
import { found, listingOf } from "@/app/book/_parts/record-rows";
import { AddButtons, RecordTools } from "@/app/book/_parts/record-tools";
import { RecordLedger } from "@/app/book/_parts/record-ledger";
import { SECTION_WORDS, sectionOf } from "@/app/book/_parts/sections";
import { SectionFinding } from "@/app/book/_parts/section-finding";
import { booksForPage } from "../books-for-page";

interface Address {
  readonly params: Promise<{ readonly section: string }>;
  readonly searchParams: Promise<Query>;
}

export async function generateMetadata({ params }: Address): Promise<Metadata> {
  const section = sectionOf((await params).section);
  return { title: section === null ? "The Book" : SECTION_WORDS[section].title };
}

/** One list of the book: what is in it, found by a word, with what is retired out of sight until asked for. */
export default async function SectionPage({ params, searchParams }: Address): Promise<ReactNode> {
  const [{ section: step }, query] = await Promise.all([params, searchParams]);
  const section = sectionOf(step);
  if (section === null) notFound();
  const { books, today } = await booksForPage();
  const { workshop, desk } = books;
  const list = RETIRABLE.find((retirable) => retirable === section);
  const retired = new Set(list === undefined ? [] : desk.retired[list]);
  const { columns, rows } = listingOf(section, workshop, today, retired);
  const asked = { find: textIn(query, "find").slice(0, 200), retired: query.retired === "shown" };
  const kept = textIn(query, "kept");
  const offered = rows.filter(({ id, isRetired }) => !isRetired || asked.retired || id === kept);
  const shown = found(offered, asked.find);
  const drafts = section === "formulas" ? desk.drafts : [];
  return (
    <>
      <Opening crumb={<Crumb />} title={SECTION_WORDS[section].title} beside={<AddButtons section={section} />}>
        <SectionFinding
          section={section}
          all={rows.length}
          retired={retired.size}
          marks={rows.flatMap(({ mark, isRetired }) => (mark === null || isRetired ? [] : [mark]))}
        />
      </Opening>
      {query.done === "removed" && (
        <p className="done" role="status">
          Removed.
        </p>
      )}
      {drafts.length > 0 && (
        <DraftList
          drafts={drafts.map((draft) => ({
            id: draft.id,
            name: draft.name,
            total: totalInWords(formulaTotal(draft)),
            isKept: draft.id === kept,
          }))}
        />
      )}
      {rows.length > 0 && <RecordTools section={section} asked={asked} retired={retired.size} />}
      <RecordLedger section={section} columns={columns} rows={shown} kept={kept} sought={asked.find} />
    </>
  );
}
