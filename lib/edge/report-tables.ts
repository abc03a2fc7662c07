/** The report as tables for people at a terminal: the same figures as its JSON, with names beside ids. */
import { isoDate } from "@/lib/domain/calendar";
import type { Workshop } from "@/lib/domain/workshop";
import type { Report } from "./report-rows";
import { escaped } from "./shown-value";
import { type Column, tableLines, widthOf } from "./text-table";

const left = (title: string): Column => ({ title, align: "left" });
const right = (title: string): Column => ({ title, align: "right" });

const NOTHING = "-";

/** The whole report as text that ends with a newline. */
export function reportTables(report: Report, workshop: Workshop): string {
  const basis = report.costs[0]?.basis;
  const costs = `What one unit costs, ${report.currency}${basis === undefined ? "" : `, materials at ${basis}`}`;
  const names = namesOf(workshop);
  const sections = [
    titled(`${escaped(workshop.settings.name)}: report of ${report.today}`, "=", []),
    titled(costs, "-", costLines(report, names)),
    ...listed("What has no price", unpricedLines(report, names)),
    titled("What goes into one unit", "-", contentLines(report, names)),
    titled("Planned runs", "-", runLines(report, workshop, names)),
    ...listed("What runs lack", shortageLines(report, names)),
    titled("Materials, if every run goes ahead", "-", materialLines(report, names)),
    ...listed("What goes out of date", expiryLines(report, names)),
    titled(`What to buy, ${report.currency}`, "-", basketLines(report, workshop, names)),
    ...listed("What nobody offers", unsourcedLines(report, names)),
  ];
  return `${sections.join("\n\n")}\n`;
}

interface Names {
  readonly supplier: (id: string) => string;
  readonly product: (id: string) => string;
  readonly material: (id: string) => string;
}

/** Names by id; where two records have the same name, the id stands before it. */
function namesOf(workshop: Workshop): Names {
  const lookUp = (records: readonly { readonly id: string; readonly name: string }[]) => {
    const nameById = new Map(records.map(({ id, name }) => [id, name]));
    const countByName = new Map<string, number>();
    for (const { name } of records) countByName.set(name, (countByName.get(name) ?? 0) + 1);
    return (id: string) => {
      const name = nameById.get(id) ?? id;
      return (countByName.get(name) ?? 0) > 1 ? `${id}: ${name}` : name;
    };
  };
  return {
    supplier: lookUp(workshop.suppliers),
    product: lookUp(workshop.products),
    material: lookUp(workshop.materials),
  };
}

const titled = (title: string, rule: "=" | "-", lines: readonly string[]): string =>
  [title, rule.repeat(widthOf(title)), ...lines].join("\n");

/** A section that is there only if it has something to say. */
const listed = (title: string, lines: readonly string[]): readonly string[] =>
  lines.length === 0 ? [] : [titled(title, "-", lines)];

const orNone = (lines: readonly string[], none: string): readonly string[] => (lines.length === 0 ? [none] : lines);

const costLines = ({ costs }: Report, names: Names): readonly string[] =>
  orNone(
    tableLines(
      [left("Product"), ...["Per unit", "Ingredients", "Packaging", "Labour", "Overhead"].map(right)],
      costs.map((cost) => [
        names.product(cost.product),
        ...[cost.perUnit, cost.ingredients, cost.packaging, cost.labour, cost.overhead].map(
          (figure) => figure ?? "not known",
        ),
      ]),
    ),
    "No products.",
  );

const unpricedLines = ({ costs }: Report, names: Names): readonly string[] =>
  tableLines(
    [left("Product"), left("Material that no offer and no usable lot prices")],
    costs.flatMap(({ product, lines }) =>
      lines
        .filter(({ cost }) => cost === null)
        .map(({ material }) => [names.product(product), names.material(material)]),
    ),
  );

const contentLines = ({ costs }: Report, names: Names): readonly string[] =>
  orNone(
    tableLines(
      [left("Product"), left("Material"), right("Quantity"), right("Cost")],
      costs.flatMap(({ product, lines }) =>
        lines.map(({ material, quantity, cost }, at) => [
          at === 0 ? names.product(product) : "",
          names.material(material),
          quantity,
          cost ?? "not known",
        ]),
      ),
    ),
    "No products.",
  );

function runLines({ runs }: Report, workshop: Workshop, names: Names): readonly string[] {
  const runById = new Map(workshop.runs.map((run) => [run.id, run]));
  const columns = [left("Run"), left("Date"), left("Product"), right("Units"), left("Can be made"), right("Most")];
  const rows = runs.map(({ run: id, makeable, mostUnits, limiting }) => {
    const run = runById.get(id);
    return [
      id,
      run === undefined ? "" : isoDate(run.date),
      run === undefined ? "" : names.product(run.product),
      String(run?.units ?? ""),
      makeable ? "yes" : "no",
      String(mostUnits),
      names.material(limiting),
    ];
  });
  return orNone(tableLines([...columns, left("Limited by")], rows), "No runs are planned.");
}

const shortageLines = ({ runs }: Report, names: Names): readonly string[] =>
  tableLines(
    [left("Run"), left("Material"), right("Lacking")],
    runs.flatMap(({ run, short }) => short.map(({ material, by }) => [run, names.material(material), by])),
  );

const materialLines = ({ materials }: Report, names: Names): readonly string[] =>
  orNone(
    tableLines(
      [
        left("Material"),
        right("On the shelf"),
        right("Short from"),
        right("Below safety from"),
        right("Short by"),
        right("To buy"),
        right("Order by"),
        right("Days late"),
      ],
      materials.map((row) => [
        names.material(row.material),
        row.onHand,
        row.shortOn ?? NOTHING,
        row.belowSafetyOn ?? NOTHING,
        row.shortBy,
        row.toBuy,
        row.orderBy ?? NOTHING,
        row.daysLate === null ? NOTHING : String(row.daysLate),
      ]),
    ),
    "No materials.",
  );

const expiryLines = ({ materials }: Report, names: Names): readonly string[] =>
  tableLines(
    [left("Material"), left("Lot"), left("Out of date on"), right("Quantity left")],
    materials.flatMap(({ material, expiring }) =>
      expiring.map(({ lot, on, quantity }) => [names.material(material), lot, on, quantity]),
    ),
  );

function basketLines({ basket }: Report, workshop: Workshop, names: Names): readonly string[] {
  const materialByOffer = new Map(workshop.offers.map(({ id, material }) => [id, material]));
  const columns = [left("Supplier"), left("Offer"), left("Material"), right("Packs"), right("Cost"), left("Comes")];
  const rows = basket.orders.flatMap(({ supplier, goods, shipping, total, lines }) => [
    ...lines.map(({ offer, packs, cost, arrives, late }, at) => [
      at === 0 ? names.supplier(supplier) : "",
      offer,
      names.material(materialByOffer.get(offer) ?? ""),
      String(packs),
      cost,
      late ? `${arrives}, late` : arrives,
    ]),
    ["", "", `goods ${goods}, delivery ${shipping}`, "", total, ""],
  ]);
  if (rows.length === 0) return ["Nothing is to be bought."];
  const proof = basket.gap === null ? "no basket costs less" : `not proven: a basket may cost up to ${basket.gap} less`;
  return [...tableLines(columns, rows), "", `Total ${basket.total} (${proof}).`];
}

const unsourcedLines = ({ basket }: Report, names: Names): readonly string[] =>
  tableLines(
    [left("Material")],
    basket.unsourced.map((id) => [names.material(id)]),
  );
