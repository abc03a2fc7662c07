/**
 * What a batch draws whose formula holds premixes made ahead: of each, what the shelf gives of the material made of it,
 * and of the rest what the premix holds. @rule AHEAD-3, AHEAD-4
 */
import { compare, type Fraction, minus, plus, roundedUp, times, whole, ZERO } from "./fraction";
import type { MadeAhead, OpenedMaterial, OpenedProduct, Share } from "./made-ahead";
import { exactFor, type MaterialUse } from "./needs";
import { type CostUse, type InsteadOf } from "./plan-figures";
import { quantity, smaller, type Stock, type Units } from "./quantity";
import type { Material } from "./workshop";

/** A batch while its premixes are opened, outermost first. It changes. */
export interface Opening {
  readonly opened: OpenedProduct;
  readonly units: Units;
  /** Exact µg: the batch itself, and what is opened of each premix so far. */
  readonly masses: Fraction[];
  /** What is drawn instead of each premix so far, exact µg. */
  readonly given: Fraction[];
}

export const openingOf = (opened: OpenedProduct, units: Units): Opening => ({
  opened,
  units,
  masses: [exactFor(opened.bulk, units)],
  given: [],
});

/** What the batch needs of the next premix, exact µg. */
export const nextPremixNeed = (opening: Opening): Fraction =>
  shareOfOpening(opening, opening.opened.premixes[opening.given.length]?.shares ?? []);

/**
 * What the batch needs of a material beside what is drawn instead of a premix, exact. It is known once every premix
 * that may hold the material is opened; of one made of a premix, when it is the turn of that premix.
 */
export const ownNeed = (opening: Opening, material: OpenedMaterial): Fraction =>
  withBeside(shareOfOpening(opening, material.shares), material.beside?.need, opening.units);

/** Draws so much instead of the next premix, and leaves the rest of it to be opened. @rule AHEAD-3 */
export function giveNext(opening: Opening, given: Fraction): void {
  const need = nextPremixNeed(opening);
  opening.given.push(given);
  opening.masses.push(compare(need, given) > 0 ? minusNested(need, given) : ZERO);
}

/** The place of a premix in the product, or -1 where it does not come in. */
export const placeOf = ({ premixes }: OpenedProduct, { premix }: MadeAhead): number =>
  premixes.findIndex((each) => each.premix === premix);

/** The material that is drawn instead of the next premix; null once all are opened. */
export const nextMaterial = ({ opened, given }: Opening): OpenedMaterial | null =>
  opened.premixes[given.length]?.drawn ?? null;

/** What a batch asks of one material, what it draws instead of a premix with it. */
export interface AheadAsk {
  readonly material: Material;
  readonly need: Stock;
  readonly least: Stock;
  readonly insteadOf: InsteadOf | null;
}

/**
 * What so many units ask of each material, where the shelf holds so much: of a material made of a premix first what
 * the batch needs of it anyway, and what is left goes before opening the premix.
 * @returns by material id; without materials of which nothing is needed
 * @rule AHEAD-3, AHEAD-4, NEED-3, NEED-4
 */
export const aheadAsks = (
  opened: OpenedProduct,
  units: Units,
  thereOf: (material: Material) => Stock,
): readonly AheadAsk[] => asksOfOpening(openedOnShelf(opened, units, thereOf));

/** A batch with all its premixes opened, as far as such a shelf leaves something of them to open. @rule AHEAD-3 */
export function openedOnShelf(opened: OpenedProduct, units: Units, thereOf: (material: Material) => bigint): Opening {
  const opening = openingOf(opened, units);
  for (let next = nextMaterial(opening); next !== null; next = nextMaterial(opening)) {
    const free = thereOf(next.material) - roundedUp(ownNeed(opening, next));
    const wanted = roundedUp(nextPremixNeed(opening));
    giveNext(opening, whole(free > 0n ? smaller(free, wanted) : 0n));
  }
  return opening;
}

/**
 * Which premixes a batch draws that had so much of each material, and of which it opens nothing.
 * @rule AHEAD-3, VERSION-6
 */
export function openedFrom(
  opened: OpenedProduct,
  units: Units,
  drawnOf: (material: Material) => bigint,
): { readonly given: readonly Material[]; readonly untouched: ReadonlySet<string> } {
  const { masses, given } = openedOnShelf(opened, units, drawnOf);
  return {
    given: opened.premixes.filter((_, at) => (given[at] ?? ZERO).over > 0n).map(({ material }) => material),
    untouched: new Set(
      opened.premixes.filter((_, at) => (masses[at + 1] ?? ZERO).over === 0n).map(({ premix }) => premix.id),
    ),
  };
}

