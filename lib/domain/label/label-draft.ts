/** A label as it would be printed: what the maker typed, what the formula and the batch say. @rule LABEL-1 to LABEL-5 */
import { type Day, daysAfter } from "@/lib/domain/calendar";
import type { FormulaFacts, WayOfUse } from "@/lib/domain/formula-book/facts";
import type { DecimalText } from "@/lib/domain/quantity";
import type { Product } from "@/lib/domain/workshop";
import { type Durability, durabilityOf } from "./durability";
import { type AddedMaterial, type IngredientList, ingredientList } from "./ingredient-list";
import type { Label, LabelledBatch } from "./label";
import { type NetContent, netContent } from "./net-content";

export interface LabelSubject {
  readonly label: Label;
  readonly product: Pick<Product, "name" | "fill">;
  /** Of the version that the batch was made by. */
  readonly formula: Pick<FormulaFacts, "use" | "phFrom" | "phTo" | "keepsDays">;
  /** Everything in the finished product, premixes opened. */
  readonly added: readonly AddedMaterial[];
  /** Null where labels are looked at before there is one. */
  readonly batch: LabelledBatch | null;
  readonly today: Day;
}

export interface PhRange {
  readonly from: DecimalText | null;
  readonly to: DecimalText | null;
}

export interface LabelDraft extends Pick<
  Label,
  "market" | "function" | "cautions" | "responsible" | "address" | "contact" | "madeIn" | "gtin" | "code"
> {
  readonly title: string;
  readonly use: WayOfUse | null;
  readonly net: NetContent;
  readonly ingredients: IngredientList;
  readonly durability: Durability;
  /** Months after opening, also where the day is on the label. */
  readonly monthsOpen: number | null;
  readonly batchCode: string | null;
  readonly bestBefore: Day | null;
  /** Where the maker wants it on the label. */
  readonly made: Day | null;
  readonly ph: PhRange | null;
}

/** Everything that a label says, before it is laid out. */
export function labelDraft({ label, product, formula, added, batch, today }: LabelSubject): LabelDraft {
  const madeOn = batch?.madeOn ?? today;
  const planned = formula.keepsDays === null ? null : daysAfter(madeOn, formula.keepsDays);
  const bestBefore = batch?.bestBefore ?? planned;
  return {
    market: label.market,
    title: label.title ?? product.name,
    function: label.function,
    use: formula.use,
    net: netContent(product.fill.typed, label.market),
    ingredients: ingredientList(added, formula.use),
    durability: durabilityOf(madeOn, bestBefore, label.monthsOpen),
    monthsOpen: label.monthsOpen,
    batchCode: batch?.code ?? null,
    bestBefore,
    made: label.showsMade && batch !== null ? batch.madeOn : null,
    ph: label.showsPh ? phOf(formula, batch?.ph ?? null) : null,
    cautions: label.cautions,
    responsible: label.responsible,
    address: label.address,
    contact: label.contact,
    madeIn: label.madeIn,
    gtin: label.gtin,
    code: label.code,
  };
}

/** What was measured, else what was aimed at; null where neither is known. */
function phOf({ phFrom, phTo }: Pick<FormulaFacts, "phFrom" | "phTo">, measured: DecimalText | null): PhRange | null {
  if (measured !== null) return { from: measured, to: measured };
  return phFrom === null && phTo === null ? null : { from: phFrom, to: phTo };
}
