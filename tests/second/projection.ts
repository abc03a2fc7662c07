/** What becomes of each material if every run goes ahead: the second implementation, one loop over the days. */
import { byCodePoint, divide, exact, type Exact, isLess, money, quantity, quantityText } from "./exact";
import { date, day, type Diary } from "./days";
import type { FileMaterial, FileOffer, WorkshopFile } from "./file-shape";
import { found, needOf, type Uses } from "./needs";
import { heldBy, lotsHere, lotsOnOrder, runsInOrder, take, usable } from "./shelf";

/** Money for one µg or piece at the smallest order of an offer. */
export function offerPrice(file: WorkshopFile, offer: FileOffer): Exact {
  const packs = offer.minPacks ?? 1;
  const reached = (offer.breaks ?? []).filter((step) => step.packs <= packs).sort((a, b) => b.packs - a.packs);
  const pack = quantity(offer.pack, found(file.materials, offer.material).density);
  return divide(money(reached[0]?.price ?? offer.price), exact(pack));
}

/** The offer that a material is priced by: the preferred one, else the cheapest, ties to the lower id. */
export function pricedOffer(file: WorkshopFile, material: FileMaterial): FileOffer | undefined {
  const offers = file.offers.filter((offer) => offer.material === material.id);
  const preferred = offers.find((offer) => offer.preferred === true);
  if (preferred !== undefined) return preferred;
  return offers
    .toSorted((a, b) => byCodePoint(a.id, b.id))
    .reduce<FileOffer | undefined>(
      (best, offer) => (best === undefined || isLess(offerPrice(file, offer), offerPrice(file, best)) ? offer : best),
      undefined,
    );
}

const largest = (values: readonly bigint[]): bigint =>
  values.reduce((most, value) => (value > most ? value : most), 0n);

/** Balances at the end of each day from today on, and what was written off. */
function dayByDay(
  file: WorkshopFile,
  diary: Diary,
  today: number,
  horizonDays: number,
  material: FileMaterial,
  usesOfRun: (runId: string) => ReadonlyMap<FileMaterial, Uses>,
) {
  const lots = [...lotsHere(file), ...lotsOnOrder(file, diary, today)];
  const runs = runsInOrder(file);
  const balances: bigint[] = [];
  const expiring: { lot: string; on: string; quantity: string }[] = [];
  let owed = 0n;
  for (let on = today; on <= today + horizonDays; on += 1) {
    for (const lot of lots.filter(
      (each) => each.material === material.id && each.received <= on && each.expires < on,
    )) {
      if (lot.left > 0n)
        expiring.push({
          lot: lot.id,
          on: date(lot.expires + 1),
          quantity: quantityText(exact(lot.left), material.measure),
        });
      lot.left = 0n;
    }
    owed = take(usable(lots, material, on), owed);
    for (const run of runs.filter((each) => Math.max(day(each.date), today) === on)) {
      const uses = usesOfRun(run.id).get(material);
      if (uses !== undefined) owed += take(usable(lots, material, on), needOf(uses));
    }
    balances.push(heldBy(usable(lots, material, on)) - owed);
  }
  return { balances, expiring: expiring.sort((a, b) => byCodePoint(a.lot, b.lot)) };
}

/** What a material comes to if every run goes ahead, in µg or pieces and in days. */
export function figuresOf(
  file: WorkshopFile,
  diary: Diary,
  today: number,
  material: FileMaterial,
  usesOfRun: (runId: string) => ReadonlyMap<FileMaterial, Uses>,
) {
  const horizonDays = file.workshop.horizonDays ?? 56;
  const coverDays = file.workshop.coverDays ?? horizonDays;
  const { balances, expiring } = dayByDay(file, diary, today, horizonDays, material, usesOfRun);

  const { safetyStock } = material;
  const safety = safetyStock === null || safetyStock === undefined ? 0n : quantity(safetyStock, material.density);
  const firstBelow = (level: bigint, from = 0) => {
    const index = balances.findIndex((balance, at) => at >= from && balance < level);
    return index < 0 ? null : today + index;
  };

  const priced = pricedOffer(file, material);
  const considered = file.offers.filter(
    (offer) => offer.material === material.id && (priced?.preferred !== true || offer.supplier === priced.supplier),
  );
  const arrivals = considered.map((offer) => diary.arrival(found(file.suppliers, offer.supplier), today));
  const firstArrival = arrivals.length === 0 ? today : Math.min(...arrivals);
  const covered = balances.filter((_, index) =>
    firstArrival > today + horizonDays
      ? index === horizonDays
      : today + index >= firstArrival && today + index <= firstArrival + coverDays,
  );
  return {
    balances,
    expiring,
    safety,
    firstBelow,
    priced,
    considered,
    firstArrival,
    lastDay: today + horizonDays,
    shortBy: largest(balances.map((balance) => safety - balance)),
    toBuy: largest(covered.map((balance) => safety - balance)),
  };
}

/** One row of the report's materials. */
export function materialRow(
  file: WorkshopFile,
  diary: Diary,
  today: number,
  material: FileMaterial,
  usesOfRun: (runId: string) => ReadonlyMap<FileMaterial, Uses>,
) {
  const figures = figuresOf(file, diary, today, material, usesOfRun);
  const { safety, firstBelow, priced } = figures;
  const text = (amount: bigint) => quantityText(exact(amount), material.measure);
  const [shortOn, belowSafetyOn] = [firstBelow(0n), firstBelow(safety)];
  const orderBy =
    belowSafetyOn === null || priced === undefined
      ? null
      : diary.orderBy(found(file.suppliers, priced.supplier), belowSafetyOn - (material.safetyDays ?? 0));
  return {
    material: material.id,
    onHand: text(heldBy(usable(lotsHere(file), material, today))),
    shortOn: shortOn === null ? null : date(shortOn),
    belowSafetyOn: belowSafetyOn === null ? null : date(belowSafetyOn),
    shortBy: text(figures.shortBy),
    toBuy: text(figures.toBuy),
    orderBy: orderBy === null ? null : date(orderBy),
    daysLate: orderBy === null ? null : Math.max(0, today - orderBy),
    expiring: figures.expiring,
  };
}
