/**
 * Premixes made ahead: a product whose run makes a material. A formula is opened down to its materials, but not beyond
 * such a premix: how much of that is opened depends on the shelf. @rule AHEAD-1, AHEAD-2
 */
import { byCodePoint } from "./code-point-order";
import { type Composition, compositions } from "./formula";
import { type Fraction, ONE, plus, times, ZERO } from "./fraction";
import { byId } from "./index-by-id";
import { bulkOf, type Growing, type MaterialUse, usesOf } from "./needs";
import type { Formula, Material, Product, Workshop } from "./workshop";

export interface MadeAhead {
  readonly premix: Formula;
  /** What a run of the product makes, and what is drawn instead of the premix. */
  readonly material: Material;
  readonly product: Product;
}

/** A part of something's mass: of the batch itself (0), or of what is opened of a premix (1 for the first, and so on). */
export interface Share {
  readonly of: number;
  readonly fraction: Fraction;
}

/** A premix made ahead in a product, and where it comes in. */
export interface OpenedPremix extends MadeAhead {
  readonly shares: readonly Share[];
  /** The material made of it, as the product draws it. */
  readonly drawn: OpenedMaterial;
}

/** A material of such a product: as an ingredient, in packaging or once a run, and instead of a premix. */
export interface OpenedMaterial {
  readonly material: Material;
  readonly shares: readonly Share[];
  /** Its uses beside the formula; null where it has none. */
  readonly beside: MaterialUse | null;
  /** The place among the premixes of the one that it is drawn instead of; null for none. */
  readonly insteadOf: number | null;
}

/** A product whose formula holds premixes made ahead. */
export interface OpenedProduct {
  readonly product: Product;
  readonly bulk: Growing;
  /** Outermost first: what is opened of one may hold those after it, and never one before it. */
  readonly premixes: readonly OpenedPremix[];
  /** By material id. */
  readonly materials: readonly OpenedMaterial[];
  /** Everything that a run could draw, as if all of each premix were opened, and drawn from the shelf as well. */
  readonly atMost: { readonly composition: Composition; readonly uses: readonly MaterialUse[] };
}

export interface AheadBook {
  /** Outermost first. */
  readonly premixes: readonly MadeAhead[];
  /** A formula opened as far as its premixes made ahead, each of which stands in it by its mark. */
  readonly partsOf: (formula: string) => Composition;
  /** Null for a product without a premix made ahead in its formula. */
  readonly openedOf: (product: Product) => OpenedProduct | null;
}

type Books = Pick<Workshop, "formulas" | "products" | "materials">;

// While a formula is opened, a premix made ahead stands in it as a material. Ids hold no control characters.
const MARK = "\u0000";
export const markOf = ({ id }: Pick<Formula, "id">): string => MARK + id;

/** The premixes of a workshop that are made ahead, and the products that hold them; null where there are none. */
export function aheadBook({ formulas, products, materials }: Books): AheadBook | null {
  if (products.every(({ madeInto }) => madeInto === null)) return null;
  const [formulaOf, materialOf] = [byId("formula", formulas), byId("material", materials)];
  const aheadByPremix = new Map(
    products.flatMap((product) =>
      product.madeInto === null
        ? []
        : [[product.formula, { premix: formulaOf(product.formula), material: materialOf(product.madeInto), product }]],
    ),
  );
  const partsOf = compositions(formulas.map((formula) => cutAt(formula, aheadByPremix)));
  const premixes = outermostFirst([...aheadByPremix.values()], (id) => [...partsOf(id).keys()]);
  const wholeOf = compositions(formulas);
  return {
    premixes,
    partsOf,
    openedOf: (product) => {
      const reached = premixesIn(product.formula, premixes, (id) => [...partsOf(id).keys()]);
      if (reached.length === 0) return null;
      const parts = [product.formula, ...reached.map(({ premix }) => premix.id)].map(partsOf);
      return openedProduct(product, reached, parts, wholeOf(product.formula), materialOf);
    },
  };
}

/** The formula with each premix made ahead as a line of its mark. */
const cutAt = (formula: Formula, aheadByPremix: ReadonlyMap<string, unknown>): Formula => ({
  ...formula,
  lines: formula.lines.map((line) =>
    line.of.kind === "formula" && aheadByPremix.has(line.of.id)
      ? { ...line, of: { kind: "material", id: MARK + line.of.id } }
      : line,
  ),
});

