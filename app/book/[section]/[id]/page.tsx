import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import type { ReactNode } from "react";
import { fingerprint } from "@/lib/edge/forms/fingerprint";
import { writtenRecord } from "@/lib/edge/forms/written-record";
import { Opening } from "@/app/_ui/finding";
import { costPath, idOf } from "@/app/book/_parts/addresses";
import { AlsoWithIt } from "@/app/book/_parts/also-with-it";
import { BookForm } from "@/app/book/_parts/book-form";
import { Crumb } from "@/app/book/_parts/crumb";
import { formOf } from "@/app/book/_parts/form-of-record";
import { newId } from "@/app/book/_parts/new-id";
import { OfMaterial } from "@/app/book/_parts/of-material";
import { listingOf } from "@/app/book/_parts/record-rows";
import { SECTION_WORDS, type Section, sectionOf } from "@/app/book/_parts/sections";
import { RecordFinding } from "@/app/book/_parts/record-finding";
import { keep } from "../../actions";
import { booksForPage, type OpenBooks } from "../../books-for-page";

interface Address {
  readonly params: Promise<{ readonly section: string; readonly id: string }>;
}

interface Asked extends OpenBooks {
  readonly section: Section;
  readonly id: string;
  readonly name: string;
}

/** The record that an address names; where there is none, the page says so. */
async function askedBy(params: Address["params"]): Promise<Asked> {
  const step = await params;
  const [section, id] = [sectionOf(step.section), idOf(step.id)];
  if (section === null || id === null) notFound();
  const open = await booksForPage();
  const row = listingOf(section, open.books.workshop, open.today).rows.find((one) => one.id === id);
  if (row === undefined) notFound();
  return { ...open, section, id, name: row.name };
}

export async function generateMetadata({ params }: Address): Promise<Metadata> {
  return { title: (await askedBy(params)).name };
}

/** One record of the book: its form, what belongs to it, and what else can be done with it. */
export default async function RecordPage({ params }: Address): Promise<ReactNode> {
  const asked = await askedBy(params);
  const { books, section, id, name } = asked;
  const record = writtenRecord(books.workshop, section, id);
  if (record === null) notFound();
  const seen = fingerprint(record);
  const form = formOf(books, section, record, false);
  const draft = section === "formulas" ? { draftId: newId() } : {};
  const { one } = SECTION_WORDS[section];
  return (
    <>
      <Opening
        crumb={<Crumb section={section} />}
        title={name}
        beside={section === "products" ? <ToItsCost id={id} /> : undefined}
      >
        <RecordFinding {...asked} />
      </Opening>
      <BookForm
        key={id}
        kind={section}
        {...form}
        fields={section === "formulas" ? [...form.fields, DRAFT_ID] : form.fields}
        values={{ ...form.values, ...draft }}
        seen={seen}
        send={keep.bind(null, section, id)}
        buttons={[
          { deed: "keep", label: `Keep the ${one}` },
          ...(section === "formulas" ? [{ deed: "draft", label: "Keep it as a draft beside this one" }] : []),
        ]}
      />
      {section === "materials" && <OfMaterial books={books} today={asked.today} material={id} />}
      <AlsoWithIt books={books} section={section} id={id} seen={seen} />
    </>
  );
}

const ToItsCost = ({ id }: { readonly id: string }): ReactNode => (
  <Link className="button" href={costPath(id)}>
    What one costs
  </Link>
);

const DRAFT_ID = { name: "draftId", label: "Id of the draft", control: { kind: "hidden" }, required: true } as const;
