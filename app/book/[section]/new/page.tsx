import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import type { ReactNode } from "react";
import type { Day } from "@/lib/domain/calendar";
import type { Books } from "@/lib/domain/desk";
import type { TypedRecord } from "@/lib/edge/forms/form-reading";
import { RECORD_FORMS } from "@/lib/edge/forms/record-forms";
import { writtenRecord } from "@/lib/edge/forms/written-record";
import { Opening } from "@/app/_ui/finding";
import { newPath, type Query, textIn } from "@/app/book/_parts/addresses";
import { BookForm } from "@/app/book/_parts/book-form";
import { checkedFrom } from "@/app/book/_parts/checked-from";
import { Crumb } from "@/app/book/_parts/crumb";
import { formOf, likely } from "@/app/book/_parts/form-of-record";
import { saidOf } from "@/app/book/_parts/record-rows";
import { newId } from "@/app/_ui/new-id";
import { SECTION_WORDS, type Section, sectionOf } from "@/app/book/_parts/sections";
import { keep } from "../../actions";
import { booksForPage } from "../../books-for-page";

interface Address {
  readonly params: Promise<{ readonly section: string }>;
  readonly searchParams: Promise<Query>;
}

export async function generateMetadata({ params }: Address): Promise<Metadata> {
  const section = sectionOf((await params).section);
  return { title: section === null ? "The Book" : SECTION_WORDS[section].add };
}

/** What a new record is likely to be, what the address says of it, or another record to be copied. */
function begun(books: Books, section: Section, query: Query, today: Day): TypedRecord {
  const copied = writtenRecord(books.workshop, section, textIn(query, "copy"));
  const named = Object.fromEntries(
    RECORD_FORMS[section]
      .filter(({ control }) => control.kind === "reference")
      .map(({ name }) => [name, textIn(query, name)] as const)
      .filter(([, id]) => id !== ""),
  );
  if (copied === null) return { ...likely(section, books, today), ...named };
  const { name } = copied;
  return { ...copied, ...(typeof name === "string" ? { name: `${name}, copy` } : {}), id: "" };
}

export default async function NewRecordPage({ params, searchParams }: Address): Promise<ReactNode> {
  const [{ section: step }, query] = await Promise.all([params, searchParams]);
  const section = sectionOf(step);
  if (section === null) notFound();
  const { books, today } = await booksForPage();
  const fields = RECORD_FORMS[section];
  const hasOwnId = fields.some(({ name, control }) => name === "id" && control.kind === "text");
  const id = newId();
  const record = begun(books, section, query, today);
  const form = formOf(books, section, hasOwnId ? record : { ...record, id }, true);
  const { one, add, gist, needs } = SECTION_WORDS[section];
  return (
    <>
      <Opening crumb={<Crumb section={section} />} title={add}>
        {gist} {needs}
      </Opening>
      <KeptBefore books={books} section={section} id={textIn(query, "kept")} today={today} />
      <WhatComesFirst books={books} section={section} />
      <BookForm
        // The same each time the page is drawn: what a form is answered without scripts finds it by its place.
        key={textIn(query, "kept")}
        kind={section}
        checked={section === "formulas" ? checkedFrom(books.workshop, today, id) : undefined}
        {...form}
        fields={section === "formulas" ? [...form.fields, DRAFT_ID] : form.fields}
        values={section === "formulas" ? { ...form.values, draftId: id } : form.values}
        seen=""
        send={keep.bind(null, section, null)}
        buttons={[
          { deed: "keep", label: `Keep the ${one}` },
          { deed: "another", label: "Keep it and add another" },
          ...(section === "formulas" ? [{ deed: "draft", label: "Keep it as a draft" }] : []),
        ]}
      />
    </>
  );
}

const DRAFT_ID = { name: "draftId", label: "Id of the draft", control: { kind: "hidden" }, required: true } as const;

/** Says that the one before was kept, where another is added after it. */
function KeptBefore({
  books: { workshop },
  section,
  id,
  today,
}: {
  readonly books: Books;
  readonly section: Section;
  readonly id: string;
  readonly today: Day;
}): ReactNode {
  const kept = id === "" ? undefined : saidOf(section, workshop, today, id);
  if (kept === undefined || kept === null) return null;
  return (
    <p className="done" role="status">
      Kept: {kept.name}. Here is room for another.
    </p>
  );
}

/** What has to be written down before this can be. */
const FIRST: Partial<Readonly<Record<Section, readonly Section[]>>> = {
  products: ["formulas"],
  formulas: ["materials"],
  labels: ["products"],
  offers: ["materials", "suppliers"],
  lots: ["materials"],
  orders: ["suppliers", "materials"],
};

function WhatComesFirst({
  books: { workshop },
  section,
}: {
  readonly books: Books;
  readonly section: Section;
}): ReactNode {
  const missing = (FIRST[section] ?? []).filter((list) => workshop[list].length === 0);
  return missing.map((list) => (
    <p className="done" key={list}>
      There are no {SECTION_WORDS[list].many} to choose from yet.{" "}
      <Link href={newPath(list)}>{SECTION_WORDS[list].add}</Link> first, or write down{" "}
      <Link href="/book/first">a product in one go</Link>.
    </p>
  ));
}
