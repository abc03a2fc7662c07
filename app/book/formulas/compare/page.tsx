import type { Metadata } from "next";
import type { ReactNode } from "react";
import { compareFormulas } from "@/lib/domain/formula-comparison";
import { BASES } from "@/lib/domain/plan-figures";
import { Opening } from "@/app/_ui/finding";
import { type Query, textIn } from "@/app/book/_parts/addresses";
import { CompareForm } from "@/app/book/_parts/compare-form";
import { ComparedFinding, ComparedLedger } from "@/app/book/_parts/compared";
import { Crumb } from "@/app/book/_parts/crumb";
import { booksForPage } from "../../books-for-page";

export const metadata: Metadata = { title: "Two formulas side by side" };

/** Two formulas side by side: in percent, and in what each makes one unit of a product cost. */
export default async function ComparePage({
  searchParams,
}: {
  readonly searchParams: Promise<Query>;
}): Promise<ReactNode> {
  const [{ books, today }, query] = await Promise.all([booksForPage(), searchParams]);
  const { workshop } = books;
  const of = (id: string) => workshop.formulas.find((formula) => formula.id === id);
  const [first, second] = [of(textIn(query, "first")), of(textIn(query, "second"))];
  const product = workshop.products.find(({ id }) => id === textIn(query, "product"));
  const basis = BASES.find((one) => one === textIn(query, "basis")) ?? "replacement";
  const compared =
    first && second && product
      ? compareFormulas(workshop, today, { product, first: first.id, second: second.id, basis })
      : null;
  return (
    <>
      <Opening crumb={<Crumb section="formulas" />} title="Two formulas side by side">
        <ComparedFinding
          compared={compared}
          first={first?.name}
          second={second?.name}
          product={product?.name}
          currency={workshop.settings.currency}
        />
      </Opening>
      <CompareForm workshop={workshop} asked={{ first: first?.id, second: second?.id, product: product?.id, basis }} />
      {compared?.kind === "compared" && first && second && product && (
        <ComparedLedger
          compared={compared}
          first={first.name}
          second={second.name}
          product={product}
          currency={workshop.settings.currency}
        />
      )}
    </>
  );
}
