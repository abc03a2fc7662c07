/** The figures of a report, each printed once rounded and held to the largest that a reader can take. @rule QTY-6 */
import { type Fraction, roundedHalfAway, roundedHalfEven } from "@/lib/domain/fraction";
import { moneyText } from "@/lib/domain/money";
import { LARGEST_FIGURE, type Measure, type Stock } from "@/lib/domain/quantity";
import type { FaultList } from "./fault-list";
import { escaped, quoted } from "./shown-value";
import { exactStockText, stockText } from "./written-figures";

/** Prints the figures of one record, each called by what it is; the first that is out of range is told. @rule QTY-6 */
export interface Figures {
  readonly money: (figure: string, microUnits: Fraction, decimals: number) => string;
  readonly exact: (figure: string, quantity: Fraction, measure: Measure) => string;
  readonly stock: (figure: string, quantity: Stock, measure: Measure) => string;
  readonly units: (figure: string, units: bigint) => number;
}

export function figures(
  path: string,
  record: { readonly id: string; readonly name?: string },
  faults: FaultList,
): Figures {
  let isTold = false;
  const hold = (figure: string, rounded: bigint, unit: string): void => {
    if (rounded <= LARGEST_FIGURE || isTold) return;
    isTold = true;
    const who = record.name === undefined ? quoted(record.id) : `${quoted(record.id)} (${escaped(record.name)})`;
    faults.tell(path, `${who}: ${figure} is out of range (above 2^53-1 ${unit}); look for an amount that is too large`);
  };
  const unitOf = (measure: Measure): string => (measure === "mass" ? "µg" : "pieces");
  return {
    money: (figure, microUnits, decimals) => {
      hold(figure, roundedHalfAway(microUnits), "micro-units");
      return moneyText(microUnits, decimals);
    },
    exact: (figure, quantity, measure) => {
      hold(figure, roundedHalfEven(quantity), unitOf(measure));
      return exactStockText(quantity, measure);
    },
    stock: (figure, quantity, measure) => {
      hold(figure, quantity, unitOf(measure));
      return stockText(quantity, measure);
    },
    units: (figure, units) => {
      hold(figure, units, "units");
      return Number(units);
    },
  };
}
