/** Legal maxima: those that the maker copied, and those that ship. @rule CHECK-2, CHECK-3 */
import type { Composition } from "@/lib/domain/formula";
import { compare, type Fraction, plus, ratio, times, ZERO } from "@/lib/domain/fraction";
import { decimalValue, shareOf, WHOLE } from "@/lib/domain/quantity";
import type { Formula, Material } from "@/lib/domain/workshop";
import type { LegalLimit, Market, WayOfUse } from "./facts";
import type { Finding } from "./findings";
import { PUBLISHED_LIMITS, type PublishedLimit } from "./published-limits";

type Limit = Pick<LegalLimit, "market" | "use" | "substance" | "maximum" | "source" | "copied">;

/** One maximum, and every material that counts towards it. */
interface Counted {
  readonly limit: Limit;
  readonly parts: readonly { readonly material: Material; readonly countsAs: Fraction }[];
}

/**
 * Each maximum of the formula's market against what its materials bring of the substance, together.
 * A formula that does not say how it is used is held against the maxima of every use.
 */
export function limitFindings(
  formula: Formula,
  composition: Composition,
  inIt: readonly Material[],
): readonly Finding[] {
  const { market } = formula;
  if (market === null) {
    const limited = inIt.filter((material) => isLimited(material));
    return limited.length === 0 ? [] : [{ code: "no market", limited }];
  }
  const counted = [...copied(inIt, market), ...published(inIt, market)];
  const applies = counted.filter(({ limit }) => bears(limit.use, formula.use));
  const over = applies.flatMap(({ limit, parts }): readonly Finding[] => {
    const amount = parts
      .map(({ material, countsAs }) => times(composition.get(material.id) ?? ZERO, countsAs))
      .reduce(plus, ZERO);
    if (compare(amount, ratio(limit.maximum, WHOLE)) <= 0) return [];
    return [{ code: "over a legal maximum", ...limit, amount, materials: parts.map(({ material }) => material) }];
  });
  return [...over, ...withoutOneForThisUse(counted, applies), ...withoutPublished(market, inIt)];
}

/** Where no published row is held for a market, silence is no answer. */
const withoutPublished = (market: Market, inIt: readonly Material[]): readonly Finding[] =>
  inIt.length === 0 || PUBLISHED_LIMITS.some((limit) => limit.market === market)
    ? []
    : [{ code: "no published maxima", market }];

const bears = (limited: WayOfUse | null, used: WayOfUse | null): boolean =>
  limited === null || used === null || limited === used;

/** A substance with a maximum for the other use alone may not be allowed in this one at all. */
function withoutOneForThisUse(counted: readonly Counted[], applies: readonly Counted[]): readonly Finding[] {
  const looked = new Set(applies.map(({ limit }) => limit.substance));
  return counted
    .map(({ limit }) => limit)
    .flatMap(({ substance, use, source }): readonly Finding[] =>
      use === null || looked.has(substance)
        ? []
        : [{ code: "no limit held for this use", substance, heldFor: use, source }],
    );
}

const isLimited = (material: Material): boolean =>
  material.limits.length > 0 || PUBLISHED_LIMITS.some((limit) => countsTowards(material, limit) !== null);

/** What makers copied, the materials with one substance together; of several maxima for it, each is held. */
function copied(inIt: readonly Material[], market: Market): readonly Counted[] {
  const rows = inIt.flatMap((material) =>
    material.limits.filter((limit) => limit.market === market).map((limit) => ({ material, limit })),
  );
  const byMaximum = new Map<string, (typeof rows)[number][]>();
  for (const row of rows) {
    const { substance, use, maximum } = row.limit;
    const key = JSON.stringify([substanceKey(substance), use, String(maximum)]);
    const same = byMaximum.get(key);
    if (same) same.push(row);
    else byMaximum.set(key, [row]);
  }
  return [...byMaximum.values()].flatMap((same) => {
    const [first] = same;
    if (first === undefined) return [];
    // Whatever maximum or use its own row says, a material with this substance brings it in.
    const bringing = rows.filter(({ limit }) => substanceKey(limit.substance) === substanceKey(first.limit.substance));
    const parts = new Map<string, { readonly material: Material; readonly countsAs: Fraction }>();
    for (const { material, limit } of bringing) {
      const countsAs = decimalValue(limit.countsAs);
      const before = parts.get(material.id);
      if (!before || compare(countsAs, before.countsAs) > 0) parts.set(material.id, { material, countsAs });
    }
    return [{ limit: limitOf(first.limit), parts: [...parts.values()] }];
  });
}

const substanceKey = (substance: string): string => substance.trim().toLowerCase();

const limitOf = ({ market, use, substance, maximum, source, copied }: LegalLimit | PublishedLimit): Limit => ({
  market,
  use,
  substance,
  maximum,
  source,
  copied,
});

const published = (inIt: readonly Material[], market: Market): readonly Counted[] =>
  PUBLISHED_LIMITS.filter((limit) => limit.market === market).flatMap((limit) => {
    const parts = inIt.flatMap((material) => {
      const countsAs = countsTowards(material, limit);
      return countsAs === null ? [] : [{ material, countsAs }];
    });
    return parts.length === 0 ? [] : [{ limit: limitOf(limit), parts }];
  });

/** Grams of the limited substance in a gram of the material, by what it is composed of; null for none. */
function countsTowards({ composition }: Material, { countsAs }: PublishedLimit): Fraction | null {
  const parts = composition.flatMap(({ inci, share }) => {
    const factor = countsAs.get(substanceKey(inci));
    return factor === undefined ? [] : [times(shareOf(share), factor)];
  });
  return parts.length === 0 ? null : parts.reduce(plus, ZERO);
}
