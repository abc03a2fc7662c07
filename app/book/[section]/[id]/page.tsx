import type { Metadata } from "next";
import Link from "next/link";
import { notFound } from "next/navigation";
import { cache, type ReactNode } from "react";
import type { Books } from "@/lib/domain/desk";
import { fingerprint } from "@/lib/edge/forms/fingerprint";
import { writtenRecord } from "@/lib/edge/forms/written-record";
import { Opening } from "@/app/_ui/finding";
import {
  batchPath,
  costPath,
  idOf,
  labelPath,
  newPath,
  type Query,
  swapPath,
  textIn,
} from "@/app/book/_parts/addresses";
import { AlsoWithIt } from "@/app/book/_parts/also-with-it";
import { BookForm } from "@/app/book/_parts/book-form";
import { checkedFrom } from "@/app/book/_parts/checked-from";
import { Crumb } from "@/app/book/_parts/crumb";
import { formOf } from "@/app/book/_parts/form-of-record";
import { newId } from "@/app/_ui/new-id";
import { OfferWorking } from "@/app/book/_parts/offer-working";
import { OfMaterial } from "@/app/book/_parts/of-material";
import { saidOf } from "@/app/book/_parts/record-rows";
import { SECTION_WORDS, type Section, sectionOf } from "@/app/book/_parts/sections";
import { RecordFinding } from "@/app/book/_parts/record-finding";
import { versionsPath, trialsPath } from "@/app/book/_parts/addresses";
import { AS_NEXT, WHY } from "@/app/book/_parts/version-fields";
import { YieldSection } from "@/app/book/_parts/yield-section";
import { VersionSection } from "@/app/book/_parts/version-section";
import { keep } from "../../actions";
import { booksForPage } from "../../books-for-page";
import { yieldForPage } from "../../yield-for-page";

interface Address {
  readonly params: Promise<{ readonly section: string; readonly id: string }>;
  readonly searchParams: Promise<Query>;
}

/** The record that an address names, looked up once for its page; where there is none, the page says so. */
const askedBy = cache(async (step: string, steppedId: string) => {
  const [section, id] = [sectionOf(step), idOf(steppedId)];
  if (section === null || id === null) notFound();
  const open = await booksForPage();
  const said = saidOf(section, open.books.workshop, open.today, id);
  if (said === null) notFound();
  return { ...open, section, id, ...said };
});

export async function generateMetadata({ params }: Pick<Address, "params">): Promise<Metadata> {
  const { section, id } = await params;
  return { title: (await askedBy(section, id)).name };
}

/** One record of the book: its form, what belongs to it, and what else can be done with it. */
export default async function RecordPage({ params, searchParams }: Address): Promise<ReactNode> {
  const [address, query] = await Promise.all([params, searchParams]);
  const asked = await askedBy(address.section, address.id);
  const { books, section, id } = asked;
  const record = writtenRecord(books.workshop, section, id);
  if (record === null) notFound();
  const seen = fingerprint(record);
  const form = formOf(books, section, record, false);
  const draft = section === "formulas" ? { draftId: newId() } : {};
  const { one } = SECTION_WORDS[section];
  const offered = section === "products" ? offeredIn(query) : {};
  const product = section === "products" ? books.workshop.products.find((each) => each.id === id) : undefined;
  return (
    <>
      <Opening
        crumb={<Crumb section={section} />}
        title={asked.name}
        beside={<Beside books={books} section={section} id={id} />}
      >
        <RecordFinding {...asked} />
      </Opening>
      {Object.keys(offered).length > 0 && (
        <p className="done" role="status">
          Heel and process loss are filled in below as your batches say. Nothing is changed until you keep the product.
        </p>
      )}
      <BookForm
        key={[id, ...Object.values(offered)].join(" ")}
        kind={section}
        checked={section === "formulas" ? checkedFrom(books.workshop, asked.today, id) : undefined}
        {...form}
        fields={section === "formulas" ? [...form.fields, WHY, AS_NEXT, DRAFT_ID] : form.fields}
        values={{ ...form.values, ...draft, ...offered }}
        seen={seen}
        send={keep.bind(null, section, id)}
        buttons={[
          { deed: "keep", label: `Keep the ${one}` },
          ...(section === "formulas" ? [{ deed: "draft", label: "Keep it as a draft beside this one" }] : []),
        ]}
      />
      {section === "formulas" && <VersionSection books={books} today={asked.today} id={id} />}
      {product && <YieldSection product={product.id} fit={await yieldForPage(books, product)} />}
      {section === "offers" && <OfferWorking workshop={books.workshop} id={id} />}
      {section === "materials" && <OfMaterial books={books} today={asked.today} material={id} />}
      <AlsoWithIt books={books} section={section} id={id} seen={seen} today={asked.today} />
    </>
  );
}

/** What the batches of a product say, where the address puts it into the form. */
const offeredIn = (query: Query): Readonly<Record<string, string>> =>
  Object.fromEntries(
    ["heel", "processLoss"].map((name) => [name, textIn(query, name)] as const).filter(([, value]) => value !== ""),
  );

/** What there is to see of the record elsewhere. */
function Beside({
  books,
  section,
  id,
}: {
  readonly books: Books;
  readonly section: Section;
  readonly id: string;
}): ReactNode {
  if (section === "labels")
    return (
      <Link className="button" href={labelPath(id)}>
        See it and print it
      </Link>
    );
  if (section === "products")
    return (
      <p className="in-a-row">
        <ToItsCost id={id} />
        <ToItsLabel books={books} id={id} />
      </p>
    );
  if (section !== "formulas") return null;
  return (
    <p className="in-a-row">
      <Link className="button" href={batchPath(id)}>
        A batch of it
      </Link>
      <Link className="button" href={swapPath(id)}>
        Swap a material
      </Link>
      <Link className="button" href={trialsPath(id)}>
        Its trials
      </Link>
      <Link className="button" href={versionsPath(id)}>
        Its versions
      </Link>
    </p>
  );
}

/** The first of its labels, or the form of one. */
function ToItsLabel({ books, id }: { readonly books: Books; readonly id: string }): ReactNode {
  const [label] = books.workshop.labels.filter(({ product }) => product === id);
  return (
    <Link className="button" href={label ? labelPath(label.id) : newPath("labels", { product: id })}>
      {label ? "Its label" : "Make its label"}
    </Link>
  );
}

const ToItsCost = ({ id }: { readonly id: string }): ReactNode => (
  <Link className="button" href={costPath(id)}>
    What one costs
  </Link>
);

const DRAFT_ID = { name: "draftId", label: "Id of the draft", control: { kind: "hidden" }, required: true } as const;
