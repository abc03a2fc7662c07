import { type Fraction, roundedHalfAway, times, whole } from "@/lib/domain/fraction";
import type { Sway, SwayInput } from "@/lib/domain/sway";
import { quantity } from "@/lib/domain/quantity";
import { MINUS } from "@/lib/edge/shown-digits";
import { moneyShown, priceShown, rateShown } from "@/lib/edge/figures";
import { NO_BREAK } from "@/lib/edge/shown-digits";
import type { SwayBar } from "@/app/_ui/sway-drawing";
import type { CostView } from "./cost-view";
import type { Sold } from "./sold";

/** One input with what is kept more or less where it is a tenth less, and where it is a tenth more. */
export interface SwayRow extends SwayBar {
  readonly less: string;
  readonly more: string;
  readonly worseWhen: Sway["worseWhen"];
  /** How both ends come about. */
  readonly how: string;
  /** It moves what is kept at all. */
  readonly moves: boolean;
}

export function swayRow(sway: Sway, sold: Sold, view: CostView): SwayRow {
  const { worse, better, worseWhen, input } = sway;
  const shown = (change: Fraction): string => changeShown(change, view);
  const [worseShown, betterShown] = [shown(worse), shown(better)];
  return {
    name: inputName(input, sold, view),
    how: howWords(sway, sold, view),
    worse: drawn(worse),
    better: drawn(better),
    worseShown,
    betterShown,
    worseWhen,
    less: worseWhen === "less" ? worseShown : betterShown,
    more: worseWhen === "more" ? worseShown : betterShown,
    moves: worse.over !== 0n || better.over !== 0n,
  };
}

/** Millionths as a number: for lengths that are drawn, never for a figure that is read. */
const drawn = (change: Fraction): number => Number(roundedHalfAway(times(change, whole(1n))));

/** `+£0.68`, `−£0.68`, `£0.00`. */
export const changeShown = (change: Fraction, { currency }: CostView): string =>
  change.over > 0n ? `+${moneyShown(change, currency)}` : moneyShown(change, currency);

export const isWorse = (shown: string): boolean => shown.startsWith(MINUS);

/** Each end worked out from what of one unit hangs on the input. @rule SWAY-1 to SWAY-4 */
function howWords({ input, of }: Sway, sold: Sold, { currency, product }: CostView): string {
  const amount = moneyShown(of, currency, 2);
  switch (input.kind) {
    case "price":
      return sold === "shops"
        ? `a tenth of ${amount}`
        : `a tenth of ${amount}, what is left of it after tax and the fee in percent`;
    case "units per run":
      return `${amount} of the run’s own costs on each, shared by a tenth fewer units or more`;
    case "labour rate":
    case "overhead rate":
    case "material price":
      return `a tenth of ${amount} in each`;
    case "process loss":
      return `${amount} of ingredients in each, at a loss of ${rateShown(lossAt(product, 9n))} or ${rateShown(lossAt(product, 11n))} in place of ${rateShown(product.processLoss)}`;
  }
}

/** The loss, where it is so many tenths of what it is. */
const lossAt = ({ processLoss }: CostView["product"], tenths: bigint): CostView["product"]["processLoss"] =>
  quantity((processLoss * tenths) / 10n);

function inputName(input: SwayInput, sold: Sold, { settings, currency, product }: CostView): string {
  switch (input.kind) {
    case "price":
      return `Price to ${sold}`;
    case "units per run":
      return `Units in a run, ${product.usualRun.toString()}`;
    case "labour rate":
      return `Labour, ${priceShown(settings.labourPerHour, currency)} an${NO_BREAK}hour`;
    case "overhead rate":
      return `Overhead, ${priceShown(settings.overheadPerHour, currency)} an${NO_BREAK}hour`;
    case "material price":
      return input.material.name;
    case "process loss":
      return `Process loss, ${rateShown(product.processLoss)}`;
  }
}
