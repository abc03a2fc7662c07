import type { Day } from "@/lib/domain/calendar";
import type { MaterialFigures } from "@/lib/domain/plan-changes";
import type { MaterialOutlook } from "@/lib/domain/plan-figures";
import type { RunInstead } from "@/lib/domain/run-instead";
import type { Stock } from "@/lib/domain/quantity";
import type { Material, Offer, Product, Supplier, Workshop } from "@/lib/domain/workshop";
import { countShown } from "@/lib/edge/figures";
import { NO_BREAK } from "@/lib/edge/shown-digits";
import type { RibbonAxis } from "@/lib/edge/ribbon-axis";

/** What every row of the shelf needs beside its own material. */
export interface Shelf {
  readonly workshop: Workshop;
  readonly today: Day;
  readonly lastDay: Day;
  readonly axis: RibbonAxis;
  readonly productOf: (id: string) => Product;
  readonly supplierOf: (id: string) => Supplier;
  readonly offersOf: (material: Material) => readonly Offer[];
  /** What is on hold of each lot, by its id; a lot of which nothing is held is not in it. @rule LEDGER-14 */
  readonly held: ReadonlyMap<string, Stock>;
  /** The ids of the materials that are due for a count. */
  readonly countDue: ReadonlySet<string>;
  /** The run that makes what is lacking of a material, by its id. @rule AHEAD-9 */
  readonly instead: ReadonlyMap<string, RunInstead>;
  /** The materials whose figures the last change altered, by id, with what they were. */
  readonly before: ReadonlyMap<string, MaterialFigures>;
}

export interface MaterialPart {
  readonly outlook: MaterialOutlook;
  readonly shelf: Shelf;
}

/** `comes in 3 working days`. */
export const leadWords = ({ leadDays, leadCounts }: Supplier): string =>
  `comes in ${countShown(leadDays)}${NO_BREAK}${leadCounts === "working" ? "working " : ""}${leadDays === 1 ? "day" : "days"}`;