/** By what each holds, as a premix or as the material made of one: no such chain leads back (AHEAD-2). */
function outermostFirst(
  all: readonly MadeAhead[],
  partsOf: (formula: string) => readonly string[],
): readonly MadeAhead[] {
  const byPart = new Map(all.flatMap((ahead) => [MARK + ahead.premix.id, ahead.material.id].map((id) => [id, ahead])));
  const innermostFirst = new Set<MadeAhead>();
  const entered = new Set<MadeAhead>();
  // A stack of its own: such chains may be of any length.
  const open = all.toSorted((a, b) => byCodePoint(b.premix.id, a.premix.id));
  for (let ahead = open.at(-1); ahead !== undefined; ahead = open.at(-1)) {
    if (entered.has(ahead)) {
      innermostFirst.add(ahead);
      open.pop();
      continue;
    }
    entered.add(ahead);
    for (const part of partsOf(ahead.premix.id)) {
      const below = byPart.get(part);
      if (below && !entered.has(below)) open.push(below);
    }
  }
  return [...innermostFirst].reverse();
}

/** The premixes made ahead that come into a formula, through one another as well. */
function premixesIn(
  formula: string,
  premixes: readonly MadeAhead[],
  partsOf: (formula: string) => readonly string[],
): readonly MadeAhead[] {
  const marks = new Set(partsOf(formula));
  return premixes.filter(({ premix }) => {
    if (!marks.has(MARK + premix.id)) return false;
    for (const part of partsOf(premix.id)) marks.add(part);
    return true;
  });
}

/**
 * @param parts  of the formula itself, and of each premix
 * @param whole  of the formula, every premix opened
 */
function openedProduct(
  product: Product,
  reached: readonly MadeAhead[],
  parts: readonly Composition[],
  whole: Composition,
  materialOf: (id: string) => Material,
): OpenedProduct {
  const sharesOf = (id: string): readonly Share[] =>
    parts.flatMap((part, of) => {
      const fraction = part.get(id);
      return fraction === undefined ? [] : [{ of, fraction }];
    });
  const beside = new Map(usesOf(product, new Map(), materialOf).map((use) => [use.material.id, use]));
  const places = new Map(reached.map(({ material }, place) => [material.id, place]));
  const openedMaterial = (id: string): OpenedMaterial => ({
    material: materialOf(id),
    shares: sharesOf(id),
    beside: beside.get(id) ?? null,
    insteadOf: places.get(id) ?? null,
  });
  const premixes = reached.map((ahead) => ({
    ...ahead,
    shares: sharesOf(MARK + ahead.premix.id),
    drawn: openedMaterial(ahead.material.id),
  }));
  const ids = new Set([...parts.flatMap((part) => [...part.keys()]), ...beside.keys(), ...places.keys()]);
  const materials = [...ids]
    .filter((id) => !id.startsWith(MARK))
    .sort(byCodePoint)
    .map(openedMaterial);
  const composition = withPremixes(whole, premixes);
  const atMost = { composition, uses: usesOf(product, composition, materialOf) };
  return { product, bulk: bulkOf(product), premixes, materials, atMost };
}

/** The composition with each premix's fraction of the finished mass added to that of the material made of it. */
function withPremixes(whole: Composition, premixes: readonly OpenedPremix[]): Composition {
  const composition = new Map(whole);
  const fractions = [ONE];
  for (const { material, shares } of premixes) {
    const own = shares.map(({ of, fraction }) => times(fractions[of] ?? ZERO, fraction)).reduce(plus, ZERO);
    fractions.push(own);
    composition.set(material.id, plus(composition.get(material.id) ?? ZERO, own));
  }
  return composition;
}

/** The materials that are drawn instead of a premix which holds this one, through other such premixes as well. */
export function premixesHolding({ premixes, materials }: OpenedProduct, { id }: Material): readonly Material[] {
  const within = new Set(materials.find(({ material }) => material.id === id)?.shares.map(({ of }) => of));
  // Outermost first: one that holds another is found before it, and so is looked at after it.
  return premixes
    .map(({ material, shares }, at) => ({ material, shares, of: at + 1 }))
    .toReversed()
    .flatMap(({ material, shares, of }) => {
      if (!within.has(of)) return [];
      for (const share of shares) within.add(share.of);
      return [material];
    });
}