/** What a batch asks of each material once all its premixes are opened. */
export const asksOfOpening = (opening: Opening): readonly AheadAsk[] =>
  opening.opened.materials.flatMap((each) => {
    const { material, shares, beside } = each;
    const ingredient = shareOfOpening(opening, shares);
    const insteadOf = insteadOfPremix(opening, each);
    const given = insteadOf?.quantity ?? 0n;
    const need = quantity<Stock>(roundedUp(withBeside(ingredient, beside?.need, opening.units)) + given);
    const least = quantity<Stock>(roundedUp(withBeside(ingredient, beside?.least, opening.units)) + given);
    return need === 0n ? [] : [{ material, need, least, insteadOf }];
  });

function insteadOfPremix({ opened, given }: Opening, { insteadOf }: OpenedMaterial): InsteadOf | null {
  const premix = insteadOf === null ? undefined : opened.premixes[insteadOf];
  const drawn = roundedUp(given[insteadOf ?? 0] ?? ZERO);
  return premix === undefined || drawn === 0n ? null : { premix: premix.premix, quantity: quantity<Stock>(drawn) };
}

/** The largest number of units whose least is there, and the first material by id that one more would lack. @rule MAKE-3 */
export function mostAhead(
  opened: OpenedProduct,
  planned: Units,
  thereOf: (material: Material) => Stock,
): { readonly mostUnits: Units; readonly limiting: Material } {
  const lackingFor = (units: bigint): Material | null =>
    aheadAsks(opened, quantity<Units>(units), thereOf).find(({ material, least }) => least > thereOf(material))
      ?.material ?? null;
  let [enough, tooMany] = [0n, 1n];
  // Both needs grow with the units, so that they meet: the shelf holds no more than so much.
  while (lackingFor(tooMany) === null) [enough, tooMany] = [tooMany, tooMany < planned ? planned : 2n * tooMany];
  while (tooMany - enough > 1n) {
    const middle = (enough + tooMany) / 2n;
    if (lackingFor(middle) === null) enough = middle;
    else tooMany = middle;
  }
  const limiting = lackingFor(tooMany);
  if (limiting === null) throw new Error("more units than the shelf allows lack nothing");
  return { mostUnits: quantity<Units>(enough), limiting };
}

/** What a usual run would draw today of one material, exact. */
export interface ExactUse {
  readonly material: Material;
  readonly inUsualRun: Fraction;
  readonly uses: readonly { readonly as: CostUse["as"]; readonly inUsualRun: Fraction }[];
}

/** What the product's usual run would draw of a shelf, with needs not rounded. @rule AHEAD-6, COST-4 */
export function exactAheadUses(opened: OpenedProduct, thereOf: (material: Material) => Stock): readonly ExactUse[] {
  const units = opened.product.usualRun;
  const opening = openingOf(opened, units);
  for (let next = nextMaterial(opening); next !== null; next = nextMaterial(opening)) {
    const free = minusNested(whole(thereOf(next.material)), ownNeed(opening, next));
    const wanted = nextPremixNeed(opening);
    giveNext(opening, free.over <= 0n ? ZERO : compare(free, wanted) < 0 ? free : wanted);
  }
  return opened.materials.flatMap(({ material, shares, beside, insteadOf }) => {
    const ingredient = plusNested(
      shareOfOpening(opening, shares),
      insteadOf === null ? ZERO : (opening.given[insteadOf] ?? ZERO),
    );
    const uses = [
      ...(ingredient.over === 0n ? [] : [{ as: "ingredient" as const, inUsualRun: ingredient }]),
      ...(beside?.uses ?? []).map(({ as, need }) => ({ as, inUsualRun: exactFor(need, units) })),
    ];
    const inUsualRun = uses.map((use) => use.inUsualRun).reduce(plusNested, ZERO);
    return uses.length === 0 ? [] : [{ material, inUsualRun, uses }];
  });
}

/** What such shares of an opened batch, and of what is opened of its premixes, come to. Exact µg. */
export const shareOfOpening = ({ masses }: Opening, shares: readonly Share[]): Fraction =>
  shares.map(({ of, fraction }) => times(masses[of] ?? ZERO, fraction)).reduce(plusNested, ZERO);

const withBeside = (ingredient: Fraction, beside: MaterialUse["need"] | undefined, units: Units): Fraction =>
  beside === undefined ? ingredient : plusNested(ingredient, exactFor(beside, units));

/** Denominators here are mostly one power of a million times another: the larger is then common to both. */
function plusNested(a: Fraction, b: Fraction): Fraction {
  if (a.over === 0n) return b;
  if (b.over === 0n) return a;
  if (a.under % b.under === 0n) return { over: a.over + b.over * (a.under / b.under), under: a.under };
  if (b.under % a.under === 0n) return { over: a.over * (b.under / a.under) + b.over, under: b.under };
  return plus(a, b);
}

const minusNested = (a: Fraction, b: Fraction): Fraction =>
  b.over === 0n ? minus(a, b) : plusNested(a, { over: -b.over, under: b.under });
