import Link from "next/link";
import type { ReactNode } from "react";
import type { Day } from "@/lib/domain/calendar";
import { counted, inWordsFirst } from "@/lib/edge/counted";
import type { Matters } from "./what-matters";

/** The day's answer: what cannot be made, what to order, or that all is covered. */
export function HomeFinding({
  matters,
  products,
  today,
}: {
  readonly matters: Matters;
  readonly products: number;
  readonly today: Day;
}): ReactNode {
  const { notMakeable, toOrder, runs, materials, unsourced, instead } = matters;
  if (materials === 0 && products === 0)
    return (
      <>
        Nothing is in this workshop yet. <Link href="/book/first">Write down the first product</Link>: one form, and you
        see what a jar costs. This page then says what to make and what to order.
      </>
    );
  const late = toOrder.filter(({ daysLate }) => (daysLate ?? 0) > 0).length;
  const due = toOrder.filter(({ orderBy }) => orderBy === today).length;
  return (
    <>
      <Runs all={runs} notMakeable={notMakeable.length} />{" "}
      {late > 0 && (
        <>
          {inWordsFirst(late)} {late === 1 ? "material is" : "materials are"} <b className="warn">late to order</b>
          .{" "}
        </>
      )}
      {due > 0 && (
        <>
          {inWordsFirst(due)} {due === 1 ? "is" : "are"} <b>to be ordered today</b>.{" "}
        </>
      )}
      {unsourced > 0 && (
        <>
          {inWordsFirst(unsourced)} {unsourced === 1 ? "has" : "have"} <b className="warn">no offer</b>.{" "}
        </>
      )}
      {instead.size > 0 && (
        <>
          {inWordsFirst(instead.size)} {instead.size === 1 ? "is" : "are"} <b>to be made</b>, not bought.{" "}
        </>
      )}
      {toOrder.length === 0 && <>Nothing has to be ordered this week or next.</>}
    </>
  );
}

function Runs({ all, notMakeable }: { readonly all: number; readonly notMakeable: number }): ReactNode {
  if (all === 0) return <>No runs are planned.</>;
  if (notMakeable === 0)
    return all === 1 ? <>The one run can be made.</> : <>All {counted(all, "run", "runs")} can be made.</>;
  return (
    <>
      {inWordsFirst(notMakeable)} of {counted(all, "run", "runs")} <b className="warn">cannot be made</b>.
    </>
  );
}
