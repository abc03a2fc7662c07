import Link from "next/link";
import type { ReactNode } from "react";
import { type Day, daysAfter, mondayOf } from "@/lib/domain/calendar";
import type { RunOutlook } from "@/lib/domain/plan-figures";
import { counted, inARow, inWordsFirst } from "@/lib/edge/counted";
import { dayShown, stockShown, weekdayShown } from "@/lib/edge/figures";
import type { Today } from "./today";

/** The day's answer: what cannot be made, what to order, or that all is covered. */
export function HomeFinding({ of }: { readonly of: Today }): ReactNode {
  const { workshop, plan, matters, today } = of;
  if (workshop.materials.length === 0 && workshop.products.length === 0)
    return "Nothing is in this workshop yet. Write down the first product: one form, and you see what a jar costs. This page then says what to make and what to order.";
  const sunday = daysAfter(mondayOf(today), 6);
  const [first, ...others] = matters.notMakeable.filter(({ run }) => run.date <= sunday);
  const later = matters.notMakeable.length - (first === undefined ? 0 : others.length + 1);
  const thisWeek = plan.runs.filter(({ run }) => run.date <= sunday);
  const passed = matters.notClosed.filter(({ makeable }) => !makeable).length;
  const atBench = plan.runs.filter(
    (outlook) => !outlook.makeable && !matters.notMakeable.includes(outlook) && !matters.notClosed.includes(outlook),
  );
  const isMade = plan.runs.every(({ makeable }) => makeable);
  const isCovered = isMade && matters.orderNow.length + matters.notOffered.length === 0;
  return (
    <>
      {first !== undefined && <Short outlook={first} today={today} />}
      {others.length > 0 &&
        `${inWordsFirst(others.length)} more ${others.length === 1 ? "run" : "runs"} of this week cannot be made either. `}
      {later > 0 && (
        <>
          {inWordsFirst(later)} {later === 1 ? "run of a later week" : "runs of later weeks"}{" "}
          <b className="warn">cannot be made</b> yet.{" "}
        </>
      )}
      {atBench.map((outlook) => (
        <ShortAtBench key={outlook.run.id} outlook={outlook} />
      ))}
      <Orders of={of} />
      {matters.notOffered.length > 0 && (
        <>
          {counted(matters.notOffered.length, "material is", "materials are").replace(/^./, (letter) =>
            letter.toUpperCase(),
          )}{" "}
          lacking that <b className="warn">nobody offers</b>.{" "}
        </>
      )}
      {isCovered &&
        (plan.runs.length === 0 ? (
          <>
            No runs are planned, and nothing has to be ordered today. <Link href="/week">Plan a run on the week</Link>{" "}
            and this page says what it lacks.
          </>
        ) : (
          `${plan.runs.length === 1 ? "The one run" : `All ${counted(plan.runs.length, "run", "runs")}`} can be made, and nothing has to be ordered today.`
        ))}
      {passed > 0 &&
        `${inWordsFirst(passed)} ${passed === 1 ? "run of a day that has passed is" : "runs of days that have passed are"} short, and not closed. `}
      {!isCovered &&
        thisWeek.length > 0 &&
        thisWeek.every(({ makeable }) => makeable) &&
        "This week’s runs can be made."}
    </>
  );
}

/** `Thursday’s Oat conditioner cannot be made: it is 84 g short of Oat protein.` */
function Short({ outlook, today }: { readonly outlook: RunOutlook; readonly today: Day }): ReactNode {
  const { run, product, short, limiting } = outlook;
  const worst = short.find(({ material }) => material === limiting) ?? short[0];
  return (
    <>
      {run.date === today ? "Today" : weekdayShown(run.date)}’s {product.name} <b className="warn">cannot be made</b>
      {worst && (
        <>
          : it is <b>{stockShown(worst.by, worst.material.measure, "lacking")} short</b> of {worst.material.name}
        </>
      )}
      .{" "}
    </>
  );
}

/** `Oat conditioner, at the bench, is 86 g short of Oat protein.` */
const ShortAtBench = ({ outlook: { product, short } }: { readonly outlook: RunOutlook }): ReactNode => (
  <>
    {product.name}, at the bench, is{" "}
    <b className="warn">
      {inARow(
        short.map(({ by, material }) => `${stockShown(by, material.measure, "lacking")} short of ${material.name}`),
      )}
    </b>
    .{" "}
  </>
);

function Orders({ of: { matters, basket, today } }: { readonly of: Today }): ReactNode {
  const { orderNow, orderSoon } = matters;
  if (orderNow.length === 0) {
    const [next] = orderSoon;
    return next?.orderBy ? `Nothing has to be ordered before ${dayShown(next.orderBy, today)}. ` : null;
  }
  const wanted = new Set(orderNow.map(({ material }) => material.id));
  const orders =
    basket?.orders.filter(({ lines }) => lines.some(({ material }) => wanted.has(material.id))).length ?? 0;
  const late = orderNow.filter(({ daysLate }) => (daysLate ?? 0) > 0).length;
  return (
    <>
      {orders > 0 ? (
        <>
          <b>
            {inWordsFirst(orders)} {orders === 1 ? "order" : "orders"}
          </b>{" "}
          should go today
        </>
      ) : (
        <>
          <b>{inWordsFirst(orderNow.length)}</b> {orderNow.length === 1 ? "material is" : "materials are"} to be ordered
          today
        </>
      )}
      {late > 0 && (
        <>
          {orders > 0
            ? `; ${counted(late, "material is", "materials are")} `
            : `, ${counted(late, "of them", "of them")} `}
          <b className="warn">late</b>
        </>
      )}
      .{" "}
    </>
  );
}
