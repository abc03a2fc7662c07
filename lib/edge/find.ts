/** One search over all that a workshop names: what is called how, and where it stands. */
import { type Batch, codeOf, codesOf, stateOf } from "@/lib/domain/bench/batch";
import type { Day } from "@/lib/domain/calendar";
import { byCodePoint } from "@/lib/domain/code-point-order";
import type { Books } from "@/lib/domain/desk";
import type { Trial } from "@/lib/domain/formula-book/trials";
import { progressOf } from "@/lib/domain/orders";
import type { FormulaLine, Workshop } from "@/lib/domain/workshop";
import { batchAddress, recordAddress as batchRecordAddress } from "./bench-address";
import { STATE_WORDS } from "./bench-words";
import { costAddress, draftAddress, recordAddress, trialAddress } from "./book-address";
import { counted, inARow } from "./counted";
import { amountShown, dayShown, stockShown } from "./figures";
import { finishedAddress, lotAddress, makingAddress, orderAddress } from "./ledger-address";
import { materialAddress } from "./material-address";
import { holdsAll, plainWords } from "./plain-words";
import { runAddress } from "./run-address";

export const FIND_KINDS = [
  "Places",
  "Materials",
  "Lots",
  "Formulas",
  "Trials",
  "Products",
  "Runs",
  "Batches",
  "Finished lots",
  "Orders",
  "Suppliers",
  "Labels",
] as const;
export type FindKind = (typeof FIND_KINDS)[number];

export interface Findable {
  readonly kind: FindKind;
  readonly name: string;
  /** What tells it from others. */
  readonly says: string;
  readonly href: string;
  /** What it is found by besides what is shown. */
  readonly also?: string;
  /** The day by which its kind is listed, where it is. */
  readonly on?: Day;
}

/** All that can be found, each list in the workshop's order. */
export function findables({ workshop, desk }: Books, today: Day): readonly Findable[] {
  const [materialOf, formulaOf] = [namesIn(workshop.materials), namesIn(workshop.formulas)];
  const [productOf, supplierOf] = [namesIn(workshop.products), namesIn(workshop.suppliers)];
  const shown = (day: Day): string => dayShown(day, today);
  return [
    ...PLACES,
    ...materialsOf(workshop),
    ...workshop.lots.map(({ id, material, expires, remaining }): Findable => ({
      kind: "Lots",
      name: `${materialOf(material)}, lot ${id}`,
      says: `${stockShown(remaining, measureOf(workshop, material), "there")}${expires === null ? "" : `, last day of use ${dayShown(expires, today, { year: true })}`}`,
      href: lotAddress(id),
      also: id,
    })),
    ...formulasOf({ workshop, desk }, (line) => (line.kind === "material" ? materialOf : formulaOf)(line.id)),
    ...desk.trials.map((trial) => trialFound(trial, formulaOf(trial.formula), today)),
    ...workshop.products.map(({ id, name, formula, fill }): Findable => ({
      kind: "Products",
      name,
      says: `${amountShown(fill.typed)} of ${formulaOf(formula)}`,
      href: costAddress(id),
    })),
    ...workshop.runs.map((run): Findable => ({
      kind: "Runs",
      name: `${productOf(run.product)}, ${shown(run.date)}`,
      says: `planned, ${counted(Number(run.units), "unit", "units")}`,
      on: run.date,
      href: runAddress(run),
    })),
    ...desk.closedRuns.map(({ run, madeOn, unitsMade }): Findable => ({
      kind: "Runs",
      name: `${productOf(run.product)}, ${shown(madeOn)}`,
      says: `made, ${counted(Number(unitsMade), "unit", "units")}`,
      on: madeOn,
      href: makingAddress(run.id),
    })),
    ...desk.batches.map((batch) => batchFound(batch, productOf(batch.run.product), today)),
    ...workshop.finished.map(({ id, product, made }): Findable => ({
      kind: "Finished lots",
      name: `${productOf(product)}, lot ${id}`,
      says: `made ${dayShown(made, today, { year: true })}`,
      href: finishedAddress(id),
      also: id,
    })),
    ...workshop.orders.map((order): Findable => ({
      kind: "Orders",
      name: `Order from ${supplierOf(order.supplier)}, ${shown(order.placed)}`,
      says: `${progressOf(order)}: ${inARow([...new Set(order.lines.map(({ material }) => materialOf(material)))])}`,
      href: orderAddress(order.id),
      also: order.id,
    })),
    ...workshop.suppliers.map(({ id, name, leadDays }): Findable => ({
      kind: "Suppliers",
      name,
      says: `comes in ${counted(leadDays, "day", "days")}`,
      href: recordAddress("suppliers", id),
    })),
    ...workshop.labels.map((label) => labelFound(label, productOf(label.product))),
  ];
}

function materialsOf({ materials, offers }: Workshop): readonly Findable[] {
  return materials.map((material): Findable => {
    const inci = material.composition.map(({ inci: name }) => name);
    const codes = offers.filter((offer) => offer.material === material.id).map(({ id }) => id);
    return {
      kind: "Materials",
      name: material.name,
      says: inci.length === 0 ? material.kind : inARow(inci.slice(0, MOST_INCI)),
      href: materialAddress(material.id),
      also: [...inci, ...codes, material.id].join(" "),
    };
  });
}

