/** A workshop file through the product and through the second implementation, made comparable. */
import { expect } from "vitest";
import { dayOf } from "@/lib/domain/calendar";
import { plan } from "@/lib/domain/plan";
import { BASES, type Basis } from "@/lib/domain/plan-figures";
import { reportJson, reportOf } from "@/lib/edge/report";
import { readWorkshopFile } from "@/lib/edge/workshop-file";
import { leastBasketFor } from "../helpers/least-basket-for";
import { REAL_TODAY } from "../helpers/random-workshop";
import { type BasketOfReport, basketOfPacks } from "../second/buying";
import { byCodePoint } from "../second/exact";
import type { WorkshopFile } from "../second/file-shape";
import { type secondReport, secondReports } from "../second/second-report";

export type SecondReport = ReturnType<typeof secondReport>;

function dayCalled(date: string) {
  const day = dayOf(date);
  if (day === null) throw new Error(`no such day ${date}`);
  return day;
}

/** The workshop as the product reads it, and its plan; from a file's bytes, or from what a file would hold. */
export function planned(file: WorkshopFile | Uint8Array) {
  const bytes = file instanceof Uint8Array ? file : new TextEncoder().encode(JSON.stringify(file));
  const reading = readWorkshopFile(bytes, dayCalled(REAL_TODAY));
  if (reading.kind === "refused") throw new Error(reading.faults.join("\n"));
  const { workshop } = reading;
  return { workshop, plan: plan(workshop, workshop.settings.today ?? dayCalled(REAL_TODAY)) };
}

/** The product's report as parsed JSON, on each basis. */
export function firstReports(file: WorkshopFile | Uint8Array): Readonly<Record<Basis, SecondReport>> {
  const { workshop, plan: figures } = planned(file);
  const basket = leastBasketFor(workshop, figures);
  const on = (basis: Basis) => {
    const outcome = reportOf(workshop, figures, basket, basis);
    if (outcome.kind !== "report") throw new Error(outcome.faults.join("\n"));
    return JSON.parse(reportJson(outcome.report)) as SecondReport;
  };
  return { replacement: on("replacement"), shelf: on("shelf"), average: on("average") };
}

/**
 * The report with nothing in it that may be worded or chosen freely: without its basket, which `expectGoodBasket` holds
 * to the rules, and with the ids of the unpriced materials for each `error`, as long as the text names every one.
 */
export function comparable(report: SecondReport, costs: SecondReport["costs"]): SecondReport {
  const named = report.costs.map((cost, index) => {
    const ids = costs[index]?.error ?? null;
    const text = cost.error as unknown as string | null;
    const isNamed = text !== null && ids !== null && ids.every((id) => text.includes(id));
    return { ...cost, error: isNamed ? ids : cost.error };
  });
  const figures = Object.entries({ ...report, costs: named }).filter(([key]) => key !== "basket");
  return Object.fromEntries(figures) as unknown as SecondReport;
}

/** The basket of a report, which the second implementation's type leaves out. */
export const basketIn = (report: unknown): BasketOfReport => (report as { readonly basket: BasketOfReport }).basket;

/**
 * Holds a basket to every rule by the second implementation: printed from its packs alone it must come out the same,
 * orders by supplier id and lines by offer id.
 */
export function expectGoodBasket(file: WorkshopFile, basket: BasketOfReport): void {
  const packs = new Map(
    basket.orders.flatMap(({ lines }) => lines.map(({ offer, packs }) => [offer, BigInt(packs)] as const)),
  );
  const second = basketOfPacks(file, REAL_TODAY, packs);
  const byId = <T>(rows: readonly T[], idOf: (row: T) => string) =>
    [...rows].sort((a, b) => byCodePoint(idOf(a), idOf(b)));
  const orders = second.orders.map((order) => ({ ...order, lines: byId(order.lines, ({ offer }) => offer) }));
  expect(basket).toEqual({ ...second, orders: byId(orders, ({ supplier }) => supplier) });
}

/** Holds the product to the second implementation, field by field, on every basis. */
export function expectAgreement(file: WorkshopFile): void {
  const first = firstReports(file);
  const secondOn = secondReports(file, REAL_TODAY);
  for (const basis of BASES) {
    const second = secondOn(basis);
    expect(comparable(first[basis], second.costs)).toEqual(second);
  }
  expectGoodBasket(file, basketIn(first.replacement));
}
