import type { Metadata } from "next";
import { notFound } from "next/navigation";
import type { ReactNode } from "react";
import { addsUp, formulaTotal } from "@/lib/domain/formula-total";
import { writtenDraft } from "@/lib/edge/forms/change-draft";
import { fingerprint } from "@/lib/edge/forms/fingerprint";
import { totalInWords } from "@/lib/edge/forms/total-in-words";
import { Opening } from "@/app/_ui/finding";
import { throwAway } from "@/app/book/[section]/[id]/actions";
import { idOf } from "@/app/book/_parts/addresses";
import { BookForm } from "@/app/book/_parts/book-form";
import { checkedFrom } from "@/app/book/_parts/checked-from";
import { Crumb } from "@/app/book/_parts/crumb";
import { DeedForm } from "@/app/book/_parts/deed-form";
import { formOf } from "@/app/book/_parts/form-of-record";
import { keepOrFinish } from "../actions";
import { booksForPage } from "../../books-for-page";

interface Address {
  readonly params: Promise<{ readonly id: string }>;
}

export const metadata: Metadata = { title: "A draft" };

/** A formula that does not add up yet: what it comes to, and its form. */
export default async function DraftPage({ params }: Address): Promise<ReactNode> {
  const id = idOf((await params).id);
  const { books, today } = await booksForPage();
  const draft = books.desk.drafts.find((one) => one.id === id);
  if (draft === undefined || id === null) notFound();
  const record = writtenDraft(books.workshop, draft);
  const seen = fingerprint(record);
  const total = formulaTotal(draft);
  return (
    <>
      <Opening crumb={<Crumb section="formulas" />} title={draft.name}>
        A draft: <b>{totalInWords(total)}</b>.{" "}
        {addsUp(total) ? "It can be made a formula." : "It can be kept as it is, and no product can be made by it yet."}
      </Opening>
      <BookForm
        key={id}
        kind="formulas"
        checked={checkedFrom(books.workshop, today, id)}
        {...formOf(books, "formulas", record, false)}
        seen={seen}
        send={keepOrFinish.bind(null, id)}
        buttons={[
          { deed: "draft", label: "Keep the draft" },
          { deed: "finish", label: "Make it a formula" },
        ]}
      />
      <section className="matters" aria-labelledby="also">
        <h2 id="also">
          Also <small>with this draft</small>
        </h2>
        <div className="also">
          <DeedForm act={throwAway.bind(null, id, seen)} label="Remove the draft" />
        </div>
      </section>
    </>
  );
}