const MOST_INCI = 2;

function formulasOf({ workshop, desk }: Books, nameOf: (of: FormulaLine["of"]) => string): readonly Findable[] {
  const lines = (formula: Workshop["formulas"][number]): string =>
    `${counted(formula.lines.length, "line", "lines")}, first ${inARow(
      formula.lines.slice(0, MOST_LINES).map((line) => nameOf(line.of)),
    )}`;
  return [
    ...workshop.formulas.map((formula): Findable => ({
      kind: "Formulas",
      name: formula.name,
      says: lines(formula),
      href: recordAddress("formulas", formula.id),
    })),
    ...desk.drafts.map((formula): Findable => ({
      kind: "Formulas",
      name: formula.name,
      says: `draft, ${lines(formula)}`,
      href: draftAddress(formula.id),
    })),
  ];
}

const MOST_LINES = 3;

const labelFound = ({ id, market }: Workshop["labels"][number], product: string): Findable => ({
  kind: "Labels",
  name: `Label of ${product}`,
  says: `for ${market}`,
  href: recordAddress("labels", id),
});

const trialFound = ({ id, name, formula, day }: Trial, of: string, today: Day): Findable => ({
  kind: "Trials",
  name,
  says: `of ${of}, ${dayShown(day, today, { year: true })}`,
  href: trialAddress(formula, id),
});

const batchFound = (batch: Batch, product: string, today: Day): Findable => ({
  kind: "Batches",
  name: `Batch ${codeOf(batch)}`,
  says: `${product}, ${dayShown(batch.startedOn, today)}: ${STATE_WORDS[stateOf(batch)].toLowerCase()}`,
  href: stateOf(batch) === "open" ? batchAddress(batch.run.id) : batchRecordAddress(batch.run.id),
  also: codesOf(batch).join(" "),
});

const namesIn = (records: readonly { readonly id: string; readonly name: string }[]): ((id: string) => string) => {
  const names = new Map(records.map(({ id, name }) => [id, name]));
  return (id) => names.get(id) ?? id;
};

const measureOf = ({ materials }: Workshop, id: string) => materials.find((each) => each.id === id)?.measure ?? "mass";

const place = (name: string, says: string, href: string): Findable => ({ kind: "Places", name, says, href });

/** What is done in the app, by the words that a maker may think of it. */
const PLACES: readonly Findable[] = [
  place("Today", "what asks for a hand", "/"),
  place("Receive a delivery", "packs that came in, with their lots", "/shelf/receive"),
  place("Count the shelf", "weigh what is there", "/shelf/count"),
  place("Finished stock", "jars made, sold and left", "/shelf/finished"),
  place("Recall drill", "where all of a lot has gone", "/shelf/recall"),
  place("Orders", "drafted, ordered, received", "/buying/orders"),
  place("The week", "plan, move and resize runs", "/week"),
  place("The bench", "start a batch, weigh it, close it", "/bench"),
  place("Rates and calendar", "labour, overhead, taxes, closed days", "/book/rates"),
  place("Figures and keys", "kilograms or pounds, dates, decimal marks, single keys", "/book/screen"),
  place("History", "every posting, and taking one back", "/book/history"),
  place("Value of stock", "what it was worth on any day", "/book/stock-value"),
  place("Files", "save the workshop, open another", "/book/files"),
  place("Write down a product", "formula, pack and price in one form", "/book/first"),
];

export interface FoundOfKind {
  readonly kind: FindKind;
  readonly found: readonly Findable[];
  /** How many of the kind there are besides. */
  readonly further: number;
}

/**
 * Those whose words hold everything that was typed, each word of it anywhere. Within a kind first what is called so,
 * then what begins so, then what holds it in its name, then the rest; kinds in the order of their best.
 * @param most  how many of a kind at most
 */
export function find(all: readonly Findable[], typed: string, most: number): readonly FoundOfKind[] {
  const wanted = plainWords(typed);
  if (wanted === "") return [];
  const words = wanted.split(" ");
  const hits = all.map((each) => ({ each, rank: rankOf(each, wanted, words) })).filter(({ rank }) => rank < NOT_FOUND);
  return FIND_KINDS.map((kind) => {
    const own = hits
      .filter(({ each }) => each.kind === kind)
      .sort((a, b) => a.rank - b.rank || dayOf(a.each) - dayOf(b.each) || byCodePoint(a.each.name, b.each.name));
    const found = own.slice(0, most).map(({ each }) => each);
    return { kind, found, further: own.length - found.length, best: own[0]?.rank ?? NOT_FOUND };
  })
    .filter(({ found }) => found.length > 0)
    .sort((a, b) => a.best - b.best)
    .map(({ kind, found, further }) => ({ kind, found, further }));
}

const dayOf = ({ on = 0 as Day }: Findable): Day => on;

const NOT_FOUND = 4;

function rankOf({ name, says, also = "" }: Findable, wanted: string, words: readonly string[]): number {
  const called = plainWords(name);
  if (called === wanted) return 0;
  if (called.startsWith(wanted)) return 1;
  if (holdsAll(called, words)) return 2;
  return holdsAll(plainWords(`${name} ${says} ${also}`), words) ? 3 : NOT_FOUND;
}
