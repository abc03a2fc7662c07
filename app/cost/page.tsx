import type { Metadata } from "next";
import { redirect } from "next/navigation";
import type { ReactNode } from "react";
import { BASES } from "@/lib/domain/plan-figures";
import { Choice } from "@/app/_ui/choice";
import { Opening } from "@/app/_ui/finding";
import { FirstDeed } from "@/app/_ui/first-deed";
import { planForPage } from "../plan-for-page";
import { AllProducts } from "./_parts/all-products";
import { BASIS_WORDS, basisOf, type Query, withBasis } from "./_parts/basis";
import { figuresBefore } from "./figures-before";
import { CostFinding } from "./_parts/cost-finding";
import { onePriced } from "./_parts/priced";

export const metadata: Metadata = { title: "Cost" };

export default async function Cost({ searchParams }: { readonly searchParams: Promise<Query> }): Promise<ReactNode> {
  const planned = await planForPage();
  if (planned === null) redirect("/");
  const basis = basisOf(await searchParams);
  const { settings } = planned.workshop;
  const products = planned.plan.costs.map((cost) => onePriced(cost, basis, settings));
  const before = figuresBefore(settings, planned.plan.costs);
  if (products.length === 0)
    return (
      <>
        <Opening title="What each product costs">
          No products yet. Write down the first one, and what it costs stands here.
        </Opening>
        <FirstDeed href="/book/first">Write down the first product</FirstDeed>
      </>
    );
  return (
    <>
      <Opening
        title="What each product costs"
        beside={
          <Choice
            name="Ingredient and packaging prices"
            options={BASES.map((each) => ({
              href: withBasis("/cost", each),
              label: BASIS_WORDS[each],
              chosen: each === basis,
            }))}
          />
        }
      >
        <CostFinding products={products} settings={settings} />
      </Opening>
      <AllProducts products={products} before={(product) => before(product, basis)} settings={settings} basis={basis} />
    </>
  );
}
