/** Suppliers, offers, lots and orders of invented workshops. */
import { chance, dateAfter, decimalText, type Dice, idsFor, perhaps, pick, several } from "./random-dice";
import { exactText, stockText } from "./random-quantities";
import { quantity } from "../second/exact";
import type { FileLot, FileMaterial, FileOffer, FileOrder, FileSupplier } from "../second/file-shape";

/** Days on which somebody is away: single ones, weekends among them, and sometimes weeks on end. */
export function randomClosedDays(dice: Dice, today: string): string[] {
  const single = several(dice.whole(0, 5), () => dice.whole(-20, 40));
  const start = dice.whole(-15, 25);
  const onEnd = chance(dice, 25) ? several(dice.whole(2, 24), (index) => start + index) : [];
  return [...new Set([...single, ...onEnd])].map((days) => dateAfter(today, days));
}

export const randomSupplier = (dice: Dice, id: string, today: string): FileSupplier => ({
  id,
  name: `Supplier ${id}`,
  leadDays: pick(dice, [0, 0, 1, 2, 3, 5, 8, 13, 30, dice.whole(0, 90)]),
  leadCounts: pick(dice, ["working", "calendar"]),
  ...perhaps(dice, "closedDays", 55, () => randomClosedDays(dice, today)),
  ...perhaps(dice, "shipping", 60, () => decimalText(dice, 12, 2)),
  ...perhaps(dice, "shippingFreeFrom", 40, () => decimalText(dice, 90, 2)),
  ...perhaps(dice, "minimumOrder", 30, () => decimalText(dice, 40, 2)),
});

/** Between none and three offers of a material, now and then two that cost the same, at most one preferred. */
export function randomOffers(
  dice: Dice,
  ids: readonly string[],
  material: FileMaterial,
  suppliers: readonly FileSupplier[],
): FileOffer[] {
  const preferred = chance(dice, 30) ? dice.whole(0, ids.length - 1) : -1;
  const terms = several(ids.length, () => ({
    pack: stockText(dice, pick(dice, [1, 10, 12, 100, 250, 1000, 5000]), material),
    price: decimalText(dice, 30, 6),
    ...perhaps(dice, "breaks", 45, () =>
      [...new Set(several(dice.whole(0, 3), () => dice.whole(2, 12)))].map((packs) => ({
        packs,
        price: decimalText(dice, 30, 6),
      })),
    ),
    ...perhaps(dice, "minPacks", 40, () => dice.whole(1, 8)),
  }));
  return ids.map((id, index) => ({
    id,
    material: material.id,
    supplier: pick(dice, suppliers).id,
    ...pick(dice, chance(dice, 20) ? terms : terms.slice(index, index + 1)),
    ...(index === preferred ? { preferred: true } : perhaps(dice, "preferred", 30, () => false)),
  }));
}

/** A quantity round about what is wanted of the material: nothing much, just enough, a little too little, plenty. */
function roundabout(dice: Dice, material: FileMaterial, wanted: readonly bigint[]): string {
  const most = wanted.reduce((all, each) => all + each, 0n);
  if (wanted.length > 0 && chance(dice, wanted.length > 12 ? 10 : 45)) {
    // Where many runs want it, one run's share would be next to nothing.
    const target = wanted.length <= 12 && chance(dice, 60) ? pick(dice, wanted) : most;
    const amount = target + BigInt(dice.whole(-1, 1));
    if (amount > 0n) return exactText(dice, amount, material);
  }
  const about = Number(most) / (material.measure === "mass" ? 1_000_000 : 1) || dice.whole(1, 500);
  return stockText(
    dice,
    (about * pick(dice, wanted.length > 12 ? [60, 100, 150] : [5, 20, 50, 80, 120, 200, 300])) / 100,
    material,
  );
}

/** Lots of a material: out of date, last day today, soon, later, or never; some used up; with ties in their dates. */
export function randomLots(
  dice: Dice,
  ids: readonly string[],
  material: FileMaterial,
  today: string,
  wanted: readonly bigint[],
): FileLot[] {
  const [usualReceipt, usualExpiry] = [dice.whole(0, 60), dice.whole(0, 40)];
  return ids.map((id) => {
    const remaining = chance(dice, 6)
      ? pick(dice, material.measure === "mass" ? ["0 g", "0.0 kg"] : ["0 each"])
      : roundabout(dice, material, wanted);
    const isEmpty = quantity(remaining, material.density) === 0n;
    const expiry = pick(dice, [
      -dice.whole(1, 30),
      dice.whole(-1, 1),
      dice.whole(0, 40),
      usualExpiry,
      usualExpiry,
      400,
      400,
    ]);
    return {
      id,
      material: material.id,
      received: dateAfter(today, -(chance(dice, 50) ? usualReceipt : dice.whole(0, 300))),
      ...perhaps(dice, "expires", 55, () => dateAfter(today, expiry)),
      remaining,
      value: isEmpty ? "0" : chance(dice, 10) ? "0.00" : decimalText(dice, 60, 6),
    };
  });
}

/** An order on its way: overdue, due today, or still to come, on a closed day or not; some lines arrive out of date. */
export function randomOrder(
  dice: Dice,
  id: string,
  today: string,
  suppliers: readonly FileSupplier[],
  materials: readonly FileMaterial[],
  wanted: (material: FileMaterial) => readonly bigint[],
): FileOrder {
  const due = dateAfter(today, pick(dice, [-dice.whole(1, 20), 0, 1, dice.whole(1, 14), dice.whole(1, 60)]));
  return {
    id,
    supplier: pick(dice, suppliers).id,
    placed: dateAfter(due, -dice.whole(0, 40)),
    due,
    lines: several(dice.whole(1, 3), () => {
      const material = pick(dice, materials);
      return {
        material: material.id,
        quantity: roundabout(dice, material, wanted(material)),
        cost: decimalText(dice, 80, 6),
        ...perhaps(dice, "expires", 50, () => dateAfter(due, pick(dice, [0, 1, dice.whole(0, 15), 365]))),
      };
    }),
  };
}

/** Ids for the lots of a workshop, none of them that of a line on order. */
export function lotIds(dice: Dice, count: number): string[] {
  return idsFor(dice, "L", count).map((id, index) => (chance(dice, 5) ? `none/${String(index + 1)}` : id));
}
