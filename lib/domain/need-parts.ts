/** How what a run asks of each material comes about, use by use. @rule NEED-1 to NEED-3, AHEAD-3 */
import { openedOnShelf, type Opening, ownNeed, shareOfOpening } from "./ahead-needs";
import type { RunToJudge } from "./feasibility";
import { dividedBy, type Fraction, roundedUp, total, whole, ZERO } from "./fraction";
import type { OpenedProduct, Share } from "./made-ahead";
import { bulkOf, exactFor } from "./needs";
import type { Stock } from "./quantity";
import type { Formula, Material, PackagingItem, PerRunItem } from "./workshop";

/** So much of what is in the vessel, or of what is made anew of a premix. Exact µg. */
export interface SharePart {
  /** The premix of which so much is made anew; null for what the vessel holds. */
  readonly of: Formula | null;
  readonly mass: Fraction;
  readonly fraction: Fraction;
  readonly quantity: Fraction;
}

/** One use of a material. The quantities of all, added up and then rounded up, are what the run needs of it. */
export type NeedPart =
  | ({ readonly kind: "share" } & SharePart)
  | { readonly kind: "instead"; readonly premix: Formula; readonly quantity: Fraction }
  | { readonly kind: "packaging"; readonly item: PackagingItem; readonly quantity: Fraction }
  | { readonly kind: "per run"; readonly item: PerRunItem; readonly quantity: Fraction }
  /** What the lines of its open batch still lack; so much is weighed. */
  | { readonly kind: "still to weigh"; readonly weighed: Stock; readonly quantity: Fraction };

/** A premix made ahead: what the run needs of it, what the shelf gives of what was made of it, and the rest. */
export interface PremixPart {
  readonly premix: Formula;
  readonly material: Material;
  readonly shares: readonly SharePart[];
  readonly need: Fraction;
  /** What there is of the material at the run's turn, and what the run needs of it anyway. */
  readonly there: Stock;
  readonly ownNeed: Fraction;
  readonly given: Fraction;
  /** Exact; what is made new on the way. */
  readonly anew: Fraction;
}

export interface NeedParts {
  /** What the vessel must hold, exact µg. */
  readonly bulk: Fraction;
  /** Outermost first; without those of which nothing is needed. */
  readonly premixes: readonly PremixPart[];
  readonly partsOf: (material: Material) => readonly NeedPart[];
}

/**
 * The parts of what a run asks.
 * @param thereOf  what the shelf holds of a material at the run's turn
 */
export function needParts(toJudge: RunToJudge, thereOf: (material: Material) => Stock): NeedParts {
  const { run, product, opened } = toJudge;
  const bulk = exactFor(bulkOf(product), run.units);
  if (opened === null) return { bulk, premixes: [], partsOf: (material) => plainParts(toJudge, bulk, material) };
  const opening = openedOnShelf(opened, run.units, thereOf);
  return {
    bulk,
    premixes: premixParts(opening, thereOf),
    partsOf: (material) => [...sharesAhead(opening, material), ...besideParts(toJudge, material)],
  };
}

function plainParts(toJudge: RunToJudge, bulk: Fraction, material: Material): readonly NeedPart[] {
  const { run, asks } = toJudge;
  const ask = asks.find(({ use }) => use.material === material);
  const beside = besideParts(toJudge, material);
  if (ask?.inBatch !== undefined) {
    const rest = ask.need - roundedUpOf(beside);
    return [{ kind: "still to weigh", weighed: ask.inBatch, quantity: whole(rest) }, ...beside];
  }
  const ingredient = ask?.use.uses.find(({ as }) => as === "ingredient");
  if (ingredient === undefined) return beside;
  const need = exactFor(ingredient.need, run.units);
  return [{ kind: "share", of: null, mass: bulk, fraction: dividedBy(need, bulk), quantity: need }, ...beside];
}

const roundedUpOf = (parts: readonly NeedPart[]): bigint => roundedUp(total(parts.map((part) => part.quantity)));

/** In packaging and once a run. */
function besideParts({ run, product }: RunToJudge, { id }: Material): readonly NeedPart[] {
  const packaging = product.packaging
    .filter(({ material }) => material === id)
    .map((item): NeedPart => ({
      kind: "packaging",
      item,
      quantity: { over: run.units * item.amount.quantity * 1_000_000n, under: 1_000_000n - item.spoilage },
    }));
  const perRun = product.perRun
    .filter(({ material }) => material === id)
    .map((item): NeedPart => ({ kind: "per run", item, quantity: whole(item.amount.quantity) }));
  return [...packaging, ...perRun];
}

function sharesAhead(opening: Opening, material: Material): readonly NeedPart[] {
  const { opened, given } = opening;
  const found = opened.materials.find((each) => each.material === material);
  if (found === undefined) return [];
  const premix = found.insteadOf === null ? undefined : opened.premixes[found.insteadOf];
  const instead = given[found.insteadOf ?? 0] ?? ZERO;
  return [
    ...sharesOf(opening, found.shares).map((share): NeedPart => ({ kind: "share", ...share })),
    ...(premix && instead.over > 0n ? [{ kind: "instead" as const, premix: premix.premix, quantity: instead }] : []),
  ];
}

/** Those that come to something. */
const sharesOf = (opening: Opening, shares: readonly Share[]): readonly SharePart[] =>
  shares
    .map((share) => ({
      of: share.of === 0 ? null : premixAt(opening.opened, share.of - 1),
      mass: opening.masses[share.of] ?? ZERO,
      fraction: share.fraction,
      quantity: shareOfOpening(opening, [share]),
    }))
    .filter((part) => part.quantity.over > 0n);

const premixAt = ({ premixes }: OpenedProduct, at: number): Formula | null => premixes[at]?.premix ?? null;

function premixParts(opening: Opening, thereOf: (material: Material) => Stock): readonly PremixPart[] {
  return opening.opened.premixes.flatMap(({ premix, material, shares, drawn }, at) => {
    const need = shareOfOpening(opening, shares);
    if (need.over === 0n) return [];
    // Its own need is known at its turn, when only the premixes before it are opened.
    const before = { ...opening, masses: opening.masses.slice(0, at + 1) };
    return [
      {
        premix,
        material,
        shares: sharesOf(opening, shares),
        need,
        there: thereOf(material),
        ownNeed: ownNeed(before, drawn),
        given: opening.given[at] ?? ZERO,
        anew: opening.masses[at + 1] ?? ZERO,
      },
    ];
  });
}
