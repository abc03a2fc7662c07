import type { ReactNode } from "react";
import { dividedBy, type Fraction, minus, roundedDown, times, whole } from "@/lib/domain/fraction";
import { moneyShown, shareShown } from "@/lib/edge/figures";
import { JarSection } from "@/app/_ui/jar-section";
import type { CostView } from "./cost-view";

/** What the cost of one unit is made of, as layers of a jar; nothing where it is not known or costs nothing. */
export function CostJar({ view }: { readonly view: CostView }): ReactNode {
  const { cost, breakdown, currency } = view;
  const { perUnit, ingredients, packaging } = cost;
  if (perUnit === null || ingredients === null || packaging === null || perUnit.over === 0n) return null;
  const losses = breakdown.losses?.cost ?? whole(0n);
  const parts: readonly (readonly [string, Fraction])[] = [
    ["Ingredients", minus(ingredients, losses)],
    ["Losses", losses],
    ["Packaging", packaging],
    ["Labour", cost.labour],
    ["Overhead", cost.overhead],
  ];
  const layers = parts
    .filter(([, part]) => part.over > 0n)
    .map(([name, part]) => {
      const share = dividedBy(part, perUnit);
      return {
        name,
        share: Number(roundedDown(times(share, whole(100_000n)))) / 100_000,
        figure: moneyShown(part, currency),
        shareShown: shareShown(share),
      };
    });
  return (
    <section className="block" aria-label="What the cost is made of">
      <JarSection whole={moneyShown(perUnit, currency)} layers={layers} />
    </section>
  );
}
