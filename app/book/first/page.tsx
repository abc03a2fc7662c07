import type { Metadata } from "next";
import type { ReactNode } from "react";
import { currencySign } from "@/lib/edge/figures";
import { FIRST_PRODUCT_FORM } from "@/lib/edge/forms/first-product";
import { Opening } from "@/app/_ui/finding";
import { Crumb } from "@/app/book/_parts/crumb";
import { FirstProductForm } from "@/app/book/_parts/first-product-form";
import { newId } from "@/app/_ui/new-id";
import { booksForPage } from "../books-for-page";
import { keepFirstProduct } from "./actions";

export const metadata: Metadata = { title: "A product in one go" };

/** One form from nothing to what a jar costs. */
export default async function FirstProductPage(): Promise<ReactNode> {
  const { books } = await booksForPage();
  const { settings, suppliers, materials } = books.workshop;
  const [known] = suppliers;
  const id = newId();
  return (
    <>
      <Opening crumb={<Crumb section="products" />} title="A product in one go">
        What goes into one, in percent, and what the packs cost you: that is all a price needs. Everything written here
        can be changed in the Book later.
      </Opening>
      <FirstProductForm
        fields={FIRST_PRODUCT_FORM}
        known={materials.map(({ name }) => name)}
        values={{ id, usualRun: "10", supplier: known?.name ?? "My supplier", leadDays: String(known?.leadDays ?? 3) }}
        choices={{}}
        money={currencySign(settings.currency)}
        seen=""
        send={keepFirstProduct}
        buttons={[{ deed: "keep", label: "Keep it and see what it costs" }]}
      />
    </>
  );
}
