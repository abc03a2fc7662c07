/**
 * Invented workshop files, valid by construction and as different from one another as the format allows: for the
 * comparison with the second implementation, for laws and for benches.
 */
import fc from "fast-check";
import {
  chance,
  dateAfter,
  decimalText,
  type Dice,
  diceFrom,
  idsFor,
  percentText,
  perhaps,
  pick,
  shuffled,
} from "./random-dice";
import { stockText } from "./random-quantities";
import { randomFormulas, randomProduct, randomRun } from "./random-recipes";
import { lotIds, randomClosedDays, randomLots, randomOffers, randomOrder, randomSupplier } from "./random-stock";
import { smallerWorkshops } from "./smaller-workshops";
import type { FileMaterial, FileProduct, FileRun, WorkshopFile } from "../second/file-shape";
import { found, leastOf, needOf, shares, usesOf } from "../second/needs";

/** The day that counts where an invented workshop sets none. */
export const REAL_TODAY = "2026-11-25";

export interface WorkshopSize {
  readonly materials: number;
  readonly suppliers: number;
  readonly formulas: number;
  readonly linesAFormula: number;
  readonly products: number;
  readonly runs: number;
  readonly orders: number;
  readonly lotsAMaterial: number;
  readonly offersAMaterial: number;
}

const TODAYS = ["2026-11-25", "2026-11-28", "2026-11-29", "2026-12-31", "2028-02-29", "2027-03-26", "2025-01-01"];
const CURRENCIES = ["GBP", "GBP", "JPY", "KWD", "UYW", "ZZZ", "EUR", "CLF", "ISK", "TND"];

function randomMaterial(dice: Dice, id: string, isWeighed: boolean): FileMaterial {
  const material: FileMaterial = {
    id,
    name: `Material ${id}`,
    kind: pick(dice, ["ingredient", "packaging", "consumable"]),
    measure: isWeighed ? "mass" : "count",
    ...perhaps(dice, "density", isWeighed ? 60 : 0, () =>
      pick(dice, ["0.9", "1", "1.2613", "0.789321", decimalText(dice, 1, 6)]),
    ),
    ...perhaps(dice, "safetyDays", 45, () => pick(dice, [0, 1, 3, 7, dice.whole(0, 60)])),
    ...perhaps(dice, "useMin", 20, () => pick(dice, ["0", "0.5"])),
    ...perhaps(dice, "useMax", 20, () => pick(dice, ["0.5", "5", "100"])),
    ...perhaps(dice, "addBelow", 20, () => pick(dice, ["40", "45.5"])),
  };
  const safetyStock = perhaps(dice, "safetyStock", 50, () =>
    chance(dice, 10) ? (isWeighed ? "0 g" : "0 each") : stockText(dice, dice.whole(1, 300), material),
  );
  return { ...material, ...safetyStock };
}

/** What the runs would take of each material: several amounts, to stock just enough or just too little of it. */
function wantedByMaterial(
  formulas: WorkshopFile["formulas"],
  materials: readonly FileMaterial[],
  products: readonly FileProduct[],
  runs: readonly FileRun[],
): (material: FileMaterial) => readonly bigint[] {
  const bare = { formulas, materials } as unknown as WorkshopFile;
  const share = new Map(products.map((product) => [product.id, shares(bare, product.formula)]));
  const wanted = new Map<FileMaterial, bigint[]>(materials.map((material) => [material, []]));
  for (const run of runs) {
    const product = found(products, run.product);
    for (const [material, uses] of usesOf(bare, product, share.get(product.id) ?? new Map(), BigInt(run.units)))
      wanted.get(material)?.push(needOf(uses), leastOf(uses));
  }
  return (material) => wanted.get(material) ?? [];
}

function randomSettings(dice: Dice, today: string, horizonDays: number | undefined): WorkshopFile["workshop"] {
  return {
    name: "An invented workshop",
    currency: pick(dice, CURRENCIES),
    ...(today === REAL_TODAY ? perhaps(dice, "today", 70, () => today) : { today }),
    ...(horizonDays === undefined ? {} : { horizonDays }),
    ...perhaps(dice, "coverDays", 60, () => pick(dice, [0, 1, 7, 14, dice.whole(0, 90)])),
    labourPerHour: pick(dice, ["0", "14.00", decimalText(dice, 60, 6)]),
    overheadPerHour: pick(dice, ["0.00", "3.20", decimalText(dice, 20, 6)]),
    balanceStep: pick(dice, ["0.1 g", "0.01 g", "1 g", "0.001 mg"]),
    ...perhaps(dice, "closedDays", 50, () => randomClosedDays(dice, today)),
    ...perhaps(dice, "taxPercent", 40, () => percentText(dice, pick(dice, [0, 200_000, 55_000, 1_000_000]))),
    ...perhaps(dice, "paymentFeePercent", 40, () => percentText(dice, pick(dice, [0, 19_000, 999_999]))),
    ...perhaps(dice, "paymentFeeFixed", 40, () => pick(dice, ["0", "0.20", "0.000001"])),
  };
}

