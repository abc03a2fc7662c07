/** What the second implementation would buy from whom, and what it holds against a basket that is reported. */
import { openerOf, usesInTurn } from "./ahead";
import { cheapestCost, type Instance, linePrice } from "./cheapest-basket";
import { date, day, type Diary, diaryOf } from "./days";
import { cashText, exact, money, quantity } from "./exact";
import type { FileOffer, WorkshopFile } from "./file-shape";
import { found } from "./needs";
import { figuresOf } from "./projection";

export interface Wanted {
  readonly material: string;
  readonly toBuy: bigint;
  readonly candidates: readonly { readonly offer: FileOffer; readonly arrives: number; readonly late: boolean }[];
}

/** Every material with something to buy, and the offers that may fill it; none for one that nobody offers. */
export function wantedOf(file: WorkshopFile, realToday: string): readonly Wanted[] {
  const today = day(file.workshop.today ?? realToday);
  const diary = diaryOf(file);
  const usesOfRun = usesInTurn(file, diary, today, openerOf(file));
  return file.materials.flatMap((material) => {
    const figures = figuresOf(file, diary, today, material, usesOfRun);
    const candidates = candidatesOf(file, diary, today, figures, material.safetyDays ?? 0);
    return figures.toBuy === 0n ? [] : [{ material: material.id, toBuy: figures.toBuy, candidates }];
  });
}

function candidatesOf(
  file: WorkshopFile,
  diary: Diary,
  today: number,
  { considered, firstArrival, lastDay, firstBelow, safety }: ReturnType<typeof figuresOf>,
  safetyDays: number,
): Wanted["candidates"] {
  const offered = considered.map((offer) => ({
    offer,
    arrives: diary.arrival(found(file.suppliers, offer.supplier), today),
  }));
  const isBeyond = firstArrival > lastDay;
  const low = isBeyond ? lastDay : firstBelow(safety, firstArrival - today);
  const buyBy = (low ?? lastDay) - safetyDays;
  const dry = isBeyond ? null : firstBelow(0n, firstArrival - today);
  const soonest = Math.min(...offered.map(({ arrives }) => arrives));
  const choices = [buyBy, dry ?? Infinity, soonest].map((by) => offered.filter(({ arrives }) => arrives <= by));
  const chosen = choices.find((choice) => choice.length > 0) ?? [];
  return chosen.map(({ offer, arrives }) => ({ offer, arrives, late: arrives > buyBy }));
}

/** The instance that the wanted materials with candidates make. */
export function instanceOf(file: WorkshopFile, wanted: readonly Wanted[]): Instance {
  const sourced = wanted.filter(({ candidates }) => candidates.length > 0);
  return {
    materials: sourced.map(({ material, toBuy }) => ({ id: material, need: toBuy })),
    suppliers: file.suppliers.map(({ id, shipping, shippingFreeFrom, minimumOrder }) => ({
      id,
      shipping: microUnits(shipping ?? "0"),
      freeFrom: shippingFreeFrom === null || shippingFreeFrom === undefined ? null : microUnits(shippingFreeFrom),
      minimum: minimumOrder === null || minimumOrder === undefined ? null : microUnits(minimumOrder),
    })),
    offers: sourced.flatMap(({ material, candidates }) =>
      candidates.map(({ offer }) => ({
        id: offer.id,
        material,
        supplier: offer.supplier,
        pack: quantity(offer.pack, found(file.materials, material).density),
        price: microUnits(offer.price),
        breaks: (offer.breaks ?? []).map(({ packs, price }) => ({ packs: BigInt(packs), price: microUnits(price) })),
        minPacks: BigInt(offer.minPacks ?? 1),
        maxPacks: null,
      })),
    ),
  };
}

function microUnits(text: string): bigint {
  const [over, under] = money(text);
  return over / under;
}

/** The least that the basket of a file can cost, by trying everything. Only for very small files. */
export const leastTotal = (file: WorkshopFile, realToday: string): string | null => {
  const cost = cheapestCost(instanceOf(file, wantedOf(file, realToday)));
  return cost === null ? null : cashText(exact(cost), file.workshop.currency);
};

export interface BasketOfReport {
  readonly total: string;
  readonly optimal: boolean;
  readonly gap: string | null;
  readonly unsourced: readonly string[];
  readonly orders: readonly {
    readonly supplier: string;
    readonly goods: string;
    readonly shipping: string;
    readonly total: string;
    readonly lines: readonly {
      readonly offer: string;
      readonly packs: number;
      readonly cost: string;
      readonly arrives: string;
      readonly late: boolean;
    }[];
  }[];
}

/** The basket as it must be reported if these packs are bought; throws for packs that break a rule. */
export function basketOfPacks(
  file: WorkshopFile,
  realToday: string,
  packs: ReadonlyMap<string, bigint>,
): BasketOfReport {
  const wanted = wantedOf(file, realToday);
  const instance = instanceOf(file, wanted);
  const cash = (amount: bigint) => cashText(exact(amount), file.workshop.currency);
  for (const { id, need } of instance.materials) {
    const offers = instance.offers.filter(({ material }) => material === id);
    const bought = offers.reduce((sum, { id: offer, pack }) => sum + (packs.get(offer) ?? 0n) * pack, 0n);
    if (bought < need) throw new Error(`too little of ${id}`);
  }
  const known = new Map(wanted.flatMap(({ candidates }) => candidates.map((each) => [each.offer.id, each])));
  for (const offer of packs.keys()) if (!known.has(offer)) throw new Error(`${offer} is no candidate`);
  let total = 0n;
  const orders = instance.suppliers.flatMap((supplier) => {
    const lines = instance.offers.filter((offer) => offer.supplier === supplier.id && packs.has(offer.id));
    if (lines.length === 0) return [];
    for (const { id, minPacks } of lines) if ((packs.get(id) ?? 0n) < minPacks) throw new Error(`too few of ${id}`);
    const goods = lines.reduce((sum, offer) => sum + linePrice(offer, packs.get(offer.id) ?? 0n), 0n);
    if (supplier.minimum !== null && goods < supplier.minimum) throw new Error(`too small an order for ${supplier.id}`);
    const shipping = supplier.freeFrom !== null && goods >= supplier.freeFrom ? 0n : supplier.shipping;
    total += goods + shipping;
    const printed = lines.map((offer) => ({
      offer: offer.id,
      packs: Number(packs.get(offer.id)),
      cost: cash(linePrice(offer, packs.get(offer.id) ?? 0n)),
      arrives: date(known.get(offer.id)?.arrives ?? 0),
      late: known.get(offer.id)?.late ?? false,
    }));
    return [
      {
        supplier: supplier.id,
        goods: cash(goods),
        shipping: cash(shipping),
        total: cash(goods + shipping),
        lines: printed,
      },
    ];
  });
  const unsourced = wanted.filter(({ candidates }) => candidates.length === 0).map(({ material }) => material);
  return { total: cash(total), optimal: true, gap: null, unsourced, orders };
}
