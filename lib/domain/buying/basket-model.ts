/**
 * A basket problem as a mixed-integer model in plain data: columns, rows and what they cost. Figures are scaled near 1,
 * since a solver reckons in floating point with tolerances: quantities by the need, money by a basket that is known.
 * What a solver makes of it is a proposal; it is held to the rules by checked-basket.ts and proven by exact-search.ts.
 * @rule BUY-5
 */
import type { BasketProblem, PacksByOffer } from "./basket-problem";
import { type ScaledMaterial, type ScaledOffer, type ScaledProblem, scaled } from "./scaled-problem";

export interface BasketModel {
  readonly columns: readonly ModelColumn[];
  readonly rows: readonly ModelRow[];
  /** The column of each offer's packs at each of its prices. */
  readonly packColumns: readonly { readonly offer: string; readonly column: string }[];
}

export interface ModelColumn {
  readonly name: string;
  readonly kind: "whole" | "yes or no";
  readonly cost: number;
  readonly to: number;
}

export interface ModelRow {
  readonly terms: readonly ModelTerm[];
  readonly is: ">=" | "<=";
  readonly level: number;
}

export interface ModelTerm {
  readonly times: number;
  readonly column: string;
}

/** A basket costs so much in the model's own money. */
const USUAL_COST = 100;

/**
 * @param usual  what a basket of the problem costs, in micro-units, as far as known: sets the scale and no figure
 * @returns null where the figures are too large to be scaled exactly
 */
export function basketModel(problem: BasketProblem, usual: bigint): BasketModel | null {
  const small = scaled(problem);
  if (small === null) return null;
  const money = USUAL_COST / Math.max(1, Number(usual / small.moneyUnit));
  const parts = small.materials.map((material, at) => materialPart(material, at, money));
  const suppliers = supplierPart(small, parts, money);
  return {
    columns: [...parts.flatMap(({ columns }) => columns), ...suppliers.columns],
    rows: [...parts.flatMap(({ rows }) => rows), ...suppliers.rows],
    packColumns: parts.flatMap(({ prices }) => prices.map(({ offer, packs }) => ({ offer: offer.id, column: packs }))),
  };
}

/** One price of one offer: how many packs at it, and whether any. */
interface PriceColumns {
  readonly offer: ScaledOffer;
  readonly price: number;
  readonly packs: string;
  readonly taken: string;
}

interface Part {
  readonly columns: readonly ModelColumn[];
  readonly rows: readonly ModelRow[];
}

function materialPart({ need, offers }: ScaledMaterial, at: number, money: number) {
  const columns: ModelColumn[] = [];
  const rows: ModelRow[] = [];
  const prices: PriceColumns[] = [];
  for (const [place, offer] of offers.entries()) {
    const choices: ModelTerm[] = [];
    for (const [step, { from, to, price }] of offer.steps.entries()) {
      const name = `${String(at)}_${String(place)}_${String(step)}`;
      const [packs, taken] = [`n${name}`, `d${name}`];
      columns.push({ name: packs, kind: "whole", cost: price * money, to });
      columns.push({ name: taken, kind: "yes or no", cost: 0, to: 1 });
      const nothing = { is: ">=", level: 0 } as const;
      rows.push({ terms: [term(to, taken), term(-1, packs)], ...nothing });
      rows.push({ terms: [term(1, packs), term(-from, taken)], ...nothing });
      choices.push(term(1, taken));
      prices.push({ offer, price, packs, taken });
    }
    if (choices.length > 1) rows.push({ terms: choices, is: "<=", level: 1 });
  }
  rows.push({ terms: prices.map(({ offer, packs }) => term(offer.pack / need, packs)), is: ">=", level: 1 });
  rows.push(...roundedCovers(need, prices));
  return { columns, rows, prices };
}

/**
 * The need in whole packs of each size, every offer's packs rounded up to those: implied by whole packs, and not by the
 * need alone (Gomory's rounding; Nemhauser and Wolsey, Integer and Combinatorial Optimization (1988), from memory).
 */
function roundedCovers(need: number, prices: readonly PriceColumns[]): readonly ModelRow[] {
  const sizes = [...new Set(prices.map(({ offer }) => offer.pack))].filter((size) => size > 1);
  return sizes.map((size) => ({
    terms: prices.map(({ offer, packs }) => term(Math.ceil(offer.pack / size), packs)),
    is: ">=",
    level: Math.ceil(need / size),
  }));
}

function supplierPart(
  { suppliers }: ScaledProblem,
  parts: readonly { readonly prices: readonly PriceColumns[] }[],
  money: number,
): Part {
  const columns: ModelColumn[] = [];
  const rows: ModelRow[] = [];
  for (const [place, { shipping, freeFrom, minimum }] of suppliers.entries()) {
    if (shipping === 0 && minimum === 0) continue;
    const [used, free] = [`y${String(place)}`, `z${String(place)}`];
    const prices = parts.flatMap((part) => part.prices.filter(({ offer }) => offer.supplier === place));
    const goodsOver = (threshold: number) => prices.map(({ price, packs }) => term(price / threshold, packs));
    columns.push({ name: used, kind: "yes or no", cost: shipping * money, to: 1 });
    for (const { taken } of prices) rows.push({ terms: [term(1, used), term(-1, taken)], is: ">=", level: 0 });
    if (minimum > 0) rows.push({ terms: [...goodsOver(minimum), term(-1, used)], is: ">=", level: 0 });
    if (shipping === 0 || freeFrom === Infinity) continue;
    columns.push({ name: free, kind: "yes or no", cost: -shipping * money, to: 1 });
    rows.push({ terms: [...goodsOver(Math.max(1, freeFrom)), term(-1, free)], is: ">=", level: 0 });
    rows.push({ terms: [term(1, used), term(-1, free)], is: ">=", level: 0 });
  }
  return { columns, rows };
}

const term = (times: number, column: string): ModelTerm => ({ times, column });

/** The packs that a solver's figures stand for: each rounded to the nearest whole number. */
export function packsOfModel(model: BasketModel, valueOf: (column: string) => number): PacksByOffer {
  const packs = new Map<string, bigint>();
  for (const { offer, column } of model.packColumns) {
    const count = BigInt(Math.floor(valueOf(column) + 1 / 2));
    if (count > 0n) packs.set(offer, (packs.get(offer) ?? 0n) + count);
  }
  return packs;
}
