import type { ReactNode } from "react";
import type { Books } from "@/lib/domain/desk";
import { counted, inWordsFirst } from "@/lib/edge/counted";

/** What the book holds, or what to write down first. */
export function BookFinding({
  books: { workshop, desk },
  isEmpty,
}: {
  readonly books: Books;
  readonly isEmpty: boolean;
}): ReactNode {
  if (isEmpty)
    return (
      <>
        Nothing is written down yet. Begin with one product: what goes into it, in percent, and what the packs cost you.
        One form, and you see what a jar costs.
      </>
    );
  const { products, formulas, materials, suppliers } = workshop;
  return (
    <>
      <b>{counted(products.length, "product", "products").replace(/^./, (first) => first.toUpperCase())}</b> by{" "}
      {counted(formulas.length, "formula", "formulas")}, from{" "}
      <b>{counted(materials.length, "material", "materials")}</b> of{" "}
      {counted(suppliers.length, "supplier", "suppliers")}.
      {desk.drafts.length > 0 && (
        <>
          {" "}
          {inWordsFirst(desk.drafts.length)} {desk.drafts.length === 1 ? "formula is" : "formulas are"} still a draft.
        </>
      )}
    </>
  );
}
