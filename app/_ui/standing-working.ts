/** What stands of a material at the end of a day, as lines: what is there, what comes, what each run needs. @rule PLAN-5 */
import type { Day } from "@/lib/domain/calendar";
import { type Standing, type StandingChange } from "@/lib/domain/standing-until";
import type { Material, Run } from "@/lib/domain/workshop";
import { dayShown, stockInFull } from "@/lib/edge/figures";
import { figuresThatAdd } from "@/lib/edge/figures-that-add";
import type { WorkingLine } from "./working";

export interface StandingView {
  readonly material: Pick<Material, "measure">;
  readonly today: Day;
  readonly productOf: (id: string) => { readonly name: string };
  /** What is said of a lot that comes in, where it is not called by its name. */
  readonly called?: (lot: string) => string | null;
  /** How its figures are shown, so that all have the same decimals; in full unless told. */
  readonly figure?: (held: bigint) => string;
}

/** Figures for what is there, each change and what is then left: they add up as they are printed. */
export function standingFigures(
  onHand: bigint,
  standings: readonly Standing[],
  { measure }: Pick<Material, "measure">,
): (held: bigint) => string {
  const sums = standings.map(({ changes, left }, at) => [
    standings[at - 1]?.left ?? onHand,
    ...changes.map((change) =>
      change.kind === "drawn" ? -change.need : change.kind === "arrived" ? change.quantity : -change.quantity,
    ),
    left,
  ]);
  return figuresThatAdd(sums, measure);
}

/** How it begins. */
export const onHandLine = (onHand: bigint, view: Pick<StandingView, "material" | "figure">): WorkingLine => ({
  figure: signedStock(onHand, view),
  reason: "on the shelf and usable today",
});

/** What happens until then, and what is then left. */
export const standingLines = (standing: Standing, says: string, view: StandingView): readonly WorkingLine[] => [
  ...standing.changes.map((change) => changeLine(change, view)),
  { figure: signedStock(standing.left, view), reason: says, isResult: true },
];

/** Below zero it is owed. */
export function signedStock(
  held: bigint,
  { material: { measure }, figure }: Pick<StandingView, "material" | "figure">,
): string {
  if (figure) return figure(held);
  return held < 0n ? `−${stockInFull(-held, measure)}` : stockInFull(held, measure);
}

export const onDay = (day: Day, today: Day): string => (day === today ? "today" : dayShown(day, today));

function changeLine(change: StandingChange, view: StandingView): WorkingLine {
  const { today, called } = view;
  const on = onDay(change.day, today);
  const figure = (held: bigint): string => signedStock(held, view);
  switch (change.kind) {
    case "drawn":
      return { operator: "−", figure: figure(change.need), reason: runOn(change.run, change.day, view) };
    case "arrived": {
      const what = called?.(change.lot) ?? `lot ${change.lot}`;
      return { operator: "+", figure: figure(change.quantity), reason: `comes in ${on}, ${what}` };
    }
    case "written off": {
      const what = called?.(change.lot) ?? `lot ${change.lot}`;
      return { operator: "−", figure: figure(change.quantity), reason: `written off ${on}, out of date, ${what}` };
    }
  }
}

/** The run by its product and day; a long shelf has hundreds of these lines, so that they are text. */
export const runOn = (run: Run, day: Day, { productOf, today }: Pick<StandingView, "productOf" | "today">): string =>
  `${productOf(run.product).name}, ${onDay(day, today)}`;
