/**
 * The report: what a plan says, as plain data with every figure already in text. @rule REPORT-1, MONEY-4, QTY-6
 * As JSON it is for other programs; report-tables.ts sets the same out for people.
 */
import { type Day, isoDate } from "@/lib/domain/calendar";
import { byCodePoint } from "@/lib/domain/code-point-order";
import type { Fraction } from "@/lib/domain/fraction";
import { decimalsOf } from "@/lib/domain/money";
import type { PlannedBasket } from "@/lib/domain/buying/basket-of-plan";
import type { Basis, MaterialOutlook, Plan, RunOutlook, UnitCost } from "@/lib/domain/plan-figures";
import type { Material, Product, Workshop } from "@/lib/domain/workshop";
import { faultList } from "./fault-list";
import { basketRow } from "./report-basket";
import { type Figures, figures } from "./report-figures";
import type { CostRow, MaterialRow, Report, RunRow } from "./report-rows";
import { quoted } from "./shown-value";

export type { Report } from "./report-rows";
export { reportTables } from "./report-tables";

export type ReportOutcome =
  | { readonly kind: "report"; readonly report: Report }
  /** A line for each record with a figure above 2^53 − 1. There is no report then, not even in part. */
  | { readonly kind: "out of range"; readonly faults: readonly string[] };

/**
 * The report of a plan and of the basket that fills its gaps, with costs on one basis. Products, runs and materials
 * stand in the workshop's order.
 */
export function reportOf(workshop: Workshop, plan: Plan, basket: PlannedBasket, basis: Basis): ReportOutcome {
  const faults = faultList();
  const decimals = decimalsOf(workshop.settings.currency) + 2;
  const report: Report = {
    format: "stillroom-report",
    version: 1,
    today: isoDate(plan.today),
    currency: workshop.settings.currency,
    costs: plan.costs.map(({ product, byBasis }, at) =>
      costRow(product, byBasis[basis], decimals, figures(`products[${String(at)}]`, product, faults)),
    ),
    runs: plan.runs.map((outlook, at) => runRow(outlook, figures(`runs[${String(at)}]`, outlook.run, faults))),
    materials: plan.materials.map((outlook, at) =>
      materialRow(outlook, figures(`materials[${String(at)}]`, outlook.material, faults)),
    ),
    basket: basketRow(workshop, basket, faults),
  };
  return faults.count() === 0 ? { kind: "report", report } : { kind: "out of range", faults: faults.lines() };
}

/** The report as one JSON document that ends with a newline. */
export const reportJson = (report: Report): string => `${JSON.stringify(report, null, 2)}\n`;

function costRow(product: Product, cost: UnitCost, decimals: number, print: Figures): CostRow {
  const money = (figure: string, exact: Fraction) => print.money(figure, exact, decimals);
  const known = (figure: string, exact: Fraction | null) => (exact === null ? null : money(figure, exact));
  return {
    product: product.id,
    basis: cost.basis,
    perUnit: known("the cost of one unit", cost.perUnit),
    ingredients: known("the ingredients of one unit", cost.ingredients),
    packaging: known("the packaging of one unit", cost.packaging),
    labour: money("the labour of one unit", cost.labour),
    overhead: money("the overhead of one unit", cost.overhead),
    error: cost.unpriced.length === 0 ? null : unpricedText(cost.unpriced),
    lines: byId(cost.lines, ({ material }) => material.id).map(({ material, quantity, cost }) => ({
      material: material.id,
      quantity: print.exact(`${nameOf(material)} for one unit`, quantity, material.measure),
      cost: known(`the cost of ${nameOf(material)} for one unit`, cost),
    })),
  };
}

const nameOf = ({ name }: { readonly name: string }): string => quoted(name);

// Ids are given whole here, however long: this is data for a program as well as a sentence.
const unpricedText = (materials: readonly Material[]): string => {
  const names = materials.map(({ id, name }) => `"${id}" (${name})`).join(", ");
  return `no offer and no usable lot prices ${materials.length === 1 ? "material" : "the materials"} ${names}`;
};

const runRow = ({ run, makeable, mostUnits, limiting, short }: RunOutlook, print: Figures): RunRow => ({
  run: run.id,
  makeable,
  mostUnits: print.units("the most units that can be made", mostUnits),
  limiting: limiting.id,
  short: byId(short, ({ material }) => material.id).map(({ material, by }) => ({
    material: material.id,
    by: print.stock(`what it lacks of ${nameOf(material)}`, by, material.measure),
  })),
});

function materialRow(outlook: MaterialOutlook, print: Figures): MaterialRow {
  const { id, measure } = outlook.material;
  return {
    material: id,
    onHand: print.stock("what is on hand", outlook.onHand, measure),
    shortOn: dateOrNone(outlook.shortOn),
    belowSafetyOn: dateOrNone(outlook.belowSafetyOn),
    shortBy: print.stock("what is short", outlook.shortBy, measure),
    toBuy: print.stock("what is to be bought", outlook.toBuy, measure),
    orderBy: dateOrNone(outlook.orderBy),
    daysLate: outlook.daysLate,
    expiring: byId(outlook.expiring, ({ lot }) => lot).map(({ lot, on, quantity }) => ({
      lot,
      on: isoDate(on),
      quantity: print.stock(`what expires of lot ${quoted(lot)}`, quantity, measure),
    })),
  };
}

const dateOrNone = (day: Day | null): string | null => (day === null ? null : isoDate(day));

const byId = <T>(rows: readonly T[], idOf: (row: T) => string): readonly T[] =>
  [...rows].sort((a, b) => byCodePoint(idOf(a), idOf(b)));