/** A workshop of at most this size, decided by the dice. */
function workshopBy(dice: Dice, size: WorkshopSize, horizon: number | undefined, today: string): WorkshopFile {
  const materials = idsFor(dice, "m", size.materials).map((id, index) =>
    randomMaterial(dice, id, index === 0 || chance(dice, 70)),
  );
  const weighed = materials.filter((material) => material.measure === "mass");
  const suppliers = idsFor(dice, "s", size.suppliers).map((id) => randomSupplier(dice, id, today));
  const formulas = randomFormulas(dice, size.formulas, weighed, size.linesAFormula);
  const products =
    formulas.length === 0
      ? []
      : idsFor(dice, "p", size.products).map((id) => randomProduct(dice, id, formulas, materials));
  const runs =
    products.length === 0
      ? []
      : idsFor(dice, "r", size.runs).map((id) => randomRun(dice, id, products, today, horizon ?? 56));
  const wanted = wantedByMaterial(formulas, materials, products, runs);

  const share = <T>(ids: string[], most: number, make: (material: FileMaterial, own: string[]) => T[]) =>
    shuffled(dice, materials).flatMap((material) =>
      // Sometimes none at all, else at least one.
      make(material, ids.splice(0, chance(dice, 12) ? 0 : dice.whole(1, most))),
    );
  const offers = share(
    suppliers.length === 0 ? [] : idsFor(dice, "o", size.materials * size.offersAMaterial),
    size.offersAMaterial,
    (material, ids) => randomOffers(dice, ids, material, suppliers),
  );
  const lots = share(lotIds(dice, size.materials * size.lotsAMaterial), size.lotsAMaterial, (material, ids) =>
    randomLots(dice, ids, material, today, wanted(material)),
  );
  const orders =
    suppliers.length === 0
      ? []
      : idsFor(dice, "po", size.orders).map((id) => randomOrder(dice, id, today, suppliers, materials, wanted));
  return {
    format: "stillroom-workshop",
    version: 1,
    workshop: randomSettings(dice, today, horizon),
    suppliers,
    materials: shuffled(dice, materials),
    offers: shuffled(dice, offers),
    lots: shuffled(dice, lots),
    orders,
    formulas,
    products,
    runs: shuffled(dice, runs),
    finished: products.slice(0, 2).map((product, index) => ({
      id: `F${String(index)}`,
      product: product.id,
      made: dateAfter(today, -9),
      ...perhaps(dice, "bestBefore", 50, () => dateAfter(today, 300)),
      units: dice.whole(0, 20),
    })),
    sales: products.slice(0, 1).map((product) => ({ product: product.id, date: dateAfter(today, -3), units: 1 })),
  };
}

export type Roughly = "tiny" | "small" | "medium";

const MOST_MATERIALS: Readonly<Record<Roughly, number>> = { tiny: 3, small: 12, medium: 40 };

function workshopOf(dice: Dice, roughly: Roughly): WorkshopFile {
  const materials = dice.whole(1, MOST_MATERIALS[roughly]);
  const horizon = pick(dice, [undefined, 0, 1, 7, 14, 28, dice.whole(0, 60)]);
  const size: WorkshopSize = {
    materials,
    suppliers: dice.whole(0, 4),
    formulas: chance(dice, 8) ? 9 : dice.whole(0, 4),
    linesAFormula: 5,
    products: dice.whole(0, 4),
    runs: dice.whole(0, roughly === "medium" ? 30 : 8),
    orders: dice.whole(0, 4),
    lotsAMaterial: 4,
    offersAMaterial: 3,
  };
  return workshopBy(dice, size, horizon, pick(dice, TODAYS));
}

/** The workshop of a seed: the same seed and size, the same workshop. */
export const randomWorkshop = (seed: number, roughly: Roughly = "small"): WorkshopFile =>
  workshopOf(diceFrom(seed), roughly);

/** A busy workshop of exactly so many materials, products and runs, for benches: most materials have lots and offers. */
export function largeWorkshop(size: {
  readonly materials: number;
  readonly products: number;
  readonly runs: number;
  readonly days: number;
  readonly seed: number;
}): WorkshopFile {
  const many = {
    materials: size.materials,
    suppliers: 12,
    formulas: size.products,
    linesAFormula: 14,
    products: size.products,
    runs: size.runs,
    orders: Math.ceil(size.materials / 10),
    lotsAMaterial: 5,
    offersAMaterial: 3,
  };
  return workshopBy(diceFrom(size.seed), many, size.days, REAL_TODAY);
}

class WorkshopArbitrary extends fc.Arbitrary<WorkshopFile> {
  constructor(private readonly roughly: Roughly) {
    super();
  }
  override generate(random: fc.Random): fc.Value<WorkshopFile> {
    const dice: Dice = { whole: (least, most) => random.nextInt(least, most) };
    return new fc.Value(workshopOf(dice, this.roughly), undefined);
  }
  override canShrinkWithoutContext(value: unknown): value is WorkshopFile {
    return typeof value === "object" && value !== null && "format" in value;
  }
  override shrink(value: WorkshopFile): fc.Stream<fc.Value<WorkshopFile>> {
    return fc.stream(smallerWorkshops(value)).map((smaller) => new fc.Value(smaller, undefined));
  }
}

/** Any valid workshop file; one that fails is cut down record by record. */
export const workshops = (roughly: Roughly = "small"): fc.Arbitrary<WorkshopFile> => new WorkshopArbitrary(roughly);
