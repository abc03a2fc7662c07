import { expect, test } from "vitest";
import { ingredientList } from "@/lib/domain/label/ingredient-list";
import { inciKey } from "@/lib/domain/label/fragrance-allergens";
import { quantity } from "@/lib/domain/quantity";
import { chance, diceFrom, type Dice, pick, several } from "@/tests/helpers/random-dice";
import { naiveOrder, type NaiveMaterial } from "@/tests/second/ingredient-order";

const NAMES = [
  "Aqua",
  "AQUA",
  " aqua ",
  "Glycerin",
  "Cetearyl Alcohol",
  "Parfum",
  "parfum",
  "Olea  Europaea Oil",
  "Helianthus Annuus Oil",
  "Benzyl Alcohol",
  "Limonene",
  "d-Limonene",
  "Linalool",
  "Geranial",
  "Neral",
  "Citral",
];

/** One to five components that add up to a million, no name twice but in another spelling. */
function randomComposition(dice: Dice): readonly (readonly [string, bigint])[] {
  const names = [...new Set(several(dice.whole(1, 5), () => pick(dice, NAMES)))];
  const unlike = names.filter((name, at) => names.findIndex((other) => inciKey(other) === inciKey(name)) === at);
  let left = 1_000_000;
  return unlike.map((name, at) => {
    const others = unlike.length - at - 1;
    const share = others === 0 ? left : dice.whole(1, Math.max(1, chance(dice, 40) ? 20 : left - others));
    left -= share;
    return [name, BigInt(share)] as const;
  });
}

const randomMaterials = (dice: Dice): readonly NaiveMaterial[] =>
  several(dice.whole(1, 8), () => ({
    mass: BigInt(chance(dice, 30) ? dice.whole(1, 50) : dice.whole(1, 1_000_000)),
    of: randomComposition(dice),
  }));

test("[LABEL-1, LABEL-2, LABEL-3] the ingredients are those of a naive second implementation on 10,000 random compositions", () => {
  const dice = diceFrom(2023_1545);
  let named = 0;
  let notNamed = 0;
  for (let at = 0; at < 10_000; at++) {
    const materials = randomMaterials(dice);
    const total = materials.reduce((sum, { mass }) => sum + mass, 0n);
    const isRinsedOff = chance(dice, 50);
    const list = ingredientList(
      materials.map(({ mass, of }, id) => ({
        id: String(id),
        name: `Material ${String(id)}`,
        fraction: { over: mass, under: total },
        composition: of.map(([inci, share]) => ({ inci, share: quantity(share) })),
      })),
      isRinsedOff ? "rinse-off" : "leave-on",
    );
    const found = list.listed.map(({ inci, fraction: { over, under } }) => {
      expect((over * total * 1_000_000n) % under).toBe(0n);
      return [inciKey(inci), (over * total * 1_000_000n) / under] as const;
    });
    expect(found).toEqual(naiveOrder(materials, isRinsedOff));
    named += list.listed.filter(({ entry }) => entry !== null).length;
    notNamed += list.notNamed.length;
  }
  // The law says nothing where the random compositions never come near the thresholds.
  expect(named).toBeGreaterThan(500);
  expect(notNamed).toBeGreaterThan(500);
});
